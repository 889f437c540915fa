import type { IToken, TokenType } from 'chevrotain';
import type { Body } from './grammar-shape.js';
import { didYouMean, either, guestWordMissing, quoted, SURPLUS_BRACE, unquoted, type Said } from './messages.js';
import { partsOf, sortOf } from './phrases.js';
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
    readonly isName: (type: TokenType) => boolean;
    /** The words from `found` on that may be meant as a text, as they are written. */
    readonly words: string;
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
        ? wordMissing(found, stray.body)
        : { message: `${quoted(image)} has no word before it that says what it is.` };
}

function isBrace({ image }: IToken): boolean {
    return image === '{' || image === '}';
}

function place(body: Body): string {
    return BLOCKS[blockKey(body)]?.place ?? 'here';
}

function strayWord(stray: Stray): Said {
    const { found, isOnSameLine, before } = stray;
    const behind = isOnSameLine && before && !isBrace(before) ? before : undefined;
    if (stray.body.isOfTexts && stray.words !== '') {
        const { image } = found;
        return behind
            ? (mistyped(stray) ?? { ...wordMissing(found, stray.body), ...guestWordMissing(image, stray.words) })
            : unquoted(stray.words);
    }
    return (
        (behind && (notUnit(found, behind) ?? notComma(found, behind))) ??
        mistyped(stray) ??
        (behind && notQuoted(stray, behind)) ??
        (behind && twoWords(stray, behind)) ??
        elsewhere(stray) ??
        nothingStarts(stray)
    );
}

/** `20 mni`, `5.30 pm` */
function notUnit({ image, tokenType }: IToken, before: IToken): Said | undefined {
    if (tokenType.name !== 'ID' || before.tokenType.name !== 'NUMBER') {
        return undefined;
    }
    if (/^[ap]m$/i.test(image)) {
        return { message: `A time is written with a colon, such as 17:30 or 5:30 ${image}.` };
    }
    const unit = nearestWord(image, UNITS);
    return unit === undefined
        ? { message: `${quoted(image)} is no unit.` }
        : didYouMean(`${quoted(image)} is no unit.`, unit);
}

/** `contains milk and mustard` */
function notComma({ image }: IToken, before: IToken): Said | undefined {
    if (image !== 'and' && image !== 'or') {
        return undefined;
    }
    const other = image === 'and' ? 'or' : 'and';
    const takesOther = PHRASES.some((phrase) =>
        partsOf(phrase).some((part, at, all) => part === before.image && all[at + 1] === other),
    );
    return takesOther
        ? didYouMean(`${quoted(image)} means nothing here.`, other)
        : { message: `Between the names of this list stands a comma, not ${quoted(image)}.`, suggestion: ',' };
}

/** `garnish parsley` */
function notQuoted({ words }: Stray, before: IToken): Said | undefined {
    const takesText = PHRASES.some(
        (phrase) => partsOf(phrase)[0] === before.image && sortOf(partsOf(phrase)[1] ?? '') === 'text',
    );
    return takesText && words !== '' ? unquoted(words) : undefined;
}

function mistyped({ body, found: { image, tokenType }, isOnSameLine, keywords }: Stray): Said | undefined {
    if (tokenType.name !== 'ID') {
        return undefined;
    }
    const starter = nearestWord(image, wordsOf(body.starts));
    if (starter !== undefined) {
        return didYouMean(`${quoted(image)} starts nothing ${place(body)}.`, starter);
    }
    const long = isOnSameLine ? keywords.filter((word) => word.length >= 4) : [];
    const near = nearestWord(image, long);
    return near === undefined ? undefined : didYouMean(`${quoted(image)} means nothing here.`, near);
}

/** `eaten with soup spoon` */
function twoWords({ found, isName, body }: Stray, before: IToken): Said | undefined {
    if (!isName(found.tokenType)) {
        return undefined;
    }
    const isAfterName = isName(before.tokenType) && !(isWord(before.tokenType) && startsPhrase(before));
    const joined = `${before.image}-${found.image}`;
    return isAfterName && sortOf(before.image) === 'name' && sortOf(found.image) === 'name'
        ? {
              message: `A comma or a hyphen is missing before ${quoted(found.image)}.`,
              hint: `A name of two words is written ${quoted(joined)}.`,
          }
        : wordMissing(found, body);
}

/** `"A. Reed" vegetarian` */
function wordMissing({ image }: IToken, body: Body): Said {
    const shape = CLAUSE_SHAPES[blockKey(body)];
    return {
        message: `A word or a comma is missing before ${quoted(image)}.`,
        ...(shape === undefined ? {} : { hint: `A line there reads like ${shape}.` }),
    };
}

function startsPhrase({ image }: IToken): boolean {
    return PHRASES.some((phrase) => partsOf(phrase)[0] === image);
}

/** A word of the language that stands in other lines, or in other blocks. */
function elsewhere({ body, bodies, found: { image, tokenType } }: Stray): Said | undefined {
    if (tokenType.name === 'ID') {
        return undefined;
    }
    const starts = wordsOf(body.starts);
    const isStart = (first = ''): boolean => starts.includes(first) || (body.isOfTexts && sortOf(first) === 'text');
    const phrase = PHRASES.find((each) => isStart(partsOf(each)[0]) && partsOf(each).includes(image));
    if (phrase !== undefined) {
        return {
            message: `${quoted(image)} starts nothing ${place(body)}; it stands in a line such as ${quoted(phrase)}.`,
        };
    }
    const others = bodies.filter((other) => place(other) !== place(body) && isTold(other, tokenType));
    const places = [...new Set(others.map(place))];
    return places.length > 0 && places.length <= 3
        ? { message: `${quoted(image)} starts nothing ${place(body)}; it belongs ${either(places)}.` }
        : undefined;
}

function nothingStarts({ body, found: { image } }: Stray): Said {
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
