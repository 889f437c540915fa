import type { IToken, TokenType } from 'chevrotain';
import { didYouMean, either, guestWordMissing, quoted, unquoted, type Said } from './messages.js';
import { isLike, partsOf, sortOf } from './phrases.js';
import { ALSO_WANTED, NAMES, NOTES, PHRASE_OF_RULE, PHRASES, SAID, VALUES } from './words-of-the-language.js';
import { isKeyword, isWord, nearestWord, wordsOf } from './words.js';

/** Something must stand at a place and does not. */
export interface Wanting {
    /** The grammar's rule being read, and the one that called it. */
    readonly rule: string;
    readonly caller: string;
    readonly wanted: readonly TokenType[];
    /** `undefined` at the end of the text. */
    readonly found: IToken | undefined;
    /** The two tokens before. */
    readonly before: IToken | undefined;
    readonly beforeThat: IToken | undefined;
    readonly isOnSameLine: boolean;
    /** Whether `found` may stand after what is missing. */
    readonly goesOn: boolean;
    /** The words from `found` on that may be meant as a text, as they are written. */
    readonly words: string;
}

export function wantingMessage(wanting: Wanting): Said {
    const { wanted, found, isOnSameLine } = wanting;
    const said =
        found && isOnSameLine
            ? (SAID[`${wanting.rule} ${found.image}`] ??
              wordForName(wanting, found) ??
              textWithoutQuotes(wanting) ??
              mistypedWord(wanted, found) ??
              guestWord(wanting, found))
            : undefined;
    if (said) {
        return said;
    }
    const phrase = PHRASE_OF_RULE[wanting.rule] ?? phraseWith(wanting);
    const such = phrase === undefined ? '' : `, as in ${quoted(phrase)}`;
    const words = wordsOf(wanted).flatMap((word) =>
        [...(ALSO_WANTED[`${wanting.rule} ${word}`] ?? []), word].map(quoted),
    );
    const onlyWords = wanted.every((type) => isWord(type) || type.name === ',');
    if (onlyWords && words.length <= MOST_WORDS) {
        const hint = NOTES[`${wanting.rule} ${wanted[0]?.name}`];
        const message = `${either(words)} is expected ${whereOf(wanting)}${such}.`;
        return hint === undefined ? { message } : { message, hint };
    }
    const thing = wantedThing(wanting);
    return {
        message: thing
            ? `${thing.what} is expected ${whereOf(wanting)}, such as ${thing.example}.`
            : `${expectedSort(wanted)} is expected ${whereOf(wanting)}${such}.`,
    };
}

/** More words than these are no help. */
const MOST_WORDS = 9;

function whereOf({ found, before, isOnSameLine }: Wanting): string {
    if (found && isOnSameLine) {
        return isKeyword(found.tokenType) ? `before ${quoted(found.image)}` : 'here';
    }
    return before ? `after ${quoted(before.image)}` : 'here';
}

const takesName = (wanted: readonly TokenType[]): boolean =>
    wanted.some(({ name }) => name === 'ID') && wanted.some(({ name }) => name === 'STRING');

/** `course` where a name is wanted; not where the word goes on after a name that was left out. */
function wordForName({ wanted, goesOn }: Wanting, found: IToken): Said | undefined {
    if (!takesName(wanted) || !isWord(found.tokenType) || goesOn) {
        return undefined;
    }
    const suggestion = `"${found.image}"`;
    return {
        message: `${quoted(found.image)} is a word of the language.`,
        hint: `To use it as a name, put it in quotes: \`${suggestion}\`.`,
        suggestion,
    };
}

/** `"A. Reed" at T3, vegetarian` */
function guestWord({ rule, words }: Wanting, { image, tokenType }: IToken): Said | undefined {
    const isMeant = tokenType.name === 'ID' || tokenType.name === 'STRING';
    return rule === 'NamedGuestPhrase' && isMeant ? guestWordMissing(image, words) : undefined;
}

