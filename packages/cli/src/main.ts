import { Command, CommanderError, Option } from 'commander';
import { LIST_FORMATS, LIST_NAMES, PAPERS, type Severity } from 'underliner-language';
import { celsius, clock, minutes, oneOf, sheetNames, wholeNumber, wrongUsage } from './arguments.js';
import { isCannotRun } from './cannot-run.js';
import type { CalendarOptions } from './calendar.js';
import type { CheckOptions } from './check.js';
import type { ColorChoice } from './colors.js';
import type { CompareOptions } from './compare.js';
import type { CompileOptions } from './compile.js';
import { CANNOT_RUN, tellFault } from './faults.js';
import { writeResult, writeTalk } from './output.js';
import type { DrawOptions } from './draw.js';
import type { FormatOptions } from './format.js';
import { changeFormats, reportFormats, ruleListFormats } from './formats.js';
import type { ListOptions } from './list.js';
import type { RulesOptions } from './rules.js';
import type { SheetsOptions } from './sheets.js';
import type { WhatIfOptions } from './what-if.js';

/** Written in by the build from package.json. */
declare const UNDERLINER_VERSION: string;

const severities: readonly Severity[] = ['error', 'warning', 'info', 'hint'];
const paths = 'files, folders, globs, or - for standard input';

/** Every verb and its options. Each verb is loaded only when it is called. */
function program(): Command {
    const program = new Command('underliner')
        .description('Checks, lays out and compiles service plans written as .cover files.')
        .version(UNDERLINER_VERSION)
        .exitOverride()
        .configureOutput({ writeOut: writeResult, writeErr: writeTalk, outputError: () => undefined });
    program.addHelpText(
        'after',
        '\nExit codes: 0 done and clean, 1 findings, 2 could not run.\n' +
            'A thermometer, the local food code and licensed staff decide over anything said about food safety.',
    );

    verb(program, 'check', 'say what would go wrong at table')
        .argument('[path...]', paths, ['.'])
        .addOption(choice('--format <format>', 'how to report', reportFormats).default('text'))
        .addOption(choice('--show <severity>', 'lowest severity shown', severities).default('info'))
        .addOption(
            choice('--fail-on <severity>', 'lowest severity that fails', [...severities, 'never']).default('error'),
        )
        .addOption(new Option('--max-warnings <number>', 'fail on more warnings than this').argParser(wholeNumber))
        .option('--fix', 'apply the fixes that are surely meant')
        .option('--unsafe-fixes', 'apply also those that change the service')
        .option('--watch', 'check again whenever files change')
        .addOption(stdinName())
        .addOption(root())
        .addOption(color())
        .action(async (paths: string[], options: CheckOptions) => {
            process.exitCode = options.watch
                ? await (await import('./watch.js')).runWatch(paths, options)
                : await (await import('./check.js')).runCheck(paths, options);
        });
    verb(program, 'compile', 'write the service plan of an event as JSON')
        .argument('<file>', 'the event, or - for standard input')
        .option('-o, --output <file>', 'where to write it, instead of stdout')
        .option('--despite-errors', 'write it although something is wrong, and mark it')
        .addOption(stdinName())
        .addOption(root())
        .addOption(color())
        .action(async (path: string, options: CompileOptions) => {
            process.exitCode = (await import('./compile.js')).runCompile(path, options);
        });
    verb(program, 'sheets', 'write what people carry: one page each for captain, servers, kitchen …')
        .argument('<file>', 'the event, or - for standard input')
        .requiredOption('-o, --output <folder>', 'where to write them')
        .addOption(new Option('--only <names>', 'only these, such as captain,bar').argParser(sheetNames))
        .option('--names', 'guests of the list by name; else by initials')
        .option('--pdf', 'write them as PDF besides')
        .addOption(choice('--paper <paper>', 'of the PDFs; else what is usual under the local code', PAPERS))
        .addOption(
            new Option('--at <clock>', 'the evening runs, and it is now 20:10: the card with the new times').argParser(
                clock,
            ),
        )
        .option('--done <course>', 'the last course that is cleared by then')
        .option('--despite-errors', 'write them although something is wrong')
        .addOption(stdinName())
        .addOption(root())
        .addOption(color())
        .action(async (path: string, options: SheetsOptions) => {
            process.exitCode = await (await import('./sheets.js')).runSheets(path, options);
        });
    verb(program, 'list', 'write one list of an event as a table for a spreadsheet, a page or a program')
        .argument('<file>', 'the event, or - for standard input')
        .addOption(choice('--what <list>', 'which list', LIST_NAMES).makeOptionMandatory())
        .addOption(choice('--format <format>', 'how to write it', LIST_FORMATS).default('csv'))
        .option('--bom', 'begin CSV with the mark by which some spreadsheets know accents')
        .option('--names', 'guests of the list by name; else by initials')
        .option('-o, --output <file>', 'where to write it, instead of stdout')
        .option('--despite-errors', 'write it although something is wrong')
        .addOption(stdinName())
        .addOption(root())
        .addOption(color())
        .action(async (path: string, options: ListOptions) => {
            process.exitCode = (await import('./list.js')).runList(path, options);
        });
    verb(program, 'calendar', 'write an evening for a calendar program, as iCalendar')
        .argument('<file>', 'the event, or - for standard input')
        .option('--calls', 'one entry for each call, in place of one for the evening')
        .addOption(new Option('--alarm <time>', 'remind so long before each entry, such as 10min').argParser(minutes))
        .option('-o, --output <file>', 'where to write it, instead of stdout')
        .option('--despite-errors', 'write it although something is wrong')
        .addOption(stdinName())
        .addOption(root())
        .addOption(color())
        .action(async (path: string, options: CalendarOptions) => {
            process.exitCode = (await import('./calendar.js')).runCalendar(path, options);
        });
    verb(program, 'what-if', 'compute an event again with other figures and say what changes')
        .argument('<file>', 'the event, or - for standard input')
        .addOption(new Option('--guests <number>', 'guests expected').argParser(wholeNumber))
        .addOption(new Option('--guaranteed <number>', 'guests paid for').argParser(wholeNumber))
        .addOption(new Option('--set-for <number>', 'places laid').argParser(wholeNumber))
        .addOption(new Option('--servers <number>', 'servers').argParser(wholeNumber))
        .addOption(new Option('--runners <number>', 'runners').argParser(wholeNumber))
        .addOption(new Option('--lines <number>', 'plating lines').argParser(wholeNumber))
        .addOption(new Option('--late <time>', 'how much later guests sit, such as 15min').argParser(minutes))
        .addOption(new Option('--room <temperature>', 'air of the room, such as 26C').argParser(celsius))
        .addOption(new Option('--at <clock>', 'the evening runs, and it is now 20:10').argParser(clock))
        .option('--done <course>', 'the last course that is cleared by then')
        .addOption(choice('--format <format>', 'how to tell it', changeFormats).default('text'))
        .addOption(stdinName())
        .addOption(root())
        .action(async (path: string, options: WhatIfOptions) => {
            process.exitCode = (await import('./what-if.js')).runWhatIf(path, options);
        });
    verb(program, 'draw', 'draw a cover, a table or the room to scale, or the evening over the clock, as SVG or PNG')
        .argument('<file>', 'the event, or - for standard input')
        .option('--table <name>', 'this table with all its covers')
        .option('--room', 'the room with its tables')
        .option('--evening', 'who does what at which table over the clock, and how warm it arrives')
        .addOption(
            new Option('--dishes <number>', 'the cover of the guests with these dishes, counted from 1').argParser(
                wholeNumber,
            ),
        )
        .addOption(
            new Option('--step <number>', 'the cover as this step of the evening leaves it, counted from 1').argParser(
                wholeNumber,
            ),
        )
        .option('-o, --output <file>', 'where to write it, instead of stdout')
        .option('--png', 'as PNG; so is a file whose name ends with .png')
        .addOption(new Option('--width <pixels>', 'how wide a PNG is; else 1600').argParser(wholeNumber))
        .addOption(stdinName())
        .addOption(root())
        .action(async (path: string, options: DrawOptions) => {
            process.exitCode = await (await import('./draw.js')).runDraw(path, options);
        });
    verb(program, 'compare', 'say what changed between two plans for the people who carry them out')
        .argument('[path...]', 'the plan before and the plan after; with --git one plan')
        .option('--git <commit>', 'compare with what the plan was in this commit')
        .addOption(choice('--format <format>', 'how to tell it', changeFormats).default('text'))
        .option('--set-up-git', 'let `git diff` tell it, in this repository')
        .addOption(new Option('--git-driver', 'what git calls').hideHelp())
        .addOption(root())
        .action(async (paths: string[], options: CompareOptions) => {
            process.exitCode = (await import('./compare.js')).runCompare(paths, options);
        });
    verb(program, 'format', 'lay out files the one way')
        .argument('[path...]', paths, ['.'])
        .option('--check', 'write nothing; list what would change, and fail if anything would')
        .option('--diff', 'write nothing; print the changes, and fail if there are any')
        .addOption(stdinName())
        .addOption(root())
        .addOption(color())
        .action(async (paths: string[], options: FormatOptions) => {
            process.exitCode = await (await import('./format.js')).runFormat(paths, options);
        });
    verb(program, 'explain', 'say why a rule is there, with sources and examples')
        .argument('<rule...>', 'ids, such as three-per-side')
        .action(async (ids: string[]) => {
            process.exitCode = (await import('./explain.js')).runExplain(ids);
        });
    verb(program, 'rules', 'list the rules')
        .addOption(choice('--format <format>', 'how to list them', ruleListFormats).default('text'))
        .addOption(color())
        .action(async (options: RulesOptions) => {
            process.exitCode = (await import('./rules.js')).runRules(options);
        });
    verb(program, 'init', 'write a first house and a first event')
        .argument('[folder]', 'where to write them', '.')
        .action(async (folder: string) => {
            process.exitCode = (await import('./init.js')).runInit(folder);
        });
    verb(program, 'lsp', 'serve an editor, which starts this by itself')
        .requiredOption('--stdio', 'speak the language server protocol over standard input and output')
        .action(async () => {
            await (await import('./lsp.js')).runLsp();
        });
    return program;
}

