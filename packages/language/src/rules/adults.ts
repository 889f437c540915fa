import { isWithin } from '../plan/origin.js';
import { isSameWord } from '../plan/other-words.js';
import type { Occurrence, Plan, Pour, Who } from '../plan/types.js';
import type { Fix } from './fixes.js';
import type { Report } from './rule.js';
import { quoted } from './wording.js';

/** Guests are adults unless they are counted as children: no word of the language says it. */
const ADULTS = ['adult', 'grown-up', 'grownup'];

/** Where a plan speaks of adults as of a diet, and how it is said here. */
export function saidOfAdults({ sort, name, origin }: Occurrence, plan: Plan): Omit<Report, 'at'> | undefined {
    if (sort !== 'diet' || !ADULTS.some((word) => isSameWord(word, name))) {
        return undefined;
    }
    const message = `${quoted(name)} are all guests who are not counted as children.`;
    const isHere = (who: Who | undefined): boolean => who !== undefined && isWithin(origin, who.origin);
    const write = (who: Who, title: string, words: string): Fix => ({
        title,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at: who.origin, words }],
    });
    const pour = poursOf(plan).find(({ who }) => isHere(who));
    if (pour) {
        const hint = 'A drink that children do not get is `left off for children`.';
        return { message, hint, fixes: [write(pour.who!, `Leave ${quoted(pour.title)} off for children`, FOR_ADULTS)] };
    }
    const dishes = (plan.menu?.courses ?? []).flatMap((course) => course.dishes);
    const dish = dishes.find(({ who }) => isHere(who));
    if (dish) {
        const hint = 'Give another dish of the course to the children, `for children`, and this one to the rest.';
        return { message, hint, fixes: [write(dish.who!, 'Write `for the rest`', 'the rest')] };
    }
    const row = plan.event?.guests?.rows.find((each) => isWithin(origin, each.origin));
    return {
        message,
        hint: 'Count all guests in the total, and the children in a row: `guests 60 { 5 children }`.',
        fixes:
            row?.needs.length === 1 && !row.seat
                ? [{ title: 'Leave them to the total', safety: 'unsafe', changes: [{ do: 'remove', at: row.origin }] }]
                : [],
    };
}

/** `for adults` as the language says it. */
const FOR_ADULTS = 'everyone, left off for children';

function poursOf({ menu }: Plan): Pour[] {
    const withInstead = (pour: Pour): Pour[] => [pour, ...pour.instead.flatMap(withInstead)];
    return (menu?.courses ?? [])
        .flatMap((course) => [...course.pours, ...course.dishes.flatMap(({ pours }) => pours)])
        .flatMap(withInstead);
}
