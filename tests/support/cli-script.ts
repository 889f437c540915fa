import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

// A script in one text:
//
//     What it shows, in a sentence.
//
//     //- supper.cover
//     the lines of a file
//
//     $ NO_COLOR=1 underliner check - --stdin-name supper.cover < supper.cover
//     > a line of stdout
//     ! a line of stderr
//     = 1
//
// `␛` stands for the escape character of colours, `␍` for a carriage return; `=` is the exit code where it is not 0. Besides `underliner`, `show FILE` writes a file and `list [FOLDER]` the names
// in a folder.

export interface CliScript {
    readonly title: string;
    readonly files: ReadonlyMap<string, string>;
    readonly commands: readonly Command[];
}

export interface Command {
    readonly line: string;
    readonly stdout: string;
    readonly stderr: string;
    readonly exitCode: number;
}

const program = join(import.meta.dirname, '../../packages/cli/bin/underliner.cjs');

export function readCliScript(text: string): CliScript {
    const title: string[] = [];
    const files = new Map<string, string>();
    const commands: Command[] = [];
    let file: string | undefined;
    for (const line of text.replace(/\n$/, '').split('\n')) {
        const [, name] = /^\/\/- (.+)$/.exec(line) ?? [];
        const command = commands.at(-1);
        if (line.startsWith('$ ')) {
            commands.push({ line: line.slice(2), stdout: '', stderr: '', exitCode: 0 });
        } else if (command !== undefined) {
            commands[commands.length - 1] = withOutput(command, line);
        } else if (name !== undefined) {
            file = name;
            files.set(name, '');
        } else if (file !== undefined) {
            files.set(file, `${files.get(file)}${line}\n`);
        } else {
            title.push(line);
        }
    }
    if (commands.length === 0) {
        throw new Error('A script without a command shows nothing.');
    }
    return {
        title: title.join('\n').trim(),
        files: new Map(Array.from(files, ([name, content]) => [name, `${content.trimEnd()}\n`])),
        commands,
    };
}

function withOutput(command: Command, line: string): Command {
    const content = `${line.slice(2)}\n`;
    switch (line[0]) {
        case '>':
            return { ...command, stdout: command.stdout + content };
        case '!':
            return { ...command, stderr: command.stderr + content };
        case '=':
            return { ...command, exitCode: Number(line.slice(2)) };
        case undefined:
            return command;
        default:
            throw new Error(`A script has no such line: ${line}`);
    }
}

export function writeCliScript({ title, files, commands }: CliScript): string {
    const parts = [
        `${title}\n`,
        ...(files.size > 0 ? [Array.from(files, ([name, content]) => `//- ${name}\n${content}`).join('')] : []),
        ...commands.map(
            ({ line, stdout, stderr, exitCode }) =>
                `$ ${line}\n${marked('>', stdout)}${marked('!', stderr)}${exitCode === 0 ? '' : `= ${exitCode}\n`}`,
        ),
    ];
    return parts.join('\n');
}

function marked(mark: string, text: string): string {
    if (text === '') {
        return '';
    }
    if (!text.endsWith('\n')) {
        throw new Error(`This output does not end its last line: ${text}`);
    }
    const shown = text.replaceAll('\x1B', '␛').replaceAll('\r', '␍').replace(/\n$/, '');
    return shown.replace(/^/gm, `${mark} `).replace(/ +$/gm, '').concat('\n');
}

/** Runs the commands one after the other in a folder, which gets the files first. */
export function runCliScript(script: CliScript, folder: string): CliScript {
    for (const [name, content] of script.files) {
        mkdirSync(dirname(join(folder, name)), { recursive: true });
        writeFileSync(join(folder, name), content);
    }
    return { ...script, commands: script.commands.map(({ line }) => ({ line, ...run(line, folder) })) };
}

function run(line: string, folder: string): Omit<Command, 'line'> {
    const words = line.split(' ');
    const env: Record<string, string> = {};
    for (let match = assignment(words[0]); match !== null; match = assignment(words[0])) {
        env[match[1]!] = match[2]!;
        words.shift();
    }
    const from = words.indexOf('<');
    const input = from < 0 ? '' : readFileSync(join(folder, words[from + 1]!), 'utf8');
    const [command, ...args] = from < 0 ? words : words.slice(0, from);
    switch (command) {
        case 'underliner': {
            const { stdout, stderr, status } = spawnSync(process.execPath, [program, ...args], {
                cwd: folder,
                input,
                encoding: 'utf8',
                env,
            });
            return { stdout, stderr, exitCode: status ?? -1 };
        }
        case 'show':
            return { stdout: readFileSync(join(folder, args[0]!), 'utf8'), stderr: '', exitCode: 0 };
        case 'list': {
            const names = readdirSync(join(folder, args[0] ?? '.')).sort();
            return { stdout: names.map((name) => `${name}\n`).join(''), stderr: '', exitCode: 0 };
        }
        default:
            throw new Error(`A script knows underliner, show and list; not ${command}.`);
    }
}

function assignment(word = ''): RegExpExecArray | null {
    return /^([A-Z_]+)=(.*)$/.exec(word);
}