function verb(program: Command, name: string, description: string): Command {
    return program.command(name).description(description);
}

function choice<Word extends string>(flags: string, description: string, words: readonly Word[]): Option {
    return new Option(flags, `${description}: ${words.join(', ')}`).argParser(oneOf(words));
}

function stdinName(): Option {
    return new Option('--stdin-name <path>', 'the file that standard input stands for');
}

function root(): Option {
    return new Option('--root <folder>', 'the workspace; else the nearest folder above that holds .git');
}

function color(): Option {
    const choices: readonly ColorChoice[] = ['auto', 'always', 'never'];
    return choice('--color <when>', 'colour the output', choices).default('auto');
}

/** Says what went wrong in one line. */
function fail(failure: unknown): void {
    if (failure instanceof CommanderError) {
        // Help and version were asked for, or help was given because nothing was.
        if (failure.exitCode === 0 || failure.code === 'commander.help') {
            process.exitCode = failure.exitCode === 0 ? 0 : CANNOT_RUN;
            return;
        }
        fail(wrongUsage(failure));
        return;
    }
    process.exitCode = CANNOT_RUN;
    if (isCannotRun(failure)) {
        writeTalk(`underliner: ${failure.message}\n`);
        return;
    }
    tellFault('', failure);
}

/**
 * Runs the program. When it is done, everything is written and the exit code is set.
 * @param argv as Node has it: two words before the arguments
 */
export async function main(argv: readonly string[]): Promise<void> {
    try {
        await program().parseAsync(argv);
    } catch (failure) {
        fail(failure);
    }
}
