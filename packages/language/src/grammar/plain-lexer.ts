import { DEEPEST_BLOCK, LONGEST_TEXT } from './limits.js';
import type { PlainGrammar, PlainToken } from './plain-grammar.js';
import { isUnclosed } from './terminal-values.js';

/** The tokens of a text without white space and comments: three lists of the same length. */
export interface Tokens {
    readonly types: readonly number[];
    readonly starts: readonly number[];
    readonly ends: readonly number[];
    /** Where the text can be cut no further. */
    readonly stop?: number;
}

/** Cuts a text into tokens as the framework's lexer does. */
export class PlainLexer {
    readonly #tokens: readonly PlainToken[];
    readonly #startingWith: readonly (readonly number[])[];
    readonly #all: readonly number[];
    readonly #patterns = new Map<number, RegExp>();

    constructor({ tokens, startingWith }: PlainGrammar) {
        this.#tokens = tokens;
        this.#startingWith = startingWith;
        this.#all = tokens.map((_, token) => token);
    }

    /**
     * Stops where a part of the text is no token, a text or a comment is not closed, or blocks go too deep; at once where the
     * text is too long.
     */
    tokenize(text: string): Tokens {
        const types: number[] = [];
        const starts: number[] = [];
        const ends: number[] = [];
        const stopAt = (stop: number): Tokens => ({ types, starts, ends, stop });
        if (text.length > LONGEST_TEXT || text.includes('\0')) {
            return stopAt(0);
        }
        let depth = 0;
        for (let offset = 0; offset < text.length;) {
            const candidates = this.#startingWith[text.charCodeAt(offset)] ?? this.#all;
            let type = -1;
            let end = offset;
            for (const candidate of candidates) {
                end = this.#match(candidate, text, offset);
                if (end > offset) {
                    type = candidate;
                    break;
                }
            }
            if (type < 0) {
                return stopAt(offset);
            }
            for (const longer of this.#tokens[type]!.longer) {
                const longerEnd = this.#match(longer, text, offset);
                if (longerEnd > end) {
                    type = longer;
                    end = longerEnd;
                    break;
                }
            }
            const { isHidden, pattern, text: word } = this.#tokens[type]!;
            if (pattern !== undefined && isUnclosed(text.slice(offset, end))) {
                return stopAt(offset);
            }
            depth += word === '{' ? 1 : word === '}' ? -1 : 0;
            if (depth > DEEPEST_BLOCK) {
                return stopAt(offset);
            }
            if (!isHidden) {
                types.push(type);
                starts.push(offset);
                ends.push(end);
            }
            offset = end;
        }
        return { types, starts, ends };
    }

    /** Where the token ends that starts at `offset`; `offset` itself where it does not. */
    #match(token: number, text: string, offset: number): number {
        const { text: word, pattern } = this.#tokens[token]!;
        if (word !== undefined) {
            return text.startsWith(word, offset) ? offset + word.length : offset;
        }
        let sticky = this.#patterns.get(token);
        if (sticky === undefined) {
            sticky = new RegExp(pattern!, 'y');
            this.#patterns.set(token, sticky);
        }
        sticky.lastIndex = offset;
        return sticky.test(text) ? sticky.lastIndex : offset;
    }
}
