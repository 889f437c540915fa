import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { check, compare, tellChanges, tellChangesInMarkdown, type Change, type Checked } from 'underliner-language';
import { DiskFiles, readTextFile, workspaceOf } from 'underliner-language/node';
import { CannotRun } from './cannot-run.js';
import { CANNOT_RUN, tellFaults } from './faults.js';
import type { ChangeFormat } from './formats.js';
import { CommittedFiles, git } from './git.js';
import { EXTENSION } from './cover-file.js';
import { oneInput, type Input } from './inputs.js';
import { writeResult } from './output.js';
import { writeWhole } from './write-file.js';

export interface CompareOptions {
    readonly git?: string;
    readonly gitDriver?: boolean;
    readonly setUpGit?: boolean;
    readonly format: ChangeFormat;
    readonly root?: string;
}

const NOTHING = 'Nothing changes for anybody.';

/** `underliner compare`: what is different between two plans for the people who carry them out. 0 nothing, 1 something. */
export function runCompare(paths: readonly string[], options: CompareOptions): number {
    if (options.setUpGit) {
        return setUpGit();
    }
    if (options.gitDriver) {
        return runDriver(paths);
    }
    const [before, after] =
        options.git === undefined ? twoFiles(paths, options) : sinceCommit(paths, options.git, options);
    if (tellFaults(before.file, before) + tellFaults(after.file, after) > 0) {
        return CANNOT_RUN;
    }
    const changes = compare(before, after);
    writeResult(told(changes, options.format));
    return changes.length === 0 ? 0 : 1;
}

function told(changes: readonly Change[], format: ChangeFormat): string {
    switch (format) {
        case 'text':
            return tellChanges(changes, NOTHING);
        case 'markdown':
            return tellChangesInMarkdown(changes, NOTHING);
        case 'json':
            return `${JSON.stringify({ changes }, undefined, 4)}\n`;
    }
}

function twoFiles(paths: readonly string[], options: CompareOptions): [Checked, Checked] {
    const [before, after, ...more] = paths;
    if (before === undefined || after === undefined || more.length > 0) {
        throw new CannotRun(
            'Say which two plans: `underliner compare before.cover after.cover`, or one plan and a commit: `underliner compare --git HEAD supper.cover`.',
        );
    }
    const checked = (path: string): Checked => checkEvent(oneInput(path, options));
    return [checked(before), checked(after)];
}

function sinceCommit(paths: readonly string[], commit: string, options: CompareOptions): [Checked, Checked] {
    const [path, ...more] = paths;
    if (path === undefined || more.length > 0) {
        throw new CannotRun(
            'With `--git` a single plan is compared with what it was: `underliner compare --git HEAD supper.cover`.',
        );
    }
    const input = oneInput(path, options);
    const committed = new CommittedFiles(input.files.root, commit);
    if (committed.read(input.file).state === 'missing') {
        throw new CannotRun(`The commit \`${commit}\` has no file \`${input.file}\`.`);
    }
    return [check(input.file, committed), checkEvent(input)];
}

function checkEvent(input: Input): Checked {
    const checked = check(input.file, input.files);
    if (!checked.plan.event) {
        throw new CannotRun(`\`${input.shown}\` holds no event.`);
    }
    return checked;
}

// ------------------------------------------------------------------ as git's own diff
/**
 * What git calls for each file that differs: `path old-file old-hex old-mode new-file new-hex new-mode`, in the top folder of
 * the repository. Git wants 0 back whatever differs. Files used by the plan are taken as they are now.
 */
function runDriver([path, oldFile, , , newFile]: readonly string[]): number {
    if (path === undefined || oldFile === undefined || newFile === undefined) {
        throw new CannotRun('`--git-driver` is called by git. `underliner compare --set-up-git` tells git to do so.');
    }
    const before = check(path, withOneFile(path, textOf(oldFile)));
    const after = check(path, withOneFile(path, textOf(newFile)));
    writeResult(`${path}\n\n${tellChanges(compare(before, after), NOTHING)}\n`);
    return 0;
}

/** A file that was added or removed has nothing on its other side. */
function textOf(path: string): string {
    const read = path === '/dev/null' || path === 'nul' ? undefined : readTextFile(resolve(path));
    return read?.state === 'read' ? read.text : '';
}

/** The repository as it is, but for one file. */
function withOneFile(path: string, text: string): DiskFiles {
    const files = new DiskFiles(process.cwd());
    files.put(path, text);
    return files;
}

/** Lets `git diff` tell what changes for people, in the repository of the working folder. */
function setUpGit(): number {
    const folder = workspaceOf('.', process.cwd());
    const { ok } = git(folder, 'config', 'diff.underliner.command', 'underliner compare --git-driver');
    if (!ok) {
        throw new CannotRun('This folder is in no git repository.');
    }
    const attributes = join(folder, '.gitattributes');
    const line = `*${EXTENSION} diff=underliner`;
    const written = existsSync(attributes) ? readFileSync(attributes, 'utf8') : '';
    if (!written.split(/\r?\n/).includes(line)) {
        const gap = written === '' || written.endsWith('\n') ? '' : '\n';
        writeWhole(attributes, `${written}${gap}${line}\n`, '.gitattributes');
    }
    writeResult(
        '`git diff` now tells what changes for people. `git diff --no-ext-diff` shows the lines of the text.\n' +
            'Commit `.gitattributes`; everybody who clones runs `underliner compare --set-up-git` once.\n',
    );
    return 0;
}
