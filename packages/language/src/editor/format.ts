import { parseText } from '../grammar/parse.js';
import { stretchesOf } from '../grammar/stretches.js';
import type { SyntaxProblem } from '../grammar/syntax-problems.js';
import { difference } from '../plan/text-difference.js';
import { applyEdits, type TextEdit } from './fixes.js';
import { layOut } from './layout.js';
import { piecesIn, piecesOf, type Piece } from './pieces.js';

/** UTF-16 offsets. */
export interface TextRange {
    readonly start: number;
    readonly end: number;
}

/** @returns the text in the canonical layout, or what stands in the way where it can't be read whole */
export function formatText(text: string): { readonly text: string } | { readonly problems: readonly SyntaxProblem[] } {
    const found = editsFor(text);
    return 'problems' in found ? found : { text: applyEdits(text, found.edits) };
}

/**
 * The smallest edits that bring a text into the canonical layout; none where it can't be read whole.
 * @param range only lines that it touches are changed
 */
export function formatEdits(text: string, range?: TextRange): TextEdit[] {
    const found = editsFor(text);
    if ('problems' in found) {
        return [];
    }
    if (!range) {
        return found.edits;
    }
    const start = lineStart(text, range.start);
    const end = lineEnd(text, Math.max(range.start, range.end));
    return found.edits.filter((edit) => edit.start >= start && edit.end <= end);
}

function editsFor(text: string): { edits: TextEdit[] } | Unreadable {
    const pieces = piecesByBlock(text) ?? piecesOfWhole(text);
    if ('problems' in pieces) {
        return pieces;
    }
    const lineBreak = lineBreakOf(text);
    const { before, atEnd } = layOut(text, pieces);
    const edits: TextEdit[] = [];
    const put = (start: number, end: number, words: string): void => {
        edits.push(...smallestEdit(text, start, end, words.replaceAll('\n', lineBreak)));
    };
    let last = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK.length : 0;
    pieces.forEach((piece, index) => {
        put(last, piece.start, before[index]!);
        put(piece.start, piece.end, withoutTrailingBlanks(piece));
        last = piece.end;
    });
    put(last, text.length, atEnd);
    return { edits };
}

/** Block by block, so that no tree of the whole text is ever held; `undefined` where a part of it can't be read. */
function piecesByBlock(text: string): Piece[] | undefined {
    const parts = stretchesOf(text)?.map(({ start, end }) => ({ start, read: readPieces(text.slice(start, end)) }));
    const read = (parts ?? []).flatMap(({ start, read: each }) =>
        'pieces' in each ? [{ start, pieces: each.pieces }] : [],
    );
    return read.length === parts?.length ? piecesOf(read) : undefined;
}

function piecesOfWhole(text: string): Piece[] | Unreadable {
    const read = readPieces(text);
    return 'pieces' in read ? piecesOf([{ start: 0, pieces: read.pieces }]) : read;
}

interface Unreadable {
    readonly problems: readonly SyntaxProblem[];
}

function readPieces(text: string): { readonly pieces: readonly Piece[] } | Unreadable {
    const { tree, problems, unclosed = [] } = parseText(text);
    return problems.length > 0 || unclosed.length > 0
        ? { problems: [...problems, ...unclosed].sort((a, b) => a.start - b.start) }
        : { pieces: piecesIn(tree) };
}

const BYTE_ORDER_MARK = '\uFEFF';

/** The line break that most lines end with. */
function lineBreakOf(text: string): '\n' | '\r\n' {
    const all = text.match(/\r\n|\n/g) ?? [];
    return all.filter((each) => each === '\r\n').length * 2 > all.length ? '\r\n' : '\n';
}

/** Only comments can have blanks at the end of a line. */
function withoutTrailingBlanks({ sort, text }: Piece): string {
    return sort === 'word' ? text : text.replace(/\r\n|\r/g, '\n').replace(/[^\S\n]+(?=\n|$)/g, '');
}

/** Leaves out what stays the same at both ends. */
function smallestEdit(text: string, start: number, end: number, words: string): TextEdit[] {
    const old = text.slice(start, end);
    if (old === words) {
        return [];
    }
    const changed = difference(old, words);
    return [{ start: start + changed.start, end: start + changed.end, text: changed.text }];
}

function lineStart(text: string, offset: number): number {
    return Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
}

function lineEnd(text: string, offset: number): number {
    const found = /[\n\r]/.exec(text.slice(offset));
    return found ? offset + found.index : text.length;
}
