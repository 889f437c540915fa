/** What is poured and passed at the table with a dish, and from what: as the menu says it, else what is usual. */
import type { Accompaniment, Dish } from '../plan/types.js';

/** Something that reaches the guest apart from the plate. */
export interface AtTheTable {
    readonly title: string;
    readonly how: 'poured' | 'passed';
    /** The piece it comes in, or is given with. */
    readonly gear: string;
    /** Absent for what the vessel itself holds, such as a soup. */
    readonly beside?: Accompaniment;
    /** The same for what several dishes of a course share. */
    readonly key: number;
}

/** Common practice, no source. */
const POURED_FROM = { dish: 'soup-tureen', beside: 'sauce-jug' } as const;
const PASSED_FROM = { sauce: 'sauce-boat', garnish: 'serving-spoon', butter: 'butter-dish' } as const;

/** The dish itself first, then sauces, garnishes and butters in the order written. */
export function atTheTable(dish: Dish): AtTheTable[] {
    const { pouredAtTable } = dish.served;
    const own: AtTheTable[] = pouredAtTable
        ? [
              {
                  title: dish.title,
                  how: 'poured',
                  gear: pouredAtTable.gear?.name ?? POURED_FROM.dish,
                  key: dish.origin.start,
              },
          ]
        : [];
    const besides = dish.accompaniments
        .filter((beside) => beside.pouredAtTable ?? beside.passed)
        .map((beside): AtTheTable => {
            const poured = beside.pouredAtTable;
            return {
                title: beside.title ?? `${beside.sort} of ${dish.title}`,
                how: poured ? 'poured' : 'passed',
                gear: poured ? (poured.gear?.name ?? POURED_FROM.beside) : PASSED_FROM[beside.sort],
                beside,
                key: beside.origin.start,
            };
        });
    return [...own, ...besides];
}
