/**
 * A sheet that somebody carries: what stands on it, without how it looks. The same sheet becomes a page of HTML (`html.ts`) and,
 * by the command line, of PDF, so that both say the same words.
 */

export interface Sheet {
    /** Its file's name: `captain`, `server-2`. */
    readonly name: string;
    readonly title: string;
    /** Who carries it, and what it is for. */
    readonly subtitle?: string;
    readonly orientation?: 'portrait' | 'landscape';
    /** Set closely, so as to fit on one page. */
    readonly onePage?: boolean;
    readonly blocks: readonly Block[];
}

export type Block =
    | { readonly sort: 'heading'; readonly text: string; readonly level?: 2 | 3 }
    | { readonly sort: 'text'; readonly text: string }
    /** Short, framed: what can hurt somebody, or what a figure does not decide. */
    | { readonly sort: 'caution'; readonly text: string }
    | { readonly sort: 'list'; readonly items: readonly string[] }
    | Table
    | Picture
    /** A line to sign: what is checked, and by whom. */
    | { readonly sort: 'check'; readonly text: string; readonly by: readonly string[] }
    | { readonly sort: 'cards'; readonly cards: readonly Card[] };

export interface Table {
    readonly sort: 'table';
    readonly caption?: string;
    readonly columns: readonly Column[];
    readonly rows: readonly (readonly Cell[])[];
}

export interface Column {
    readonly head: string;
    /** Figures stand to the right. */
    readonly figures?: boolean;
    /** Share of the width; the rest is shared out evenly. */
    readonly share?: number;
    /** To be filled in by hand: an empty cell with a line. */
    readonly toFill?: boolean;
}

export type Cell = string | { readonly text: string; readonly strong: true };

export interface Picture {
    readonly sort: 'picture';
    /** SVG text of our own drawing. */
    readonly svg: string;
    readonly caption: string;
    /** Share of the page's width, 0–1. */
    readonly share: number;
}

/** The text of a page, mm: A4 less both margins. Letter is wider. */
export const TEXT_WIDTH = 184;

/** A table of no more rows stands on one page, where it can. */
export const SHORT_TABLE = 10;

/** A place card, to be cut out. */
export interface Card {
    readonly title: string;
    readonly lines: readonly string[];
}

/** What stands on every page. */
export interface SheetFoot {
    readonly event: string;
    /** `revision 4`, where the plan has one. */
    readonly revision?: string;
    readonly date?: string;
    /** The same day, `2026-10-17`. */
    readonly day?: string;
}

/** `Lantern night supper · Saturday 17 October 2026 · revision 4`: event, day and revision, as they stand on every page. */
export const footText = ({ event, date, revision }: SheetFoot): string =>
    [event, date, revision].filter((word) => word !== undefined).join(' · ');

export const cellText = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);
