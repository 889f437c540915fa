import type { CodeActionKind } from 'vscode-languageserver';
import type { Intention } from '../../rules/fixes.js';
import { editsOf, type TextEdit } from '../fixes.js';
import type { Folder } from '../folder.js';

/** The words that are selected, or where the cursor is. */
export interface Selected {
    readonly folder: Folder;
    readonly path: string;
    readonly start: number;
    readonly end: number;
}

/** A change after which the plan says the same otherwise, or is made ready for the next thing to say. */
export interface Refactoring {
    /** Imperative, with the real names. */
    readonly title: string;
    readonly kind: CodeActionKind;
    readonly edits: ReadonlyMap<string, readonly TextEdit[]>;
    /** Files to make, by path. */
    readonly creates?: ReadonlyMap<string, string>;
}

/** The edits of a change that is told in the language of the plan; empty where it can't be written. */
export function editsFor(folder: Folder, title: string, changes: readonly Intention[]): Refactoring['edits'] {
    return editsOf({ title, safety: 'show', changes }, (file) => folder.textOf(file));
}
