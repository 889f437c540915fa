import { counted, quoted } from '../../rules/wording.js';
import type { PourNeed, WaterNeed } from '../../service/drinks/types.js';
import { paired, type Change, type Compared } from './change.js';
import { changedPours } from './pour-facts.js';

/** Bottles, by drink; the table's water, by sort; and how they are poured. */
export function changedDrinks(before: Compared, after: Compared): Change[] {
    return [
        ...changedCounts(drunk(before), drunk(after)),
        ...changedCounts(before.service.water.map(water), after.service.water.map(water)),
        ...changedPours(before, after),
    ];
}

interface Needed {
    readonly key: string;
    readonly called: string;
    /** Absent where it comes in jugs. */
    readonly bottles?: number;
    readonly said: string;
}

function changedCounts(before: readonly Needed[], after: readonly Needed[]): Change[] {
    return paired(before, after, ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        const [old, now] = [was?.said ?? '', is?.said ?? ''];
        return old === now
            ? []
            : [
                  {
                      subject: 'drinks',
                      key,
                      ...((is ?? was)!.bottles === undefined
                          ? {}
                          : { before: was?.bottles ?? 0, after: is?.bottles ?? 0, unit: 'bottles' as const }),
                      text: `${(is ?? was)!.called}: ${now || 'none'}${old === '' ? '' : ` instead of ${old}`}`,
                  },
              ];
    });
}

const drunk = ({ service }: Compared): Needed[] =>
    service.drinks.map(({ title, bottles }: PourNeed) => ({
        key: title,
        called: quoted(title),
        bottles: bottles.reduce((sum, { count }) => sum + count, 0),
        said: bottles.map(({ size, count }) => bottlesOf(count, size)).join(' and '),
    }));

function water({ choice, from, count, size }: WaterNeed): Needed {
    const inBottles = from === 'bottles';
    return {
        key: `${choice} water`,
        called: `${choice} water`,
        bottles: inBottles ? count : undefined,
        said: inBottles ? bottlesOf(count, size) : `${counted(count, 'jug filling')} of ${ml(size)}`,
    };
}

const bottlesOf = (count: number, size: number): string => `${counted(count, 'bottle')} of ${ml(size)}`;

const ml = (size: number): string => `${Number(size.toFixed(0))} ml`;
