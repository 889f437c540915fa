/** What every drink of the menu needs: pours, bottles, cases, glasses. Water is counted apart. */
import { besides } from '../../plan/lazily.js';
import type { Plan, Pour } from '../../plan/types.js';
import type { PourFacts, Service, Variation } from '../types.js';
import { ethanol, standardDrink } from './alcohol.js';
import { fewestLeftOver, inCases, USUAL_BOTTLE } from './bottles.js';
import { countDrinkers, guestsOffered, isMeantFor, mayDrink } from './drinkers.js';
import { glassOf } from './glasses.js';
import { roundsOf } from './rounds.js';
import type { PourNeed, PourUse } from './types.js';

/** Every pour of the menu with its drinkers and rounds, and after each what is offered in its place. One without a measure can't be counted. */
export function poursOf(plan: Plan, service: Pick<Service, 'pours' | 'groups' | 'servings'>): PourUse[] {
    const { pours } = service;
    return pours.flatMap((facts) => {
        const guestsNow = () => guestsOffered(facts, service.groups, service.servings);
        const guests = guestsNow();
        const drinkers = countDrinkers(plan, facts, guests);
        const isSame = ({ pour }: PourFacts): boolean => pour.title === facts.pour.title;
        const courses = pours.filter(isSame).map((each) => each.course);
        const use = (drunk: PourFacts, count: number, kept?: number): PourUse[] => {
            const measure = (drunk.pour.amount ?? facts.pour.amount)?.value ?? 0;
            const rounds = roundsOf(
                plan,
                likePour(drunk.pour, facts.pour),
                facts.course,
                plan.customs['top-up'].value,
                courses,
            );
            const counted = {
                facts: drunk,
                insteadOf: drunk === facts ? undefined : facts,
                drinkers: count,
                keptFrom: kept ?? 0,
                rounds,
                measure,
                millilitres: count * rounds.pours * measure,
            };
            const mayHave = () =>
                [...guestsNow().keys()].filter(
                    (group) => isMeantFor(drunk.pour.who, group, plan) && mayDrink(plan, drunk, group),
                );
            // Asked for by who tells it: they are not counted by it.
            return measure > 0 ? [besides(counted, 'groups', mayHave)] : [];
        };
        return [
            ...use(facts, drinkers.pour),
            ...drinkers.instead.flatMap((offer) => use(offer.facts, offer.count, offer.keptFrom)),
        ];
    });
}

/** What is offered in place of a pour is poured as often as it, at its toasts too, unless it says otherwise. */
function likePour(drunk: Pour, pour: Pour): Pour {
    return {
        ...drunk,
        title: pour.title,
        refills: drunk.refills ?? pour.refills,
        toppedUpUntil: drunk.toppedUpUntil ?? pour.toppedUpUntil,
    };
}

/** Drinks by title: what is left of a bottle at one course is poured at the next. */
export function needsOf(plan: Plan, uses: readonly PourUse[], variations: readonly Variation[]): PourNeed[] {
    const byTitle = new Map<string, PourUse[]>();
    for (const use of uses) {
        const { title } = use.facts.pour;
        byTitle.set(title, [...(byTitle.get(title) ?? []), use]);
    }
    return [...byTitle].map(([title, of]) => needOf(plan, title, of, variations));
}

function needOf(plan: Plan, title: string, uses: readonly PourUse[], variations: readonly Variation[]): PourNeed {
    const [{ facts }] = uses as [PourUse];
    const measure = Math.max(...uses.map((use) => use.measure));
    const millilitres = uses.reduce((sum, use) => sum + use.millilitres, 0);
    const stated = uses.map((use) => use.facts.pour.bottles).find((sizes) => sizes.length > 0);
    const sizes = stated?.map((size) => size.value) ?? [USUAL_BOTTLE];
    const { customs } = plan;
    const isTasted = millilitres > 0 && uses.some((use) => use.facts.pour.tasted);
    const tasting = { millilitres: customs['host-tasting'].value, of: customs['host-tastes'].value };
    const bottles = fewestLeftOver({
        // Parts of a pour add up to whole ones: what is topped up comes from whichever bottle is open.
        pours: millilitres / measure,
        pour: measure,
        sizes,
        counted: customs['pours-of-a-bottle'].value,
        tasting: isTasted ? tasting : undefined,
    });
    const opened = tasting.of === 'every-bottle' ? bottles.reduce((sum, { count }) => sum + count, 0) : 1;
    const tasted = isTasted ? opened * tasting.millilitres : 0;
    const bought = bottles.reduce((sum, { size, count }) => sum + size * count, 0);
    const each = byCourse(uses, (course) => Math.max(...course.map((use) => use.rounds.pours * use.measure)));
    const millilitresEach = each.reduce((sum, volume) => sum + volume, 0);
    const { strength } = facts;
    const standard = standardDrink(plan);
    const ethanolEach = strength === undefined ? undefined : ethanol(millilitresEach, strength);
    return {
        title,
        facts,
        uses,
        drinkers: Math.max(...byCourse(uses, (course) => course.reduce((sum, use) => sum + use.drinkers, 0))),
        poursEach: millilitresEach / measure,
        millilitres,
        tasted,
        sizes,
        isSizeStated: stated !== undefined,
        bottles,
        cases: inCases(bottles),
        // Where the last pour of a bottle may be short, nothing is left in it.
        leftOver: Math.max(0, bought - millilitres - tasted),
        ethanolEach,
        drinksEach: ethanolEach === undefined || standard === undefined ? undefined : ethanolEach / standard,
        glass: glassOf(uses, variations),
    };
}

function byCourse<T>(uses: readonly PourUse[], tell: (course: readonly PourUse[]) => T): T[] {
    const courses = [...new Set(uses.map((use) => use.facts.course))];
    return courses.map((course) => tell(uses.filter((use) => use.facts.course === course)));
}
