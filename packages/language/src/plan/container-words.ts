/** What food is counted in, one and many; everything else that is counted is counted by itself: `20 eggs`. */
const CONTAINERS =
    'bag bags, block blocks, bottle bottles, box boxes, bulb bulbs, bunch bunches, can cans, carton cartons, case cases, ' +
    'clove cloves, cube cubes, dash dashes, ear ears, handful handfuls, head heads, jar jars, knob knobs, leaf leaves, ' +
    'loaf loaves, pack packs, packet packets, piece pieces, pinch pinches, rib ribs, sheet sheets, slice slices, ' +
    'sprig sprigs, stalk stalks, stick sticks, tin tins, tub tubs, wheel wheels';

const pairs = CONTAINERS.split(', ').map((pair) => pair.split(' ') as [one: string, many: string]);
const ONE = new Map(pairs.flatMap(([one, many]) => [[one, one] as const, [many, one] as const]));
const MANY = new Map(pairs);

/** @returns `can` for `can`, `cans` and `Cans`; nothing for a word that is no container. */
export function containerOf(word: string): string | undefined {
    return ONE.get(word.toLowerCase());
}

/** @returns `can` up to one of them, `cans` for more. */
export function containerWord(container: string, count: number): string {
    return count > 1 ? (MANY.get(container) ?? container) : container;
}
