import type { Quantity } from '../../plan/quantity.js';
import type { Named } from '../../plan/origin.js';
import { listed } from '../../rules/wording.js';

/** What a plan says of something: how people read it, and what it comes to. `140 °F` and `60 °C` mean the same. */
export interface Said {
    /** Empty for what is said by its name alone, such as `passed`. */
    readonly text: string;
    readonly means: string;
}

/** A list is left out as a whole where any part of it is absent: `['for', dish.cookTo.time]`. */
type Part = Quantity | Said | string | number | undefined | readonly Part[];

/** The parts that are there, one behind the other; `undefined` where none is. */
export function said(...parts: readonly Part[]): Said | undefined {
    const there = parts.flatMap((part) => saidOf(part) ?? []);
    return there.length === 0 ? undefined : joined(there, ' ');
}

/** Of something that is said by its name alone. */
export const isSaid = (is: boolean): Said | undefined => (is ? { text: '', means: 'said' } : undefined);

/** Several things said, joined: `300 ml or 750 ml`. */
export function saidList(parts: readonly Part[], joint: string): Said | undefined {
    const all = parts.flatMap((part) => saidOf(part) ?? []);
    return all.length === 0 ? undefined : joined(all, joint);
}

/** Words for something, in their order. */
export function saidWords(words: readonly string[]): Said | undefined {
    return said(words.length > 0 ? words.join(', ') : undefined);
}

/** Names, as a list for people. */
export function saidNames(names: readonly Named[], joint: 'and' | 'or' = 'and'): Said | undefined {
    return names.length === 0
        ? undefined
        : said(
              listed(
                  names.map(({ name }) => name),
                  joint,
              ),
          );
}

function saidOf(part: Part): Said | undefined {
    if (part === undefined) {
        return undefined;
    }
    if (typeof part !== 'object') {
        return { text: String(part), means: String(part) };
    }
    if (isList(part)) {
        return part.includes(undefined) ? undefined : said(...part);
    }
    // Nine digits: a figure written in another unit is no other figure.
    return 'dimension' in part
        ? { text: part.written, means: `${Number(part.value.toPrecision(9))} ${part.dimension}` }
        : part;
}

const isList = (part: object): part is readonly Part[] => Array.isArray(part);

function joined(all: readonly Said[], joint: string): Said {
    return {
        text: all.map(({ text }) => text).join(joint),
        means: all.map(({ means }) => means).join(joint),
    };
}
