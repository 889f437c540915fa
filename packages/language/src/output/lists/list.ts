import type { ListName } from './list-names.js';

/** One list, without how it is written. */
export interface List {
    readonly name: ListName;
    /** `Pull list`. */
    readonly title: string;
    /** Title of the event; the file's name where there is none. */
    readonly event: string;
    /** ISO, `2026-10-17`. */
    readonly date?: string;
    readonly revision?: number;
    /** Something is wrong with the plan: not to be served from as it stands. */
    readonly despiteErrors?: true;
    readonly columns: readonly ListColumn[];
    /** Each with one cell a column. */
    readonly rows: readonly (readonly ListCell[])[];
    /** To be read by whoever carries the list. */
    readonly cautions: readonly string[];
}

/** A column of a list. */
export interface ListColumn {
    /** For programs; no two columns of a list have the same. */
    readonly key: string;
    /** For people. */
    readonly head: string;
    /** Its cells are numbers, or empty. */
    readonly figures?: true;
}

/** A word, a number, or nothing. */
export type ListCell = string | number | undefined;

/** Stands on a list of a plan with something wrong in it. */
export const ERRORS_LEFT = 'Made despite errors in the plan: not to be served from as it stands.';
