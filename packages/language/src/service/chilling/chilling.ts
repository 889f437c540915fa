/** When to start each drink, so that it is at its temperature when it is first poured. A range, never a single time. */
import type { Plan, Pour } from '../../plan/types.js';
import type { Air } from '../heat/types.js';
import type { Run } from '../run/types.js';
import type { Service } from '../types.js';
import { bathOf, chillTime, iceMelted, wayOf, type Way } from './baths.js';
import type { Chilling } from './types.js';

/** Wanted hotter than this, °C, a drink is not chilled. */
const HOT_FROM = 40;
/** The table's water is no pour of a course. */
const WATER = -1;
/** What a bottle holds where nobody says, ml: the published time constants are for it. */
const USUAL_BOTTLE = 750;

/** One for each drink, by its title, that says how cold it is wanted: the water first, the others in the order first poured. */
export function planChilling(
    plan: Plan,
    { pours, drinks }: Pick<Service, 'pours' | 'drinks'>,
    air: Air,
    run: Run | undefined,
): Chilling[] {
    const water = plan.menu?.water?.pour;
    const all = [
        ...(water ? [{ pour: water, index: WATER, course: WATER }] : []),
        ...pours.flatMap(({ pour, course }, index) => [
            { pour, index, course },
            ...pour.instead.map((other) => ({ pour: other, index, course })),
        ]),
    ];
    const firsts = new Map(all.toReversed().map((each) => [each.pour.title, each]));
    const poured = firstPours(run);
    return all
        .filter((each) => firsts.get(each.pour.title) === each)
        .flatMap(({ pour, index, course }) => {
            const bottles = index === WATER ? undefined : drinks.find((need) => need.title === pour.title)?.bottles;
            return chill(plan, air, pour, index, poured.get(course), bottles) ?? [];
        });
}

/** The first glass of each course's drinks, else its first plate. */
function firstPours(run: Run | undefined): ReadonlyMap<number, number> {
    const plates = (run?.courses ?? []).map(({ course, served }) => [course, served.first] as const);
    return new Map([...plates, ...(run?.pouringStarts ?? [])]);
}

function chill(
    plan: Plan,
    air: Air,
    pour: Pour,
    index: number,
    by: number | undefined,
    bottles?: Chilling['bottles'],
): Chilling | undefined {
    const to = pour.temperature?.value;
    if (to === undefined || to >= HOT_FROM) {
        return undefined;
    }
    const from = plan.customs['store-temperature'].value;
    const isWarmer = to > from && !pour.chilledIn;
    const way: Way = isWarmer ? 'counter' : wayOf(plan, pour);
    const bath = bathOf(plan, way, air.celsius);
    const takes = chillTime(from, to, bath);
    const neededBy = by ?? 0;
    return {
        pour: index,
        title: pour.title,
        way,
        wayHow: isWarmer ? 'warmer-than-store' : pour.chilledIn ? 'stated' : 'custom',
        from,
        to,
        bath: bath.celsius,
        ...(takes && { takes, startBy: neededBy - takes.latest, startAtUsualPace: neededBy - takes.usual }),
        neededBy,
        neededHow: by === undefined ? 'seated' : 'first-pour',
        ...(bottles && bottles.length > 0 && { bottles }),
        ...(way === 'ice-water' && takes && { iceMelted: meltedFor(bottles, from, to) }),
    };
}

function meltedFor(
    bottles: Chilling['bottles'] = [{ size: USUAL_BOTTLE, count: 1 }],
    from: number,
    to: number,
): number {
    return bottles.reduce((sum, { size, count }) => sum + count * iceMelted(from, to, size), 0);
}
