import { spanOf, type PlainNode } from './places.js';
import { parseText, type Parsed } from './parse.js';
import { readPlainly, type KnownBlocks, type Stop } from './plain-parser.js';
import { BRACES, type Stretch } from './stretches.js';
import type { File } from './generated/ast.js';

// The framework's parser explains mistakes and takes long over it. While somebody types, a line or two can't be read: it is
// given those alone, in the blocks that they stand in, and all around them is read as a text in which nothing is amiss.

/** The blocks in which every clause stands by itself, whatever stands before and behind it. */
const BODIES = new Set([
    ...['File', 'Event', 'Menu', 'House', 'Room', 'Team', 'Tasks', 'Seating', 'Kind', 'Piece', 'Substance', 'Diet'],
    ...['LocalCode', 'Course', 'Dish'],
]);

/** How often the lines that can't be read are found to be more. */
const MOST_TRIES = 4;

/** A node of either parser. */
type Node = Readonly<Record<string, unknown>> & { readonly $type: string };

/**
 * Parses a text in one place of which something is amiss, as `parseText` would.
 * @param first where it ceases to be plain
 * @param blocks as `readPlainly` takes them
 * @returns `undefined` where that place is not to be told from the rest, or is most of the text: all is to be parsed then
 */
export function parseMistakenLines(text: string, first: Stop, blocks?: KnownBlocks): Parsed | undefined {
    const body = bodyOf(text, first);
    if (!body) {
        return undefined;
    }
    const { start } = body;
    let end = endOfLines(text, start, body.stop);
    for (let tries = 0; tries < MOST_TRIES && end !== undefined && end - start < text.length / 2; tries++) {
        const around = readPlainly(text.slice(0, start) + blank(text.slice(start, end)) + text.slice(end), blocks);
        const next = nextToken(text, end);
        const path = around.tree && pathTo(around.tree, body, { start, end });
        if (path && startsClause(path.at(-1)!, next, text.length)) {
            return joined(text, path, { start, end });
        }
        const stop = around.stop?.offset ?? next;
        if (stop < end) {
            return undefined;
        }
        end = endOfLines(text, start, stop);
    }
    return undefined;
}

interface Body {
    readonly type: string;
    /** Where its block begins, with its heading; 0 for the file. */
    readonly from: number;
    /** Of what can't be read: a clause before it may be a part of it. */
    readonly start: number;
    /** The token at which reading stopped. */
    readonly stop: number;
}

/** The innermost block that the mistake stands in. */
function bodyOf(text: string, { offset: stop, inside }: Stop): Body | undefined {
    const place = inside.findLastIndex(
        ({ node, start }) =>
            BODIES.has(node.$type as string) &&
            (node.$type === 'File' || (start >= 0 && openingBrace(text, start) < stop)),
    );
    const body = inside[place];
    if (!body) {
        return undefined;
    }
    const before = clausesOf(body.node as Node).at(-1);
    const begun = inside.slice(place + 1).find(({ start }) => start >= 0)?.start ?? stop;
    const last = before && text[before.end - 1] !== '}' ? before.start : stop;
    return {
        type: body.node.$type as string,
        from: body.node.$type === 'File' ? 0 : body.start,
        start: Math.min(last, begun, stop),
        stop,
    };
}

/** The end of the line on which a token stands; of the blocks opened on the way, and before the brace that closes their own. */
function endOfLines(text: string, start: number, token: number): number | undefined {
    const tokens = new RegExp(BRACES);
    tokens.lastIndex = start;
    const lineEnd = (from: number): number => {
        const found = text.slice(from).search(/[\n\r]/);
        return found < 0 ? text.length : from + found;
    };
    let end = lineEnd(token);
    let depth = 0;
    for (let found = tokens.exec(text); found !== null; found = tokens.exec(text)) {
        if (found.index >= end && depth === 0) {
            return end;
        }
        depth += found[0] === '{' ? 1 : found[0] === '}' ? -1 : 0;
        if (depth < 0) {
            return found.index > token ? found.index : undefined;
        }
        end = Math.max(end, lineEnd(tokens.lastIndex));
    }
    return depth === 0 ? end : undefined;
}

