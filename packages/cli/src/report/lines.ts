/** Lines and columns of a text, both from 1. */
export interface LineColumn {
    readonly line: number;
    readonly column: number;
}

const LINE_END = /\r\n|\r|\n/g;
/** Latin letters, dashes, quotes, currencies and signs, none of which joins with another. */
const APART = /^[\0-\u02FF\u2010-\u2027\u2030-\u205E\u20A0-\u20BF\u2100-\u218F]*$/;

let segmenter: Intl.Segmenter | undefined;

/** The characters of a text as a reader counts them: an accent or an emoji of several parts is one. */
export function characters(text: string): readonly string[] {
    // The segmenter takes 10 ms to load.
    if (APART.test(text)) {
        return text.split('');
    }
    segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
    return Array.from(segmenter.segment(text), ({ segment }) => segment);
}

export function countCharacters(text: string): number {
    return characters(text).length;
}

/** Unicode code points, which some formats count in. */
export function countCodePoints(text: string): number {
    return Array.from(text).length;
}

/** Where the lines of a text begin. */
export class Lines {
    readonly text: string;
    readonly #starts: number[] = [0];

    constructor(text: string) {
        this.text = text;
        for (const end of text.matchAll(LINE_END)) {
            this.#starts.push(end.index + end[0].length);
        }
    }

    /** The line, from 1, in which a UTF-16 offset lies. */
    lineAt(offset: number): number {
        let low = 0;
        let high = this.#starts.length;
        while (high - low > 1) {
            const middle = (low + high) >> 1;
            if ((this.#starts[middle] ?? 0) <= offset) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low + 1;
    }

    /** UTF-16 offset at which a line, from 1, begins. */
    startOf(line: number): number {
        return this.#starts[line - 1] ?? this.text.length;
    }

    /** A line, from 1, without its line end. */
    line(line: number): string {
        return this.text.slice(this.startOf(line), this.startOf(line + 1)).replace(/[\r\n]+$/, '');
    }

    /** @param count how to count the characters before the column */
    at(offset: number, count: (text: string) => number = countCharacters): LineColumn {
        const line = this.lineAt(offset);
        return { line, column: count(this.text.slice(this.startOf(line), offset)) + 1 };
    }
}
