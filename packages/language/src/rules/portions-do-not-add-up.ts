import type { Course, Dish, Guests, Plan } from '../plan/types.js';
import type { CourseServing, Service, Takers, TooFew, TooMany } from '../service/types.js';
import type { Fix } from './fixes.js';
import { sortOf } from './guest-words.js';
import { defineRule, type Report } from './rule.js';
import { cookInstead, sayTakers, sayTooFew, statedCount, whereStated } from './serving-conflicts.js';
import { agreeing, counted, listed, quoted } from './wording.js';

const event = (guests: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests ${guests}
}
`;

const menu = (sirloin: string, squash: string): string => `
menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak ${sirloin} {
            served on dinner-plate warmed at 54 °C
            contains milk
        }
        dish "Barley-stuffed squash" ${squash} {
            served on dinner-plate warmed at 63 °C
            contains gluten
        }
    }
}
`;

export default defineRule({
    id: 'portions-do-not-add-up',
    group: 'guests',
    since: '0.1.0',
    title: 'Counts of guests, covers or portions that do not fit together',
    why: 'The kitchen cooks by these numbers and the store is pulled by them. One that is wrong is a guest without a plate, or plates for nobody.',
    source: ['quantities 4', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'More portions than guests', text: event('24') + menu('for 18', 'for <|8|>') },
            { title: 'Fewer portions than guests', text: event('24') + menu('for 18', 'for <|4|>') },
            {
                title: 'More guests in the rows than come',
                text: event('<|6|> {\n        8 vegetarian\n    }') + menu('for the rest', 'for vegetarian'),
            },
            {
                title: 'Fewer covers than guests',
                text:
                    event('24 set for <|20|> {\n        2 vegetarian\n    }') + menu('for the rest', 'for vegetarian'),
            },
        ],
        right: [{ text: event('24 guaranteed 22 set for 26') + menu('for 18', 'for 6') }],
    },
    check({ plan, service, report }) {
        const guests = plan.event?.guests;
        if (guests) {
            judgeGuests(guests, service, plan, report);
        }
        for (const serving of service.servings) {
            judgeShares(serving, report);
            serving.tooMany.forEach((conflict) => judgeTooMany(serving, conflict, report));
            // Guests with needs are `diet-not-served`.
            serving.tooFew
                .filter((conflict) =>
                    conflict.guests.every(({ groups }) => groups.every(({ needs }) => needs.length === 0)),
                )
                .forEach((conflict) => judgeTooFew(serving, conflict, report));
        }
    },
});

type Tell = (report: Report) => void;

function judgeGuests(guests: Guests, service: Service, { seating }: Plan, report: Tell): void {
    const { expected, guaranteed, setFor, rows } = guests;
    const inRows = rows.reduce((sum, row) => sum + row.count.count, 0);
    // A named guest at the seat of a row is that row's guest.
    const inList = seating.filter((guest) => !service.groups.some(({ row, named }) => row && named === guest)).length;
    const coming = inRows + inList;
    if (coming > expected.count) {
        const where = [inRows > 0 ? 'the rows' : '', inList > 0 ? 'the guest list' : ''].filter((part) => part !== '');
        const text = `${listed(where)} ${agreeing(inRows > 0 ? 2 : 1, 'adds', 'add')} up to ${counted(coming, 'guest')}`;
        report({
            at: expected.origin,
            message: `${text[0]!.toUpperCase()}${text.slice(1)}, ${coming - expected.count} more than the ${expected.count} who come.`,
            hint: `Guests of every row are among the ${expected.count}: raise the total, or correct a row.`,
            related: rows.map((row) => ({ at: row.origin, message: `${counted(row.count.count, 'guest')} here.` })),
            fixes: [write(`Expect ${counted(coming, 'guest')}`, expected.origin, coming)],
        });
    }
    if (setFor && setFor.count < expected.count) {
        report({
            at: setFor.origin,
            message: `${counted(setFor.count, 'cover')} ${agreeing(setFor.count, 'is', 'are')} laid for ${counted(expected.count, 'guest')}: ${expected.count - setFor.count} would stand.`,
            hint: `Set for ${expected.count} or more.`,
            fixes: [write(`Set for ${expected.count}`, setFor.origin, expected.count)],
        });
    }
    const laid = Math.max(setFor?.count ?? 0, expected.count);
    if (guaranteed && guaranteed.count > laid) {
        report({
            at: guaranteed.origin,
            message: `${counted(guaranteed.count, 'guest')} ${agreeing(guaranteed.count, 'is', 'are')} guaranteed and only ${counted(laid, 'cover')} laid.`,
            hint: `The host pays for ${guaranteed.count}: set for as many.`,
            fixes: [
                setFor
                    ? write(`Set for ${guaranteed.count}`, setFor.origin, guaranteed.count)
                    : {
                          title: `Set for ${guaranteed.count}`,
                          safety: 'unsafe',
                          preferred: true,
                          changes: [{ do: 'append', at: guaranteed.origin, words: `set for ${guaranteed.count}` }],
                      },
            ],
        });
    }
}

/** Shares of one course that make more than the whole. */
function judgeShares({ course, portions }: CourseServing, report: Tell): void {
    const shares = portions.flatMap(({ dish }) =>
        dish.who?.sort === 'some' && dish.who.share ? [{ dish, share: dish.who.share }] : [],
    );
    const percent = (value: number): number => Number((value * 100).toFixed(2));
    const total = percent(shares.reduce((sum, { share }) => sum + share.value, 0));
    const last = shares.at(-1);
    if (!last || total <= 100) {
        return;
    }
    const left = percent(last.share.value) - (total - 100);
    report({
        at: last.share.origin,
        message: `The shares of \`${course.title}\` add up to ${total} %.`,
        hint: 'Shares make 100 % together, or leave the rest to a dish `for the rest`.',
        fixes: left > 0 ? [write(`Cook ${quoted(last.dish.title)} for ${left} %`, last.share.origin, left)] : [],
    });
}