const openingBrace = (text: string, from: number): number => {
    const tokens = new RegExp(BRACES);
    tokens.lastIndex = from;
    for (let found = tokens.exec(text); found !== null; found = tokens.exec(text)) {
        if (found[0] === '{') {
            return found.index;
        }
    }
    return text.length;
};

const blank = (text: string): string => text.replace(/[^\n\r]/g, ' ');

const NOTHING_TO_READ = /(?:[\s\u00A0\uFEFF]|\/\/[^\n\r]*|\/\*[\s\S]*?\*\/)*/y;

function nextToken(text: string, from: number): number {
    const hidden = new RegExp(NOTHING_TO_READ);
    hidden.lastIndex = from;
    hidden.test(text);
    return hidden.lastIndex;
}

interface Placed extends Stretch {
    readonly node: Node;
}

/** What stands in a block, in the order of the text. */
function clausesOf(body: Node): Placed[] {
    return Object.values(body)
        .filter((value): value is Node[] => Array.isArray(value))
        .flat()
        .flatMap((node) => {
            const span = typeof node === 'object' && spanOf(node);
            return span ? [{ node, start: span.offset, end: span.end }] : [];
        })
        .toSorted((a, b) => a.start - b.start);
}

/** The nodes from the file down to the block that holds a place. */
function pathTo(tree: File, { type, from }: Body, { start, end }: Stretch): readonly Node[] | undefined {
    const path: Node[] = [];
    let inner: Placed | undefined = { node: tree as unknown as Node, start: 0, end: 0 };
    while (inner && BODIES.has(inner.node.$type)) {
        path.push(inner.node);
        if (inner.node.$type === type && inner.start === from) {
            return path;
        }
        inner = clausesOf(inner.node).find((clause) => clause.start < start && clause.end > end);
    }
    return undefined;
}

/** Whether the lines left out are whole clauses: behind them begins another, or their block ends. */
function startsClause(body: Node, next: number, endOfText: number): boolean {
    const end = body.$type === 'File' ? endOfText : spanOf(body)!.end - 1;
    return next === end || clausesOf(body).some(({ start }) => start === next);
}

/** What the framework says of the lines that can't be read, put in among all others. */
function joined(text: string, path: readonly Node[], lines: Stretch): Parsed | undefined {
    const kept = [lines, ...path.slice(1).flatMap((body) => fence(text, body))].toSorted((a, b) => a.start - b.start);
    let alone = '';
    for (const { start, end } of kept) {
        alone += blank(text.slice(alone.length, start)) + text.slice(start, end);
    }
    const parsed = parseText(alone + blank(text.slice(alone.length)));
    const { problems, mistyped = [], unclosed = [] } = parsed;
    if (problems.length + mistyped.length + unclosed.length === 0) {
        return undefined;
    }
    let mistaken = parsed.tree as unknown as Node;
    for (const body of path.slice(1)) {
        const [only, ...others] = clausesOf(mistaken);
        if (!only || others.length > 0 || only.node.$type !== body.$type || only.start !== spanOf(body)?.offset) {
            return undefined;
        }
        mistaken = only.node;
    }
    putIn(path.at(-1)!, mistaken);
    for (const body of path) {
        (body as Partial<PlainNode>).$isMistaken = true;
    }
    // Texts that were never closed are looked for among the framework's tokens.
    return { ...parsed, tree: Object.assign(path[0]!, { $cstNode: parsed.tree.$cstNode }) as unknown as File };
}

/** A block's heading with its opening brace, and its closing one. */
function fence(text: string, body: Node): Stretch[] {
    const { offset, end } = spanOf(body)!;
    return [
        { start: offset, end: openingBrace(text, offset) + 1 },
        { start: end - 1, end },
    ];
}

function putIn(body: Node, mistaken: Node): void {
    for (const [property, more] of Object.entries(mistaken)) {
        const known = body[property];
        if (Array.isArray(known) && Array.isArray(more) && typeof more[0] === 'object') {
            const place = (node: unknown): number => spanOf(node as never)!.offset;
            const all = [...(known as unknown[]), ...(more as unknown[])].toSorted((a, b) => place(a) - place(b));
            known.splice(0, known.length, ...all);
        }
    }
}
