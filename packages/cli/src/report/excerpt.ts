import { characters, type Lines } from './lines.js';

/** Columns of a terminal that an excerpt may fill; longer lines are cut around what is underlined. */
const WIDTH = 100;
const TAB_WIDTH = 4;
/** Lines shown of a range that runs over several. */
const MOST_LINES = 2;

export interface ExcerptLine {
    /** From 1. */
    readonly number: number;
    readonly source: string;
    /** Spaces, then the marks under the characters meant. */
    readonly marks: string;
}

/**
 * The source lines of a range with marks under it, one cell a column, so that it stays straight under accents, emoji,
 * wide letters and tabs. Written here because the libraries for it count UTF-16 units.
 */
export function excerpt(lines: Lines, start: number, end: number): ExcerptLine[] {
    const first = lines.lineAt(start);
    const last = Math.min(lines.lineAt(Math.max(start, end - 1)), first + MOST_LINES - 1);
    const result: ExcerptLine[] = [];
    for (let number = first; number <= last; number++) {
        const source = lines.line(number);
        const offset = lines.startOf(number);
        const from = Math.min(Math.max(0, start - offset), source.length);
        const to = Math.max(Math.min(end - offset, source.length), from);
        const before = cells(source.slice(0, from));
        const marked = cells(source.slice(from, to));
        const after = cells(source.slice(to));
        result.push({ number, ...cut(before, marked, after) });
    }
    return result;
}

function cut(before: string[], marked: string[], after: string[]): { source: string; marks: string } {
    const isLong = before.length + marked.length + after.length > WIDTH;
    const lead = isLong && before.length > WIDTH / 3 ? ['…', ...before.slice(-Math.floor(WIDTH / 3))] : before;
    const rest = [...marked, ...after];
    const room = Math.max(1, WIDTH - lead.length);
    const tail = rest.length > room ? [...rest.slice(0, room), '…'] : rest;
    return {
        source: [...lead, ...tail].join('').trimEnd(),
        marks: ' '.repeat(lead.length) + '^'.repeat(Math.max(1, Math.min(marked.length, room))),
    };
}

/** What a terminal shows, one entry a column; the second column of a wide character is an empty entry. */
function cells(text: string): string[] {
    const result: string[] = [];
    for (const character of characters(text)) {
        if (character === '\t') {
            result.push(...' '.repeat(TAB_WIDTH));
        } else if (isControl(character)) {
            result.push('\uFFFD');
        } else if (isWide(character)) {
            result.push(character, '');
        } else {
            result.push(character);
        }
    }
    return result;
}

/** Would move the cursor, change the terminal or turn the direction of writing. */
function isControl(character: string): boolean {
    const code = character.charCodeAt(0);
    return code < 0x20 || (code >= 0x7f && code < 0xa0) || /[\u200E\u200F\u202A-\u202E\u2066-\u2069]/.test(character);
}

const FIRST_WIDE = 0x1100;

/** Shown two columns wide: emoji, and the letters of East Asian scripts. */
function isWide(character: string): boolean {
    return (
        (character.length > 1 || character.charCodeAt(0) >= FIRST_WIDE) &&
        /\p{Emoji_Presentation}|\uFE0F|[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\u3000-\u303E\uFF01-\uFF60]/u.test(
            character,
        )
    );
}
