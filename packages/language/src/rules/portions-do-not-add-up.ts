import type { Guests } from '../plan/types.js';
import type { CourseServing } from '../service/types.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report } from './rule.js';
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
                text: event('24 set for <|20|>') + menu('for the rest', 'for vegetarian'),
            },
        ],
        right: [{ text: event('24 guaranteed 22 set for 26') + menu('for 18', 'for 6') }],
    },
    check({ plan, service, report }) {
        const guests = plan.event?.guests;
        if (guests) {
            judgeGuests(guests, report);
        }
        for (const serving of service.servings) {
            judgeShares(serving, report);
            judgeLeftover(serving, report);
            judgeShort(serving, report);
        }
    },
});

type Tell = (report: Report) => void;

function judgeGuests({ expected, guaranteed, setFor, rows }: Guests, report: Tell): void {
    const inRows = rows.reduce((sum, row) => sum + row.count.count, 0);
    if (inRows > expected.count) {
        report({
            at: expected.origin,
            message: `The rows add up to ${counted(inRows, 'guest')}, ${inRows - expected.count} more than the ${expected.count} who come.`,
            hint: `Guests of every row are among the ${expected.count}: raise the total, or correct a row.`,
            related: rows.map((row) => ({ at: row.origin, message: `${counted(row.count.count, 'guest')} here.` })),
            fixes: [write(`Expect ${counted(inRows, 'guest')}`, expected.origin, inRows)],
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
function judgeLeftover({ course, portions, leftover }: CourseServing, report: Tell): void {
    for (const { dish, count } of leftover) {
        const { who } = dish;
        const eaten = portions.find((portion) => portion.dish === dish)?.count ?? 0;
        if (who?.sort !== 'some' || !who.count) {
            continue;
        }
        report({
            at: who.count.origin,
            message: `${quoted(dish.title)} is for ${eaten + count}, and ${eaten === 0 ? 'no guest is' : eaten === 1 ? 'only 1 guest is' : `only ${eaten} guests are`} left to eat it in \`${course.title}\`.`,
            hint: 'Portions to spare are written `cook 3 extra` and are not given to anyone.',
            fixes: eaten > 0 ? [write(`Cook ${quoted(dish.title)} for ${eaten}`, who.count.origin, eaten)] : [],
        });
    }
}

/** Guests without needs for whom no dish is left. */
function judgeShort({ course, portions, unserved }: CourseServing, report: Tell): void {
    const short = unserved.filter(({ group }) => group.needs.length === 0).reduce((sum, { count }) => sum + count, 0);
    if (short === 0) {
        return;
    }
    const open = portions.filter(({ dish }) => dish.who?.sort === 'some' && dish.who.needs.length === 0);
    const last = open.at(-1)?.dish;
    const count = last?.who?.sort === 'some' ? last.who.count : undefined;
    const cooked = portions.reduce((sum, portion) => sum + portion.count, 0);
    const dishes = listed(portions.map((portion) => `${portion.count} ${quoted(portion.dish.title)}`));
    report({
        at: count?.origin ?? last?.who?.origin ?? course.head,
        message: `${counted(short, 'guest')} ${agreeing(short, 'has', 'have')} no dish in \`${course.title}\`: there ${agreeing(cooked, 'is', 'are')} ${dishes} for ${cooked + short}.`,
        hint: count
            ? `Cook ${short} more, or write \`for the rest\` for one dish.`
            : 'Write `for the rest` for the dish that most guests get.',
        fixes:
            count && last
                ? [write(`Cook ${quoted(last.title)} for ${count.count + short}`, count.origin, count.count + short)]
                : [],
    });
}

function write(title: string, at: Guests['origin'], count: number): Fix {
    return { title, safety: 'unsafe', preferred: true, changes: [{ do: 'replace', at, words: String(count) }] };
}
