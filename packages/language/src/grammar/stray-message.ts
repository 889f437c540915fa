import type { IToken, TokenType } from 'chevrotain';
import type { Body } from './grammar-shape.js';
import { either, quoted, SURPLUS_BRACE, type Said } from './messages.js';
import { partsOf } from './phrases.js';
import { BLOCKS, CLAUSE_SHAPES, PHRASES } from './words-of-the-language.js';
import { isKeyword, isWord, nearestWord, wordsOf } from './words.js';

export interface Stray {
    readonly body: Body;
    readonly bodies: readonly Body[];
    readonly found: IToken;
    readonly before: IToken | undefined;
    readonly isOnSameLine: boolean;
    /** The words of the language that are never names. */
    readonly keywords: readonly string[];
}

/** The key under which a block is named. */
export function blockKey({ rule, starts }: Body): string {
    if (rule !== 'HouseClause') {
        return rule;
    }
    return `${rule} ${[...starts].some(({ name }) => name === 'NUMBER') ? 'washing' : 'laying'}`;
}

export function strayMessage(stray: Stray): Said {
    const { found, before } = stray;
    const { image, tokenType } = found;
    if (tokenType.name === 'ID' || isWord(tokenType)) {
        return strayWord(stray);
    }
    switch (image) {
        case '}':
            return SURPLUS_BRACE;
        case '{':
            return { message: 'This opening brace `{` has no words before it that say what the block is.' };
        case ',':
            return { message: 'Nothing can be added with a comma here.' };
        default:
            break;
    }
    if (isKeyword(tokenType)) {
        const needs = /^[°%]/.test(image) ? 'a number' : 'a name';
        return { message: `${quoted(image)} has no ${needs.slice(2)} before it.` };
    }
    const clause = CLAUSE_SHAPES[blockKey(stray.body)];
    if (clause !== undefined && before?.image === '{') {
        return { message: `${quoted(image)} starts nothing ${place(stray.body)}; a line there reads like ${clause}.` };
    }
    return stray.isOnSameLine && before && !isBrace(before)
        ? { message: `A word or a comma is missing before ${quoted(image)}.` }
        : { message: `${quoted(image)} has no word before it that says what it is.` };
}

function isBrace({ image }: IToken): boolean {
    return image === '{' || image === '}';
}

function place(body: Body): string {
    return BLOCKS[blockKey(body)]?.place ?? 'here';
}

function strayWord({ body, bodies, found, before, isOnSameLine, keywords }: Stray): Said {
    const { image, tokenType } = found;
    const isName = tokenType.name === 'ID';
    const starts = wordsOf(body.starts);
    if (isName && isOnSameLine && before?.tokenType.name === 'NUMBER') {
        const unit = nearestWord(image, UNITS);
        return unit === undefined
            ? { message: `${quoted(image)} is no unit.` }
            : { message: `${quoted(image)} is no unit. Did you mean \`${unit}\`?`, suggestion: unit };
    }
    const starter = isName ? nearestWord(image, starts) : undefined;
    if (starter !== undefined) {
        const message = `${quoted(image)} starts nothing ${place(body)}. Did you mean \`${starter}\`?`;
        return { message, suggestion: starter };
    }
    const phraseWord =
        isName && isOnSameLine
            ? nearestWord(
                  image,
                  keywords.filter((word) => word.length >= 4),
              )
            : undefined;
    if (phraseWord !== undefined) {
        const message = `${quoted(image)} means nothing here. Did you mean \`${phraseWord}\`?`;
        return { message, suggestion: phraseWord };
    }
    const phrase = isName
        ? undefined
        : PHRASES.find((each) => starts.includes(partsOf(each)[0] ?? '') && partsOf(each).includes(image));
    if (phrase !== undefined) {
        return {
            message: `${quoted(image)} starts nothing ${place(body)}; it stands in a line such as ${quoted(phrase)}.`,
        };
    }
    const elsewhere = isName ? [] : bodies.filter((other) => place(other) !== place(body) && isTold(other, tokenType));
    const places = [...new Set(elsewhere.map(place))];
    if (places.length > 0 && places.length <= 3) {
        return { message: `${quoted(image)} starts nothing ${place(body)}; it belongs ${either(places)}.` };
    }
    if (isName && isOnSameLine && before && !isBrace(before)) {
        return { message: `A word or a comma is missing before ${quoted(image)}.` };
    }
    const shape = CLAUSE_SHAPES[blockKey(body)];
    const words = BLOCKS[blockKey(body)]?.words ?? [];
    const can =
        shape === undefined
            ? `a line there starts with a word such as ${either(words.map(quoted))}`
            : `a line there reads like ${shape}`;
    return { message: `${quoted(image)} starts nothing ${place(body)}; ${can}.` };
}

/** A block in which a word starts a clause of its own, not one whose clauses start with any name. */
function isTold({ starts }: Body, type: TokenType): boolean {
    return starts.has(type) && ![...starts].some(({ name }) => name === 'ID' && starts.size > 60);
}

const UNITS: readonly string[] = [
    'mm',
    'cm',
    'inch',
    'ft',
    'ml',
    'cl',
    'oz',
    'lb',
    'kg',
    'min',
    'hours',
    'minutes',
    'litres',
    'gram',
];
