import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { check, sheets, whatIf, type Checked, type Paper, type SheetFile, type SheetName } from 'underliner-language';
import { CannotRun } from './cannot-run.js';
import type { ColorChoice } from './colors.js';
import { CANNOT_RUN, tellFaults } from './faults.js';
import { oneInput } from './inputs.js';
import { readLetters } from './letters.js';
import { writeResult, writeTalk } from './output.js';
import { tellErrors } from './report/errors.js';
import { runningEvening } from './running-evening.js';
import { writeWhole } from './write-file.js';

export interface SheetsOptions {
    readonly output: string;
    readonly only?: readonly SheetName[];
    readonly names?: boolean;
    readonly pdf?: boolean;
    readonly paper?: Paper;
    readonly at?: number;
    readonly done?: string;
    readonly despiteErrors?: boolean;
    readonly stdinName?: string;
    readonly root?: string;
    readonly color: ColorChoice;
}

/** `underliner sheets`: what people carry, one page each. Writes nothing while something is wrong. */
export async function runSheets(path: string, options: SheetsOptions): Promise<number> {
    const input = oneInput(path, options);
    const planned = check(input.file, input.files);
    if (tellFaults(input.shown, planned) > 0) {
        return CANNOT_RUN;
    }
    if (!planned.plan.event) {
        throw new CannotRun(`\`${input.shown}\` holds no event. Sheets are made of the file of an event.`);
    }
    const errors = tellErrors(input, planned, options.color);
    if (errors !== undefined) {
        if (!options.despiteErrors) {
            writeTalk(`\n${errors}: no sheet was written. \`--despite-errors\` writes them all the same.\n`);
            return 1;
        }
        writeTalk(`\n${errors}: the sheets were written despite them.\n`);
    }
    const made = sheets(underWay(planned, options), { only: options.only, names: options.names ?? false });
    if (made.length === 0) {
        throw new CannotRun(`\`${input.shown}\` holds nothing for ${wanted(options.only)}.`);
    }
    const files = [
        ...made.map(({ name, title, html }) => ({ name: `${name}.html`, title, content: html })),
        ...(options.pdf ? await printed(made, options.paper) : []),
    ];
    const folder = makeFolder(options.output);
    for (const { name, content } of files) {
        writeWhole(join(folder, name), content, join(options.output, name));
    }
    writeResult(files.map(({ name, title }) => `${join(options.output, name)}  ${title}\n`).join(''));
    return 0;
}

/** The same sheets as PDF. */
async function printed(
    made: readonly SheetFile[],
    paper: Paper | undefined,
): Promise<{ name: string; title: string; content: Uint8Array }[]> {
    const { sheetPdf } = await import('./pdf/sheet-pdf.js');
    const letters = readLetters();
    const files = [];
    for (const { name, title, sheet, foot, paper: usual } of made) {
        const { bytes, lacking } = await sheetPdf(sheet, foot, { paper: paper ?? usual, letters });
        if (lacking.length > 0) {
            writeTalk(
                `The letters of PDF sheets have no ${lacking.join(' ')}: a box stands in its place in ${name}.pdf. Print ${name}.html instead.\n`,
            );
        }
        files.push({ name: `${name}.pdf`, title, content: bytes });
    }
    return files;
}

/** The plan as it goes on from now, where the evening runs. */
function underWay(planned: Checked, { at, done, only }: SheetsOptions): Checked {
    const underway = runningEvening(at, done);
    if (!underway) {
        if (only?.includes('running-late')) {
            throw new CannotRun('The card with the new times wants to know how late it is: `--at 20:10 --done soup`.');
        }
        return planned;
    }
    const answer = whatIf(planned, { underway });
    if (typeof answer === 'string') {
        throw new CannotRun(answer);
    }
    return answer.checked;
}

function wanted(only: readonly SheetName[] | undefined): string {
    return only === undefined ? 'a sheet' : `the sheet ${only.map((name) => `\`${name}\``).join(', ')}`;
}

function makeFolder(output: string): string {
    const folder = resolve(output);
    try {
        mkdirSync(folder, { recursive: true });
    } catch (failure) {
        const code = failure instanceof Error && 'code' in failure ? String(failure.code) : '';
        throw new CannotRun(
            code === 'EEXIST' || code === 'ENOTDIR'
                ? `\`${output}\` is a file. Give -o the name of a folder.`
                : `The folder \`${output}\` can't be made.`,
        );
    }
    return folder;
}
