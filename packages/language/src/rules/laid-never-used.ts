import { defineRule } from './rule.js';
import { laidNames, SIDE_SAID, withoutNames } from './lay-clauses.js';
import { judgeLayClauses, laidTooSoon, mistaken } from './lay-judgement.js';
import { quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
    }
`;

export default defineRule({
    id: 'laid-never-used',
    group: 'cover',
    since: '0.1.0',
    title: 'A piece laid that no course uses',
    why: 'Guests read the cover as the menu: a piece too many makes them wait for a course that never comes, or eat the next one with it.',
    source: ['table-service 2.1', 'table-service 6.16', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'The fish went off the menu and stayed in the cover',
                text: `${BEFORE}
    lay left <|fish-fork|>, dinner-fork   right soup-spoon, dinner-knife
}`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
    lay left dinner-fork   right soup-spoon, dinner-knife
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const all = judgeLayClauses(plan, service);
        const tooSoon = laidTooSoon(all).map(({ laid }) => laid);
        for (const judged of all) {
            const { clause, unused } = judged;
            // What lies in the place of a piece that is wanted there is `used-never-laid`'s finding.
            const inPlaceOf = mistaken(plan, judged).map(({ laid }) => laid);
            for (const laid of unused.filter((each) => !tooSoon.includes(each) && !inPlaceOf.includes(each))) {
                const { named, side } = laid;
                const same = laidNames(clause.lay).filter((each) => each.named.name === named.name);
                const used = same.length - unused.filter((each) => each.named.name === named.name).length;
                const whose = clause.isWholeMenu ? 'no course' : quoted(clause.dishes[0]?.title ?? 'the course');
                report({
                    at: named.origin,
                    message:
                        used > 0
                            ? `${quoted(named.name)} is laid ${times(same.length)} and used ${times(used)}.`
                            : `${quoted(named.name)} lies ${SIDE_SAID[side]}, and ${whose} is${clause.isWholeMenu ? '' : ' not'} eaten with it.`,
                    hint: `Take ${quoted(named.name)} off the cover, or say which dish is eaten with it.`,
                    fixes: [
                        {
                            title: `Take ${quoted(named.name)} off the cover`,
                            safety: 'unsafe',
                            preferred: true,
                            changes: [withoutNames(clause.lay, [named])],
                        },
                    ],
                });
            }
        }
    },
});

function times(count: number): string {
    return count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;
}
