import type { Piece, PlacedBlock } from './pieces.js';
import { GAP } from './write-change.js';

/** Code points; a line goes beyond it only where it can't be broken. */
export const LINE_WIDTH = 120;
const INDENT = '    ';

/** Blocks that hold a plan's order of things: always a clause a line, however short. */
const ALWAYS_OPEN: ReadonlySet<string> = new Set(['Event', 'Menu', 'House', 'Room', 'Seating']);

/** What stands before each piece, and behind the last. Line ends are `\n`. */
export interface Layout {
    readonly before: readonly string[];
    readonly atEnd: string;
}

/**
 * The one canonical layout: one clause a line, four spaces a level, one blank line between the blocks of a file and at most
 * one between clauses. A short block without a block of its own stays on one line if it was written on one and fits there.
 * Comments stay between the words where they stand.
 */
export function layOut(text: string, pieces: readonly Piece[]): Layout {
    return new LayoutWriter(text, pieces).write();
}

class LayoutWriter {
    private readonly before: string[] = [];
    private readonly around: PlacedBlock[] = [];
    private readonly nextWord: readonly number[];
    private readonly clauseEnd: readonly number[];
    private column = 0;
    /** The level of the clause being laid out. */
    private clauseLevel = 0;
    /** Whether the last piece is a comment that is the first of its line, or follows one on its line. */
    private leadsLine = false;
    /** A blank line is due at the next line break between items of the file. */
    private isBlankDue = false;

    constructor(
        private readonly text: string,
        private readonly pieces: readonly Piece[],
    ) {
        const { nextWord, clauseEnd } = lookAhead(pieces);
        this.nextWord = nextWord;
        this.clauseEnd = clauseEnd;
        this.chooseFlatBlocks();
    }

    write(): Layout {
        const blanksDue = this.blanksDue();
        this.pieces.forEach((piece, index) => {
            const { block, text } = piece;
            if (block && text === '}') {
                this.around.pop();
            }
            if (piece.startsClause && !this.isFlat) {
                this.clauseLevel = this.around.length;
            }
            const gap = index === 0 ? '' : this.gap(index);
            this.before.push(gap);
            this.advance(gap, text);
            this.leadsLine = piece.sort !== 'word' && (index === 0 || gap.includes('\n') || this.leadsLine);
            if (block && text === '{') {
                this.around.push(block);
            }
            this.isBlankDue ||= blanksDue.has(index);
        });
        return { before: this.before, atEnd: this.pieces.length > 0 ? '\n' : '' };
    }

    // ---------------------------------------------------------------- one gap
    private gap(index: number): string {
        const piece = this.pieces[index]!;
        const last = this.pieces[index - 1]!;
        const breaks = this.lineBreaks(index);
        if (piece.sort !== 'word') {
            return breaks === 0 ? ' ' : this.ownLine(index, breaks);
        }
        if (piece.block && piece.text === '}') {
            return piece.block.isFlat ? ' ' : this.newLine(this.around.length);
        }
        if (piece.startsClause) {
            if (this.isFlat) {
                return last.text === '{' || last.sort !== 'word' ? ' ' : GAP;
            }
            const followsComment = last.sort === 'block-comment' && breaks === 0 && this.leadsLine;
            return followsComment ? ' ' : this.betweenClauses(index, breaks);
        }
        if (last.sort === 'line-comment' || (last.sort === 'block-comment' && breaks > 0)) {
            return this.newLine(this.clauseLevel + 1);
        }
        if (isTight(last, piece)) {
            return '';
        }
        if (breaks > 0 && wouldJoin(last, piece)) {
            return this.newLine(this.clauseLevel + 1);
        }
        const wraps = last.text === ',' && !this.isFlat && this.column + 1 + this.widthToComma(index) > LINE_WIDTH;
        return wraps ? this.newLine(this.clauseLevel + 1) : ' ';
    }

    /** A comment on a line of its own: with the clauses, or inside one. */
    private ownLine(index: number, breaks: number): string {
        const next = this.pieces[this.nextWord[index]!];
        const isBetween = !next || next.startsClause || next.text === '}';
        return isBetween ? this.betweenClauses(index, breaks) : this.newLine(this.clauseLevel + 1);
    }

    private betweenClauses(index: number, breaks: number): string {
        const isFirst = this.pieces[index - 1]!.text === '{' && this.pieces[index - 1]!.block !== undefined;
        const isBlank = !isFirst && (breaks > 1 || (this.around.length === 0 && this.isBlankDue));
        this.isBlankDue = false;
        return (isBlank ? '\n' : '') + this.newLine(this.around.length);
    }

    private newLine(level: number): string {
        return `\n${INDENT.repeat(level)}`;
    }

    private get isFlat(): boolean {
        return this.around.at(-1)?.isFlat ?? false;
    }

    private lineBreaks(index: number): number {
        const gap = this.text.slice(this.pieces[index - 1]!.end, this.pieces[index]!.start);
        return gap.match(/\r\n|\n|\r/g)?.length ?? 0;
    }

    private advance(gap: string, text: string): void {
        const line = (gap + text).split(/\r\n|\n|\r/).at(-1)!;
        this.column = (/[\n\r]/.test(gap + text) ? 0 : this.column) + widthOf(line);
    }

