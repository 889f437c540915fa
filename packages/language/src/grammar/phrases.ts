import type { IToken } from 'chevrotain';
import { isKeyword } from './words.js';

/** The words, figures, texts and signs of a phrase. */
export function partsOf(phrase: string): readonly string[] {
    return phrase.match(/"[^"]*"|[\p{L}\d][\p{L}\d.:/-]*(?<!:)|\S/gu) ?? [];
}

/** Whether a part of a phrase is the token or, for names, numbers and texts, one of its sort. */
export function isLike(part: string | undefined, token: IToken): boolean {
    if (part === undefined || isKeyword(token.tokenType)) {
        return part === token.image;
    }
    return sortOf(part) === sortOf(token.image);
}

export function sortOf(image: string): 'text' | 'number' | 'name' | 'sign' {
    return /^["\u201C\u201D\u201E]/.test(image)
        ? 'text'
        : /^[-\u2212]?\d/.test(image)
          ? 'number'
          : /^\p{L}/u.test(image)
            ? 'name'
            : 'sign';
}
