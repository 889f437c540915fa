/** Which files a command works on: from the paths, folders, globs and `-` on the command line. */
import { statSync } from 'node:fs';
import { basename, dirname, relative, resolve, sep } from 'node:path';
import { decodeText, DiskFiles, pathInside, readTextFile, workspaceOf } from 'underliner-language/node';
import { CannotRun } from './cannot-run.js';
import { EXTENSION } from './cover-file.js';
import { writeTalk } from './output.js';
import { readStandardInput } from './standard-input.js';

export const STANDARD_INPUT = '-';

export interface Input {
    /** As a person names it: from the working folder, with forward slashes. */
    readonly shown: string;
    /** Absolute. */
    readonly path: string;
    /** The path inside its workspace, with forward slashes: what the language calls the file. */
    readonly file: string;
    readonly files: DiskFiles;
    readonly text: string;
    readonly isStandardInput: boolean;
}

export interface InputOptions {
    /** The workspace, where it is not to be found from the file. */
    readonly root?: string;
    /** Name of the file that standard input stands for. */
    readonly stdinName?: string;
}

/** The file a command reads one of. */
export function oneInput(path: string, options: InputOptions): Input {
    return new InputReader(options).read(path, path);
}

/** A file is not there, or can't be read: no reason to leave out the others. */
class CannotRead extends CannotRun {}

/**
 * Each file once, in the order of the paths; the files of a folder in the order of their names, without those that git ignores.
 * What can't be read is told, and counted in `unread`.
 * @throws CannotRun when a folder holds no such file, or when no file can be read
 */
export async function allInputs(
    paths: readonly string[],
    options: InputOptions,
): Promise<{ readonly inputs: readonly Input[]; readonly unread: number }> {
    const reader = new InputReader(options);
    const inputs = new Map<string, Input>();
    const unread: string[] = [];
    for (const path of paths) {
        for (const found of await expand(path)) {
            const absolute = resolve(found);
            if (!inputs.has(absolute)) {
                try {
                    inputs.set(absolute, reader.read(found, path));
                } catch (failure) {
                    if (!(failure instanceof CannotRead)) {
                        throw failure;
                    }
                    unread.push(failure.message);
                }
            }
        }
    }
    const last = inputs.size === 0 ? unread.pop() : undefined;
    writeTalk(unread.map((message) => `underliner: ${message}\n`).join(''));
    if (last !== undefined) {
        throw new CannotRun(last);
    }
    return { inputs: [...inputs.values()], unread: unread.length };
}

async function expand(path: string): Promise<readonly string[]> {
    if (path === STANDARD_INPUT) {
        return [path];
    }
    const kind = statSync(path, { throwIfNoEntry: false });
    if (kind?.isDirectory()) {
        return (await import('./folders.js')).coverFiles(path);
    }
    if (kind === undefined && /[*?[\]{}]/.test(path)) {
        return (await import('./folders.js')).coverFiles('.', [path.split(sep).join('/')]);
    }
    return [path];
}

/** Reads inputs; the files of one workspace share what was read. */
class InputReader {
    readonly #options: InputOptions;
    readonly #workspaces = new Map<string, DiskFiles>();

    constructor(options: InputOptions) {
        this.#options = options;
    }

    read(path: string, asked: string): Input {
        const isStandardInput = path === STANDARD_INPUT;
        const name = isStandardInput ? (this.#options.stdinName ?? `stdin${EXTENSION}`) : path;
        const shown = shownPath(resolve(name));
        const files = this.#workspaceFor(name);
        const file = pathInside(files.root, resolve(name));
        if (file === undefined) {
            throw new CannotRun(
                `\`${shown}\` is not inside the workspace \`${shownPath(files.root)}\` that --root names.`,
            );
        }
        const found = isStandardInput ? decodeText(readStandardInput()) : this.#fileText(files, file, name);
        switch (found.state) {
            case 'missing':
                throw new CannotRead(`There is no file \`${asked}\`.`);
            case 'unreadable':
                throw new CannotRead(
                    `${isStandardInput ? 'Standard input' : `\`${shown}\``} can't be read: ${found.why}.`,
                );
            case 'read':
                files.put(file, found.text);
                return { shown, path: resolve(name), file, files, text: found.text, isStandardInput };
        }
    }

    /** A file that is named is read wherever a link leads; what it uses is not. */
    #fileText(files: DiskFiles, file: string, name: string) {
        const found = files.read(file);
        return found.state === 'unreadable' ? readTextFile(resolve(name)) : found;
    }

    #workspaceFor(name: string): DiskFiles {
        const { root } = this.#options;
        const folder = root === undefined ? workspaceOf(name, process.cwd()) : resolve(root);
        let files = this.#workspaces.get(folder);
        if (files === undefined) {
            if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) {
                throw new CannotRun(`There is no folder \`${root ?? dirname(name)}\`.`);
            }
            files = new DiskFiles(folder);
            this.#workspaces.set(folder, files);
        }
        return files;
    }
}

/** A path from the working folder, with forward slashes. */
export function shownPath(absolute: string): string {
    return relative(process.cwd(), absolute).split(sep).join('/') || basename(absolute);
}