    /** The last words of the items of the file behind which a blank line is due. */
    private blanksDue(): ReadonlySet<number> {
        const items: { readonly end: number; readonly isOpen: boolean; readonly isUse: boolean }[] = [];
        for (let start = this.nextWord[0] ?? 0; start < this.pieces.length;) {
            const end = this.clauseEnd[start]!;
            const item = this.pieces.slice(start, end + 1);
            const isOpen = item.some(({ block }) => block && !block.isFlat);
            items.push({ end, isOpen, isUse: item[0]!.text === 'use' });
            start = this.nextWord[end + 1] ?? this.pieces.length;
        }
        const isApart = (at: number): boolean => {
            const [item, next] = [items[at]!, items[at + 1]];
            return item.isOpen || (next !== undefined && (next.isOpen || item.isUse !== next.isUse));
        };
        return new Set(items.filter((_, at) => isApart(at)).map(({ end }) => end));
    }

    // ---------------------------------------------------------------- widths
    private chooseFlatBlocks(): void {
        const clauses: number[] = [];
        this.pieces.forEach(({ startsClause, block, text }, index) => {
            while (clauses.length > 0 && this.clauseEnd[clauses.at(-1)!]! < index) {
                clauses.pop();
            }
            if (startsClause) {
                clauses.push(index);
            }
            if (block && text === '{') {
                block.isFlat = this.fitsOneLine(block, clauses.at(-1) ?? index, clauses.length - 1);
            }
        });
    }

    private fitsOneLine(block: PlacedBlock, clause: number, level: number): boolean {
        const { open, close, type, holdsBlock } = block;
        if (close === open + 1) {
            return true;
        }
        const written = this.text.slice(this.pieces[open]!.start, this.pieces[close]!.end);
        if (ALWAYS_OPEN.has(type) || holdsBlock || /[\n\r]/.test(written)) {
            return false;
        }
        // Equipment stands in a list, which may be broken at its commas.
        const comma = type === 'Stock' ? this.lastComma(clause, open) : -1;
        const start = comma < 0 ? clause : comma + 1;
        const indent = INDENT.length * (comma < 0 ? level : level + 1);
        return indent + this.flatWidth(start, close) <= LINE_WIDTH;
    }

    private lastComma(from: number, to: number): number {
        return this.pieces.findLastIndex(({ text }, index) => index > from && index < to && text === ',');
    }

    /** The width of these pieces on one line. */
    private flatWidth(from: number, to: number): number {
        let width = widthOf(this.pieces[from]!.text);
        for (let index = from + 1; index <= to; index++) {
            const piece = this.pieces[index]!;
            const last = this.pieces[index - 1]!;
            const gap =
                piece.startsClause && last.text !== '{' && last.sort === 'word' ? GAP : isTight(last, piece) ? '' : ' ';
            width += gap.length + widthOf(piece.text);
        }
        return width;
    }

    /** The width from a piece to the next comma of its clause, to the clause's end, or to a block on several lines. */
    private widthToComma(from: number): number {
        const end = this.clauseEnd[from]!;
        for (let to = from; ; to++) {
            const { block, text } = this.pieces[to]!;
            if (block?.isFlat && text === '{') {
                to = block.close;
            }
            if (to >= end || text === ',' || (block && text === '{' && !block.isFlat)) {
                return this.flatWidth(from, Math.min(to, end));
            }
        }
    }
}

/** For each piece, the next word from it on, and the last word of its clause: of the innermost one that is not over. */
function lookAhead(pieces: readonly Piece[]): { nextWord: number[]; clauseEnd: number[] } {
    const nextWord: number[] = Array<number>(pieces.length).fill(pieces.length);
    for (let index = pieces.length - 1, next = pieces.length; index >= 0; index--) {
        next = pieces[index]!.sort === 'word' ? index : next;
        nextWord[index] = next;
    }
    const clauseEnd: number[] = Array<number>(pieces.length).fill(-1);
    const clauses: number[][] = [[]];
    let lastWord = -1;
    const end = (): void => clauses.pop()?.forEach((index) => (clauseEnd[index] = lastWord));
    pieces.forEach(({ sort, startsClause, block, text }, index) => {
        if (sort !== 'word') {
            return;
        }
        if (startsClause) {
            end();
            clauses.push([]);
        } else if (block && text === '}') {
            end();
        }
        clauses.at(-1)?.push(index);
        lastWord = index;
        if (block && text === '{') {
            clauses.push([]);
        }
    });
    while (clauses.length > 0) {
        end();
    }
    return { nextWord, clauseEnd };
}

function isTight(last: Piece, piece: Piece): boolean {
    return piece.sort === 'word' && last.sort === 'word' && (/^[,:/]$/.test(piece.text) || last.text === '/');
}

/** Words that read as one on one line: a count and a piece called `pm`, a number and a fraction. */
function wouldJoin(last: Piece, piece: Piece): boolean {
    const joint = /^(\d+\/\d|[ap]\.?m|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)/i;
    return /\d$/.test(last.text) && joint.test(piece.text);
}

function widthOf(text: string): number {
    return [...text].length;
}
