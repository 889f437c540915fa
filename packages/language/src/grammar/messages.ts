import type { ILexerErrorMessageProvider, IToken } from 'chevrotain';
import { DefaultLexerErrorMessageProvider, LangiumParserErrorMessageProvider } from 'langium';
import { nearestWord } from './words.js';

/** What is said about a mistake, and the words that would mend it where they are plain. */
export interface Said {
    readonly message: string;
    readonly hint?: string;
    /** Stands for the words the mistake covers. */
    readonly suggestion?: string;
    /** How many characters the mistake covers, where it is more than the one token. */
    readonly length?: number;
}

export const MISSING_BRACE: Said = { message: 'This block has no closing brace `}`.' };
export const SURPLUS_BRACE: Said = { message: 'This closing brace `}` closes nothing.' };
export const UNCLOSED_TEXT = 'This text has no closing quote.';
export const UNCLOSED_COMMENT = 'This comment has no closing `*/`.';

const LONGEST_QUOTE = 60;

export function quoted(words: string): string {
    const line = words.replace(/\s+/g, ' ').replaceAll('`', '');
    return `\`${line.length > LONGEST_QUOTE ? `${line.slice(0, LONGEST_QUOTE - 1)}…` : line}\``;
}

/** Another word was meant. */
export function didYouMean(message: string, word: string): Said {
    return { message, hint: `Did you mean \`${word}\`?`, suggestion: word };
}

/** Words that stand for a text. */
export function unquoted(words: string): Said {
    const suggestion = `"${words.replace(/["\u201C\u201D\u201E]/g, '')}"`;
    return { message: `A text stands in quotes: ${quoted(suggestion)}.`, suggestion, length: words.length };
}

/** `vegetarian`, `T2` or `"Sirloin"` behind a guest, without the word that says what it is. */
export function guestWordMissing(image: string, words: string): Said {
    const message = `${quoted(image)} has no word before it that says what it is.`;
    if (image.startsWith('"')) {
        return didYouMean(message, `chooses ${image}`);
    }
    if (image === 'no' || image === 'not') {
        return didYouMean(`${quoted(image)} means nothing here.`, 'without');
    }
    const near = /^cho/i.test(image) ? 'chooses' : nearestWord(image, ['seat', 'without']);
    if (near !== undefined) {
        return didYouMean(`${quoted(image)} means nothing here.`, near);
    }
    if (/^allerg/i.test(image)) {
        return {
            message: `${quoted(image)} means nothing here.`,
            hint: 'What a guest must not have is written like `without milk`.',
        };
    }
    if (/\d/.test(image)) {
        return didYouMean(message, `at ${image}`);
    }
    // Of several words nobody knows which is the diet.
    return words === image ? didYouMean(message, `is ${image}`) : { message };
}

export function either(words: readonly string[]): string {
    const last = words.at(-1) ?? '';
    return words.length > 1 ? `${words.slice(0, -1).join(', ')} or ${last}` : last;
}

// ---------------------------------------------------------------- characters outside the language
/** Characters that look like another one. */
const LOOKALIKES: Readonly<Record<string, string>> = {
    º: '°',
    '˚': '°',
    '℃': '°C',
    '℉': '°F',
    '：': ':',
    '，': ',',
    '｛': '{',
    '｝': '}',
    '％': '%',
    '’': '"',
    '‘': '"',
    "'": '"',
    '«': '"',
    '»': '"',
};

/** What to write instead of a run of characters, where it is plain. */
export function lookalike(characters: string): string | undefined {
    return LOOKALIKES[characters];
}

export function charactersMessage(characters: string): string {
    const instead = lookalike(characters);
    if (instead !== undefined) {
        return `${quoted(characters)} is not the character it looks like. Write \`${instead}\`.`;
    }
    if (!/\p{Cs}/u.test(characters) && /^[\p{L}\p{N}\p{P}\p{S}\p{M}\u200D\uFE0F\s]+$/u.test(characters)) {
        const letters = /\p{L}/u.test(characters) ? ' A name with such letters is put in quotes, all of it.' : '';
        return `${quoted(characters)} means nothing outside a text in quotes.${letters}`;
    }
    return 'There are characters here that can’t be shown. Delete them.';
}

/** The framework asks for these two; what they say is made here or in the parser. */
export class CoverLexerMessages extends DefaultLexerErrorMessageProvider implements ILexerErrorMessageProvider {
    override buildUnexpectedCharactersMessage(text: string, start: number, length: number): string {
        return charactersMessage(text.slice(start, start + length));
    }
}

export class CoverParserMessages extends LangiumParserErrorMessageProvider {
    override buildNotAllInputParsedMessage({ firstRedundant }: { firstRedundant: IToken }): string {
        return `${quoted(firstRedundant.image)} belongs to nothing.`;
    }
}
