import { containerOf } from './container-words.js';
import type { Amount } from './kitchen-measures.js';
import { plainAmounts, readAmount, readWholeAmount, type ReadAmount } from './read-amount.js';
import type { Ingredient } from './recipe.js';

/** What is longer is no ingredient, and is not searched for amounts. */
const LONGEST_LINE = 300;

/**
 * Reads one line of a recipe's ingredients, the amount before or after the name: `14 kg beets`, `beets, 14 kg`,
 * `1 lb 4 oz beef, ground`, `2 cans (400 g) tomatoes`, `watermelon, 2 lb, diced, yield 61 %`, `salt, to taste`.
 * @param part the part of the recipe the line belongs to
 */
export function readIngredient(line: string, part?: string): Ingredient {
    const written = line.replace(/\s+/g, ' ').trim();
    if (written.length > LONGEST_LINE) {
        return { written, part, name: written };
    }
    const { text, usable } = takeUsable(plainAmounts(written));
    const found = trailingAmount(text, 'measured') ?? leadingAmount(text) ?? trailingAmount(text, 'counted');
    if (found && found.name !== '') {
        return { written, part, usable, ...found };
    }
    return text === '' ? { written, part, name: written } : { written, part, usable, name: text };
}

type Found = Pick<Ingredient, 'name' | 'amount' | 'container' | 'holds'>;

/** `yield 61 %`, `61 % yield`: what is left after trimming. */
function takeUsable(text: string): { readonly text: string; readonly usable?: number } {
    const stated = /[,;]? ?\(?(?:yields? (\d{1,3}(?:[.,]\d+)?) ?%|(\d{1,3}(?:[.,]\d+)?) ?% yield)\)?$/i.exec(text);
    const share = Number((stated?.[1] ?? stated?.[2] ?? '').replace(',', '.')) / 100;
    return stated && share > 0 && share <= 1 ? { text: text.slice(0, stated.index).trim(), usable: share } : { text };
}

// ---------------------------------------------------------------- the amount first
function leadingAmount(text: string): Found | undefined {
    const read = readAmount(
        text.replace(/^an? (?=([a-z]+) )/i, (article, word: string) => (containerOf(word) ? '1 ' : article)),
    );
    if (!read) {
        return undefined;
    }
    const found = read.amount.system === 'count' ? countedThing(read) : measuredThing(read);
    return found && { ...found, name: nameIn(found.name) };
}

/** `500 g (1 lb 2 oz) flour`: what is said again in other measures would be wrong once it is scaled, and goes. */
function measuredThing({ amount, rest }: ReadAmount): Found {
    const again = /^ ?(?:\/|=|or\b|\() ?/.exec(rest);
    const other = again && readAmount(rest.slice(again[0].length));
    if (!other || other.amount.system === 'count') {
        return { amount, name: rest };
    }
    const isBracketed = again[0].includes('(');
    return { amount, name: isBracketed ? other.rest.replace(/^ ?\)/, '') : other.rest };
}

/** `20 eggs`, `3 cans corn`, `2 x 400 g cans tomatoes`, `10 (3 lb 2 oz) cans soup`, `10 cans of 3 lb 2 oz soup`. */
function countedThing({ amount, rest }: ReadAmount): Found | undefined {
    if (!/^( |\(|$)/.test(rest)) {
        return undefined;
    }
    const before = sizeAt(rest);
    const word = /^ ?(?:#\d+ )?([a-z]+)\b/i.exec(before.rest);
    const container = word ? containerOf(word[1]!) : undefined;
    if (!word || !container) {
        return before.size ? undefined : { amount, name: rest };
    }
    const after = before.size ? before : { ...sizeAt(before.rest.slice(word[0].length)) };
    const name = before.size ? before.rest.slice(word[0].length) : after.rest;
    return { amount, container, holds: after.size, name };
}

/** The size of one container: `x 400 g`, `(400 g)`, `of 400 g`, `400 g`. */
function sizeAt(text: string): { readonly size?: Amount; readonly rest: string } {
    const opening = /^ ?(?:[x×] ?|\(|of |à |, )?/i.exec(text)![0];
    const read = readAmount(text.slice(opening.length));
    if (!read || read.amount.system === 'count' || (/^ ?$/.test(opening) && !text.startsWith(' '))) {
        return { rest: text };
    }
    const rest = read.rest.replace(/^ each\b/, '').replace(/^\)/, '');
    return { size: read.amount, rest };
}

function nameIn(rest: string): string {
    return rest
        .replace(/^[\s,;:.–—-]+/, '')
        .replace(/^of /i, '')
        .trim();
}

// ---------------------------------------------------------------- the amount after the name
/** The first part between commas, colons or dashes that is an amount and nothing else. */
function trailingAmount(text: string, sort: 'measured' | 'counted'): Found | undefined {
    const parts = text.split(/,(?= )|[:;](?= )| [–—-] |\|/).map((words) => words.trim());
    for (const [index, words] of parts.entries()) {
        const others = parts.filter((other, at) => at !== index && other !== '');
        if (index === 0 || others.length === 0) {
            continue;
        }
        const amount = readWholeAmount(words.replace(/ ?\(.*\)$/, ''));
        const found = amount ? { amount } : countedInContainers(words);
        if (found && (found.amount.system === 'count') === (sort === 'counted')) {
            return { ...found, name: others.join(', ') };
        }
    }
    return undefined;
}

/** `3 cans`, `2 cans (400 g)`, and nothing besides. */
function countedInContainers(words: string): (Found & { readonly amount: Amount }) | undefined {
    const read = readAmount(words);
    const found = read?.amount.system === 'count' ? countedThing(read) : undefined;
    return found?.container !== undefined && found.amount && nameIn(found.name) === ''
        ? { ...found, amount: found.amount }
        : undefined;
}
