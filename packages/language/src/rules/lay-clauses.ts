import type { Named } from '../plan/origin.js';
import type { Lay, Dish, Plan } from '../plan/types.js';
import type { Intention } from './fixes.js';
import { asName } from './wording.js';

// An explicit `lay …` clause overrides the cover that is derived, so it is the one place where pieces can be on the wrong
// side, out of order, forgotten or too many. `lay-judgement.ts` compares it with what the dishes need.

/** An explicit clause and the dishes whose pieces it settles. */
export interface LayClause {
    readonly lay: Lay;
    readonly dishes: readonly Dish[];
    readonly isWholeMenu: boolean;
}

export function layClauses(plan: Plan): readonly LayClause[] {
    const { lay, courses = [] } = plan.menu ?? {};
    return [
        ...(lay ? [{ lay, dishes: courses.flatMap((course) => course.dishes), isWholeMenu: true }] : []),
        ...courses.flatMap((course) => [
            ...(course.lay
                ? [{ lay: course.lay, dishes: course.dishes.filter((dish) => !dish.lay), isWholeMenu: false }]
                : []),
            ...course.dishes.flatMap((dish) =>
                dish.lay ? [{ lay: dish.lay, dishes: [dish], isWholeMenu: false }] : [],
            ),
        ]),
    ];
}

export type LaySide = 'left' | 'right' | 'above' | 'saucer' | 'breadPlate';
const LAY_SIDES: readonly LaySide[] = ['left', 'right', 'above', 'saucer', 'breadPlate'];

/** A name of the clause with the side it stands under. */
export interface LaidName {
    readonly named: Named;
    readonly side: LaySide;
}

export function laidNames(lay: Lay): readonly LaidName[] {
    return LAY_SIDES.flatMap((side) => (lay[side] ?? []).map((named) => ({ named, side })));
}

/** Where a side is, in a sentence. */
export const SIDE_SAID: Readonly<Record<LaySide, string>> = {
    left: 'left of the plate',
    right: 'right of the plate',
    above: 'above the plate',
    saucer: 'on the saucer',
    breadPlate: 'on the bread plate',
};

const SIDE_WORDS: Readonly<Record<LaySide, string>> = {
    left: 'left',
    right: 'right',
    above: 'above',
    saucer: 'on the saucer',
    breadPlate: 'on the bread-plate',
};

/** Writes a clause again with other names: `names` gives those of each side, from the clause's own. A side left with none goes. */
export function rewriteLay(lay: Lay, names: (side: LaySide, own: readonly Named[]) => readonly string[]): Intention {
    const sections = LAY_SIDES.map((side) => ({
        side,
        now: names(side, lay[side] ?? []),
        hadNothing: lay[side]?.length === 0,
    }))
        .filter(({ now, hadNothing }) => now.length > 0 || hadNothing)
        .map(({ side, now }) => `${SIDE_WORDS[side]} ${now.length > 0 ? now.map(asName).join(', ') : 'nothing'}`);
    return { do: 'replace', at: lay.origin, words: `lay ${sections.length > 0 ? sections.join(' ') : 'left nothing'}` };
}

/** The clause without some of its names. */
export function withoutNames(lay: Lay, gone: readonly Named[]): Intention {
    return rewriteLay(lay, (_, own) => own.filter((named) => !gone.includes(named)).map(({ name }) => name));
}
