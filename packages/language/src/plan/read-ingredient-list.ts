import { readIngredient } from './read-ingredient.js';
import type { Ingredient } from './recipe.js';

/**
 * The ingredients of a recipe in Markdown: the lists under a heading `Ingredients`, up to the next heading of its rank. A lower
 * heading, or a line that ends with a colon, names a part of the recipe.
 *
 * Reads of Markdown what an ingredient list has: headings, lists, fenced code, comments, and marks inside a line. A whole
 * Markdown reader takes as long to load as half a check (DEVELOPERS.md, "How a command starts fast").
 */
export function readIngredientList(text: string): Ingredient[] {
    const items: { words: string; part?: string }[] = [];
    let rank: number | undefined;
    let part: string | undefined;
    let isOpen = false;
    for (const { heading, item, more } of blocksOf(text)) {
        if (heading) {
            if (rank === undefined || heading.rank <= rank) {
                rank = /^ingredients?\b/i.test(heading.words) ? heading.rank : undefined;
                part = undefined;
            } else {
                part = heading.words;
            }
        } else if (rank !== undefined && (item ?? more)?.endsWith(':')) {
            part = (item ?? more)!.slice(0, -1);
        } else if (rank !== undefined && item !== undefined) {
            items.push({ words: item, part });
        } else if (isOpen && more !== undefined) {
            items.at(-1)!.words += ` ${more}`;
        }
        isOpen = rank !== undefined && !(item ?? more ?? ':').endsWith(':') && (item !== undefined || isOpen);
    }
    return items.map(({ words, part: of }) => readIngredient(words, of)).filter(({ written }) => written !== '');
}

/** One line of Markdown that matters here; a blank line is none of the three. */
interface Block {
    readonly heading?: { readonly rank: number; readonly words: string };
    readonly item?: string;
    readonly more?: string;
}

function blocksOf(text: string): Block[] {
    const lines = text.replace(/<!--[\s\S]*?(?:-->|$)/g, '').split(/\r\n|[\n\r]/);
    const blocks: Block[] = [];
    let fence: string | undefined;
    for (const line of lines) {
        const mark = /^ {0,3}(`{3,}|~{3,})/.exec(line)?.[1];
        if (mark !== undefined || fence !== undefined) {
            if (fence === undefined) {
                fence = mark;
            } else if (mark?.startsWith(fence)) {
                fence = undefined;
            }
            continue;
        }
        const last = blocks.at(-1);
        const underline = /^ {0,3}(?:(=+)|-+)\s*$/.exec(line);
        const heading = /^ {0,3}(#{1,6})(?:[ \t]+(.*?))?(?:[ \t]+#+)?\s*$/.exec(line);
        const item = /^[ \t]*(?:[-*+]|\d{1,9}[.)])[ \t]+(?:\[[ xX]\][ \t]+)?(.*)$/.exec(line);
        if (underline && last?.more !== undefined) {
            blocks[blocks.length - 1] = { heading: { rank: underline[1] === undefined ? 2 : 1, words: last.more } };
        } else if (heading) {
            blocks.push({ heading: { rank: heading[1]!.length, words: plainWords(heading[2] ?? '') } });
        } else if (item) {
            blocks.push({ item: plainWords(item[1]!) });
        } else {
            const words = plainWords(line);
            blocks.push(words === '' ? {} : { more: words });
        }
    }
    return blocks;
}

/** No line of a recipe is longer; the marks of one that is are left in it. */
const LONGEST_LINE = 1000;

/** The words of a line without the marks for links, pictures, weight and code. */
function plainWords(line: string): string {
    if (line.length > LONGEST_LINE) {
        return line.trim();
    }
    return line
        .replace(/!\[[^\]]*\]\([^)]*\)/g, '')
        .replace(/\[([^\]]*)\](?:\([^)]*\)|\[[^\]]*\])/g, '$1')
        .replace(/<\/?[a-z][^<>]*>/gi, '')
        .replace(/(?<![\w\\])(\*\*|__|\*|_)(?=\S)(.+?)(?<=\S)\1(?!\w)/g, '$2')
        .replace(/`+([^`]*)`+/g, '$1')
        .replace(/\\([!-/:-@[-`{-~])/g, '$1')
        .replace(/\s+/g, ' ')
        .trim();
}
