import { lazilyKeptOfEach } from '../../plan/lazily.js';
import { findCourse } from '../../plan/names.js';
import type { Plan } from '../../plan/types.js';
import { insteadOf, mayDrink } from '../drinks/drinkers.js';
import { isPouredAgainFor } from '../drinks/rounds.js';
import type { SeatedGuest } from '../seats/types.js';
import type { Cover, PourFacts } from '../types.js';
import type { EveningTable, TableWork } from './evening.js';
import type { ForEvening } from './evening-of-plan.js';

type Work = Pick<EveningTable, 'courses' | 'coffee' | 'waters' | 'toasts'>;

/** What every course asks of the people at every table, by the guests who sit there; in the order of the seated tables. */
export function tableWork(plan: Plan, service: ForEvening): Work[] {
    const { seats, coffee, guestCount } = service;
    const atTable = new Map<string, SeatedGuest[]>(seats.tables.map(({ name }) => [name, []]));
    for (const guest of seats.guests) {
        atTable.get(guest.table)?.push(guest);
    }
    const pours = service.pours.map((facts) => takersOf(plan, service, facts));
    const brought = broughtBy(service);
    const coffeeShare = coffee?.coffee.onRequest ? plan.customs['coffee-share'].value : 1;
    const water = plan.menu?.water;
    const waterUntil = water?.pour.toppedUpUntil && findCourse(plan.menu, water.pour.toppedUpUntil.name)?.index;
    const menu = plan.menu?.courses ?? [];
    const inCourse = menu.map(({ index }) => ({
        index,
        first: pours.flatMap(({ facts }, pour) => (facts.course === index ? [pour] : [])),
        again: pours.flatMap(({ facts }, pour) => Array.from({ length: roundsIn(plan, facts, index) }, () => pour)),
    }));
    const forToasts = (plan.menu?.speeches ?? []).map((speech) =>
        pours.flatMap(({ facts: { pour, course } }, index) => {
            const courses = service.pours.filter((each) => each.pour.title === pour.title).map((each) => each.course);
            return isPouredAgainFor(plan, speech, pour, course, courses) ? [index] : [];
        }),
    );
    let seated = 0;
    return seats.tables.map(({ name }, table): Work => {
        const guests = atTable.get(name)!;
        // Shares of the whole room, so that rounding at each table does not add up.
        const before = seated;
        seated += guests.length;
        const partOf = (share: number): number => Math.round(share * seated) - Math.round(share * before);
        const waters = water ? partOf(plan.customs['water-share'].value) : 0;
        const glasses = pours.map(({ share, takes }) => Math.round(share * guests.filter(takes).length));
        const courses = inCourse.map(({ index, first, again }): TableWork => {
            const pieces = guests.map(({ variation }) => brought[variation]?.[index]);
            return {
                plates: guests.flatMap(({ dishes }) => dishes[index] ?? []),
                pieces: total(pieces.map((each) => each?.plain ?? 0)),
                temperedPieces: total(pieces.map((each) => each?.tempered ?? 0)),
                glasses: total(first.map((pour) => glasses[pour]!)),
                tastes: table === 0 ? first.filter((pour) => pours[pour]!.facts.pour.tasted).length : 0,
                rounds: [
                    ...again.map((pour) => glasses[pour]!),
                    ...(waterUntil !== undefined && index <= waterUntil ? [waters] : []),
                ].filter((count) => count > 0),
                bread: service.bread?.from === index ? guests.length : 0,
            };
        });
        const spoons = coffee?.spoon ? 1 : 0;
        const cups = coffee && guestCount > 0 ? partOf(coffeeShare) : 0;
        const saucers = (coffee?.cup?.on.length ?? 0) > 0 ? 1 : 0;
        const toasts = forToasts.map((again) => total(again.map((pour) => glasses[pour]!)));
        return { courses, waters, toasts, coffee: { guests: cups, pieces: cups * (1 + saucers + spoons) } };
    });
}

interface Brought {
    plain: number;
    tempered: number;
}

/** By variation and course. An evening stays as it is while as much comes to every cover as before. */
const broughtBy = lazilyKeptOfEach(({ variations }: Pick<ForEvening, 'variations'>) =>
    variations.map(({ cover, dishes }) => broughtIn(cover, dishes.length)),
);

/** How many pieces and glasses come to a cover with each course. */
function broughtIn(cover: Cover, courses: number): readonly Brought[] {
    const counts = Array.from({ length: courses }, (): Brought => ({ plain: 0, tempered: 0 }));
    for (const { course, state } of cover.brought) {
        const count = counts[course];
        if (count) {
            count[state === undefined ? 'plain' : 'tempered']++;
        }
    }
    for (const { course } of cover.broughtGlasses) {
        const count = counts[course];
        if (count) {
            count.plain++;
        }
    }
    return counts;
}

/** How many further rounds of a pour in a course: its refills in its own, one topping-up in each that it is topped up through. */
function roundsIn(plan: Plan, { pour, course: own }: PourFacts, course: number): number {
    const until = pour.toppedUpUntil && findCourse(plan.menu, pour.toppedUpUntil.name)?.index;
    return course === own ? (pour.refills?.count ?? 0) : until !== undefined && course > own && course <= until ? 1 : 0;
}

/** Which guests have a glass of a pour or of what is offered in its place, and what share of them where the pour says so. */
function takersOf(plan: Plan, service: ForEvening, facts: PourFacts) {
    const offers = [facts, ...insteadOf(plan, facts)];
    const mayHave = service.groups.map((group) => offers.some((offer) => mayDrink(plan, offer, group)));
    const takes = ({ group, dishes }: SeatedGuest): boolean =>
        mayHave[group] === true && (!facts.dish || dishes[facts.course] === facts.dish.index);
    const able = service.seats.guests.filter(takes).length;
    const uses = service.drinks
        .flatMap((need) => need.uses)
        .filter((use) => use.facts === facts || use.insteadOf === facts);
    const drinkers = total(uses.map((use) => use.drinkers));
    return { facts, takes, share: uses.length > 0 && able > 0 ? Math.min(1, drinkers / able) : 1 };
}

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);
