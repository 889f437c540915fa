import { distance } from 'fastest-levenshtein';

const plain = (name: string): string => name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
const letters = (name: string): string => [...name].sort().join('');

/** How many letters a slip of the finger may change: none in a word of two letters, one in a short word, two in a longer. */
function mostApart(name: string): number {
    return name.length <= 2 ? 0 : name.length <= 5 ? 1 : 2;
}

/** The names that `written` most likely stands for, likeliest first; accents and capitals don't count. */
export function nearest(written: string, names: Iterable<string>): string[] {
    const wanted = plain(written);
    const near: { name: string; apart: number }[] = [];
    const partly: string[] = [];
    const nearlyPartly: string[] = [];
    for (const name of new Set(names)) {
        const known = plain(name);
        const apart = distance(wanted, known);
        // Two letters that changed places are one slip.
        if (apart <= mostApart(wanted) || (apart === 2 && wanted.length > 2 && letters(wanted) === letters(known))) {
            near.push({ name, apart });
        } else if (wanted.length > 2) {
            const parts = known.split('-');
            (parts.includes(wanted)
                ? partly
                : parts.some((part) => `${part}s` === wanted || part === `${wanted}s`)
                  ? nearlyPartly
                  : []
            ).push(name);
        }
    }
    const byName = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
    near.sort((a, b) => a.apart - b.apart || byName(a.name, b.name));
    const best = near.filter(({ apart }) => apart === near[0]!.apart).map(({ name }) => name);
    const found = [best, partly.sort(byName), nearlyPartly.sort(byName)].find((names) => names.length > 0) ?? [];
    return found.slice(0, 3);
}
