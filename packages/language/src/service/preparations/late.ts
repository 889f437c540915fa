/** Where set-up and strike miss the hours they are given, and the people with whom they would not. */
import { prepare, type PreparationsInput } from './preparations.js';
import type { Preparations } from './types.js';

/** More people are tried up to this multiple of those there are; beyond it the hours are what is wrong. */
const MOST = 4;

/** Minutes that binary fractions lose. */
const NOISE = 1e-6;

type Prepared = Pick<Preparations, 'setUp' | 'strike'>;

/** Minutes before the house lets the team in at which set-up would have to begin; 0 where it fits. */
export function startsTooEarly({ setUp }: Prepared, doors: number): number {
    const { begins, getIn } = setUp;
    const early = begins === undefined || getIn === undefined ? 0 : doors - getIn - begins;
    return early > NOISE ? early : 0;
}

/** Minutes after the room must be clear at which the strike is over; 0 where it fits. */
export function strikesTooLate({ strike }: Prepared): number {
    const late = strike.by === undefined ? 0 : strike.over - strike.by;
    return late > NOISE ? late : 0;
}

/**
 * The fewest people of a role with whom `isFine`; `undefined` where even a multiple of them will not do. Sought by doubling and
 * halving, so that one fewer than the answer will not do; a schedule that is better with fewer people still is not looked for.
 */
export function fewestOf(
    input: PreparationsInput,
    role: string,
    isFine: (prepared: Prepared) => boolean,
): number | undefined {
    const place = input.pools.findIndex((pool) => pool.role === role);
    const there = input.pools[place]?.count ?? 0;
    const isFineWith = (count: number): boolean => {
        const pools = input.pools.map((pool, index) => (index === place ? { ...pool, count } : pool));
        return isFine(prepare({ ...input, pools }));
    };
    let tooFew = there;
    let enough: number | undefined;
    for (let more = 1; enough === undefined && tooFew < there * MOST; more *= 2) {
        const count = Math.min(there + more, there * MOST);
        if (isFineWith(count)) {
            enough = count;
        } else {
            tooFew = count;
        }
    }
    while (enough !== undefined && enough - tooFew > 1) {
        const middle = Math.floor((tooFew + enough) / 2);
        if (isFineWith(middle)) {
            enough = middle;
        } else {
            tooFew = middle;
        }
    }
    return enough;
}