/** Portions for nobody. Shares are rounded to whole guests and may be one over. */
function judgeTooMany({ course }: CourseServing, { portions, guests, over, mends }: TooMany, report: Tell): void {
    const stated = portions.map(
        ({ dish, count }, place) => `${quoted(dish.title)} ${place === 0 ? 'is ' : ''}for ${count}`,
    );
    const last = portions.at(-1)!.dish;
    report({
        at: statedCount(last)?.origin ?? last.head,
        message: `${listed(stated)} in ${quoted(course.title)}, and ${sayEaters(guests)} for ${portions.length === 1 ? 'it' : `them: ${counted(over, 'portion')} too many`}.`,
        hint: 'Portions to spare are written `cook 3 extra` and are not given to anyone.',
        related: portions.slice(0, -1).map(({ dish, count }) => ({
            at: statedCount(dish)?.origin ?? dish.head,
            message: `${counted(count, 'portion')} ${agreeing(count, 'is', 'are')} stated here.`,
        })),
        fixes: cookInstead(mends.toReversed()),
    });
}

function sayEaters(guests: readonly Takers[]): string {
    const count = guests.reduce((sum, takers) => sum + takers.count, 0);
    const isTold =
        guests.length <= 2 && guests.every(({ groups, chose }) => chose.length > 0 || groups[0]!.needs.length > 0);
    const who = isTold ? listed(guests.map(sayTakers)) : counted(count, 'guest');
    return count === 0 ? 'there is no guest' : `there ${agreeing(count, 'is', 'are')} only ${who}`;
}

/** Guests without needs for whom no dish is left, or not the one they chose. */
function judgeTooFew(serving: CourseServing, conflict: TooFew, report: Tell): void {
    const { course } = serving;
    const { guests, portions, short, mends } = conflict;
    const isChosen = guests.some(({ chose }) => chose.length > 0);
    const last = (mends.at(-1)?.[0] ?? portions.at(-1))?.dish;
    // A course that is called like a dish, with dishes for some guests below: it is meant as the dish of all the others.
    const isDish = portions.length === 0 && course.title !== course.kind.name;
    report({
        at: (last && statedCount(last)?.origin) ?? last?.who?.origin ?? course.head,
        message: isChosen
            ? `In ${quoted(course.title)} ${sayTooFew(conflict, serving)}: ${short} too few.`
            : `${counted(short, 'guest')} ${agreeing(short, 'has', 'have')} no dish in ${quoted(course.title)}: ${portions.length === 0 ? listed(course.dishes.map(forWhom)) : sayTooFew(conflict, serving)}.`,
        hint:
            mends.length > 0
                ? `Cook ${short} more${isChosen ? ', or ask who would rather have something else' : ', or write `for the rest` for one dish'}.`
                : isDish
                  ? `Write ${quoted(forTheRest(course.title))} in it, or \`for the rest\` for another dish; what the course contains holds for each dish that does not say so itself.`
                  : 'Write `for the rest` for the dish that most guests get.',
        related: isChosen ? whereStated(guests) : [],
        fixes: isDish ? [addForTheRest(course)] : cookInstead(mends.toReversed()),
    });
}

const forTheRest = (title: string): string => `dish "${title}" for the rest {}`;

function addForTheRest({ title, origin }: Course): Fix {
    return {
        title: `Serve ${quoted(title)} to the rest`,
        safety: 'show',
        changes: [{ do: 'add-clause', to: origin, clause: forTheRest(title) }],
    };
}

function forWhom({ title, who }: Dish): string {
    const needs = who?.sort === 'some' ? who.needs : [];
    return `${quoted(title)} is for ${sortOf({ needs, children: needs.some(({ sort }) => sort === 'children') })}`;
}

function write(title: string, at: Guests['origin'], count: number): Fix {
    return { title, safety: 'unsafe', preferred: true, changes: [{ do: 'replace', at, words: String(count) }] };
}
