import { AstUtils, type AstNode } from 'langium';
import { describe, expect, test } from 'vitest';
import { parseText, type Parsed } from '../packages/language/src/grammar/parse.js';
import { filesBelow } from './support/samples.js';

// Texts as they are while they are typed: cut off anywhere, with a word left out, written twice or in the wrong place.

const files = Object.entries({
    ...filesBelow('examples'),
    ...filesBelow('packages/language/src/cupboard'),
    ...filesBelow('packages/cli/starter'),
}).filter(([path]) => path.endsWith('.cover'));

/** Of each file this many prefixes, spread over it; a short file gives all it has. */
const MOST_PREFIXES = 70;
const EDITED = [
    'examples/saltmarsh-hall/lantern-supper.cover',
    'examples/saltmarsh-hall/house.cover',
    'examples/saltmarsh-hall/long-gallery.cover',
    'examples/saltmarsh-hall/table-of-eight-guests.cover',
    'packages/language/src/cupboard/knives.cover',
];
/** Words of one edited file that are edited, spread over it. */
const MOST_WORDS = 160;

const JARGON =
    /\b(token|expecting|unexpected|invalid|parse|syntax|undefined|null|NaN|EOF|ID|STRING|NUMBER|DATE|TIME)\b|[a-z][A-Z]|\berror\b/;

function expectSound(text: string, parsed: Parsed): void {
    let last = 0;
    for (const { start, end, message, hint } of parsed.problems) {
        expect(start).toBeGreaterThanOrEqual(last);
        expect(end).toBeGreaterThanOrEqual(start);
        expect(end).toBeLessThanOrEqual(text.length);
        last = start;
        for (const sentence of [message, hint ?? '.']) {
            expect(sentence).toMatch(/^[A-Z`"].*[.?]$|^\.$/s);
            expect(sentence.replace(/`[^`]*`/g, '')).not.toMatch(JARGON);
        }
    }
}

function expectPlaced(text: string, { tree }: Parsed): void {
    for (const node of AstUtils.streamAst(tree)) {
        const { offset, end } = node.$cstNode ?? { offset: 0, end: 0 };
        expect(offset).toBeGreaterThanOrEqual(0);
        expect(end).toBeGreaterThanOrEqual(offset);
        expect(end).toBeLessThanOrEqual(text.length);
    }
}

/** Spread evenly, the first and the last among them. */
function spread<T>(all: readonly T[], most: number): T[] {
    const step = Math.max(1, (all.length - 1) / (most - 1));
    return all.filter((_, index) => all.length <= most || Math.floor(index / step) !== Math.floor((index - 1) / step));
}

describe('every text cut off', () => {
    test.each(files)('%s', (_, whole) => {
        const ends = Array.from({ length: whole.length + 1 }, (_, index) => index);
        for (const end of spread(ends, MOST_PREFIXES)) {
            const text = whole.slice(0, end);
            const parsed = parseText(text);
            expectSound(text, parsed);
            expectPlaced(text, parsed);
        }
    });
});

// ---------------------------------------------------------------- one word changed

interface Placed {
    readonly meaning: string;
    readonly start: number;
    readonly end: number;
    /** Of the menu around it, if any. */
    readonly parentEnd: number;
}

/** The items of a file and the entries of its menus. */
function blocksOf({ tree }: Parsed): Placed[] {
    const place = (node: AstNode, parentEnd: number): Placed => {
        const { offset: start, end } = node.$cstNode!;
        return { meaning: meaningOf(node), start, end, parentEnd };
    };
    return [...tree.uses, ...tree.items].flatMap((item) => [
        place(item, Infinity),
        ...(item.$type === 'Menu' ? item.entries.map((entry) => place(entry, item.$cstNode!.end)) : []),
    ]);
}

function meaningOf(node: AstNode): string {
    return JSON.stringify(node, (key: string, value: unknown) => (/^\$(?!type)/.test(key) ? undefined : value));
}

interface Word {
    readonly start: number;
    readonly end: number;
}

function wordsOf(text: string): Word[] {
    const WORD = /"[^"\n]*"|\/\/.*|[\p{L}\d]+(?:[-:./][\p{L}\d]+)*|[^\s\p{L}\d]/gu;
    return [...text.matchAll(WORD)]
        .filter(([word]) => !word.startsWith('//'))
        .map(({ 0: word, index }) => ({ start: index, end: index + word.length }));
}

interface Edit {
    readonly text: string;
    /** What was touched, in the text before. */
    readonly start: number;
    readonly end: number;
}

const edits: Readonly<Record<string, (text: string, words: readonly Word[], at: number) => Edit | undefined>> = {
    'left out': (text, words, at) => {
        const { start, end } = words[at]!;
        return { text: text.slice(0, start) + text.slice(end), start, end };
    },
    'written twice': (text, words, at) => {
        const { start, end } = words[at]!;
        return { text: `${text.slice(0, end)} ${text.slice(start)}`, start, end };
    },
    'exchanged with the next': (text, words, at) => {
        const [word, next] = [words[at]!, words[at + 1]];
        if (!next) {
            return undefined;
        }
        const [a, between, b] = [
            text.slice(word.start, word.end),
            text.slice(word.end, next.start),
            text.slice(next.start, next.end),
        ];
        const changed = text.slice(0, word.start) + b + between + a + text.slice(next.end);
        return { text: changed, start: word.start, end: next.end };
    },
};

describe.each(Object.keys(edits))('every word %s', (kind) => {
    test.each(EDITED)('%s', (path) => {
        const text = files.find(([name]) => name === path)![1];
        const before = parseText(text);
        expect(before.problems).toEqual([]);
        const blocks = blocksOf(before);
        const words = wordsOf(text);
        for (const at of spread([...words.keys()], MOST_WORDS)) {
            const edit = edits[kind]!(text, words, at);
            if (!edit) {
                continue;
            }
            const after = parseText(edit.text);
            const where = `${JSON.stringify(text.slice(edit.start, edit.end))} of line ${text.slice(0, edit.start).split('\n').length}`;
            expectSound(edit.text, after);
            expectPlaced(edit.text, after);
            expect(after.problems.length, where).toBeLessThanOrEqual(kind === 'left out' ? 3 : 4);
            expectLaterBlocks(blocks, edit, after, where);
        }
    });
});

/** Blocks that begin behind the change, and behind the menu whose own words it touches, are read as before. */
function expectLaterBlocks(blocks: readonly Placed[], edit: Edit, after: Parsed, where: string): void {
    const touched = blocks.filter(({ start, end }) => start < edit.end && edit.start < end);
    const entries = touched.filter(({ parentEnd }) => parentEnd < Infinity);
    const isInEntries = entries.some(({ start }) => start <= edit.start) && entries.some(({ end }) => edit.end <= end);
    const from = Math.max(edit.end, ...(isInEntries ? entries : touched).map(({ end }) => end));
    const later = blocks.filter(({ start }) => start >= from).map(({ meaning }) => meaning);
    const read = new Set(blocksOf(after).map(({ meaning }) => meaning));
    expect(
        later.filter((meaning) => !read.has(meaning)),
        where,
    ).toEqual([]);
}