/** `event Lantern night {` */
function textWithoutQuotes({ wanted, words }: Wanting): Said | undefined {
    if (wanted.length !== 1 || wanted[0]?.name !== 'STRING' || words === '') {
        return undefined;
    }
    return unquoted(words);
}

function mistypedWord(wanted: readonly TokenType[], found: IToken): Said | undefined {
    const near = found.tokenType.name === 'ID' ? nearestWord(found.image, wordsOf(wanted)) : undefined;
    return near === undefined ? undefined : didYouMean(`${quoted(found.image)} means nothing here.`, near);
}

const NAME_RULES: ReadonlySet<string> = new Set(['Name', 'AnyName', 'PlainName', 'ClauseWord', 'Soft']);

function wantedThing({ rule, caller, before, wanted }: Wanting): { what: string; example: string } | undefined {
    if (!takesName(wanted)) {
        return VALUES[rule];
    }
    const isMeant = (each: (typeof NAMES)[number]): boolean => each.after === '*' || each.after === before?.image;
    const places = NAME_RULES.has(rule) ? [caller] : [rule];
    const named = places.flatMap((place) => NAMES.find((each) => each.in === place && isMeant(each)) ?? []);
    return named[0]?.thing ?? VALUES[rule] ?? VALUES.Name;
}

function expectedSort(wanted: readonly TokenType[]): string {
    if (wanted.some(({ name }) => name === '{')) {
        return 'An opening brace `{`';
    }
    const sorts: readonly (readonly [string, string])[] = [
        ['STRING', 'A text in quotes'],
        ['NUMBER', 'A number'],
        ['DATE', 'A date'],
        ['TIME', 'A time'],
        ['ID', 'A name'],
    ];
    const sort = sorts.find(([token]) => wanted.some(({ name }) => name === token));
    const sign = wanted.find((type) => isKeyword(type) && !isWord(type));
    return sort?.[1] ?? (sign ? `\`${sign.name}\`` : 'Something more');
}

/** The phrase in which one of the wanted tokens comes after the two tokens before, or after the first word of the phrase. */
function phraseWith({ wanted, before, beforeThat }: Wanting): string | undefined {
    const fits = (next: string): boolean =>
        wanted.some(({ name }) =>
            name === 'NUMBER' ? sortOf(next) === 'number' : name === 'STRING' ? sortOf(next) === 'text' : name === next,
        );
    const isBefore = (parts: readonly string[], index: number): boolean =>
        before !== undefined &&
        isLike(parts[index], before) &&
        (index === 0 ? isWord(before.tokenType) : beforeThat !== undefined && isLike(parts[index - 1], beforeThat));
    return PHRASES.find((phrase) => {
        const parts = partsOf(phrase);
        return parts.some((_, index) => isBefore(parts, index) && fits(parts[index + 1] ?? ''));
    });
}

/** A word that can stand where it stands, but not with what follows it. */
export function lostThreadMessage(
    word: IToken,
    before: IToken | undefined,
    next: IToken | undefined,
    isOnSameLine: boolean,
): Said {
    const phrase =
        PHRASES.find((each) => isInside(partsOf(each), word, before)) ??
        PHRASES.find((each) => isInside(partsOf(each), word));
    const such = phrase === undefined ? '' : `, as in ${quoted(phrase)}`;
    if (!next || !isOnSameLine) {
        return { message: `Something is missing after ${quoted(word.image)}${such}.` };
    }
    const reads = phrase === undefined ? '' : `; a line reads like ${quoted(phrase)}`;
    return { message: `${quoted(next.image)} can’t stand after ${quoted(word.image)}${reads}.` };
}

/** Whether a phrase goes on after a word. */
function isInside(parts: readonly string[], word: IToken, before?: IToken): boolean {
    return parts
        .slice(0, -1)
        .some((part, index) => part === word.image && (!before || parts[index - 1] === before.image));
}
