import type { Dish } from '../plan/types.js';
import { laidNames } from './lay-clauses.js';
import { judgeLayClauses, laidTooSoon, mistaken, type Need } from './lay-judgement.js';
import { givePieces } from './mend-lay.js';
import { defineRule } from './rule.js';
import { agreeing, asName, listed, quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
    course fish "Baked hake" {
        served on fish-plate warmed to 60 °C at 62 °C
        lasts 20 min
        contains fish
    }
`;

export default defineRule({
    id: 'used-never-laid',
    group: 'cover',
    since: '0.1.0',
    title: 'A piece that a dish is eaten with and that the cover leaves out',
    why: 'The dish arrives hot and waits for a server to find a fork; the guest next to it starts with the wrong one.',
    source: ['table-service 1.15', 'table-service 1.19', 'table-service 2.28'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A cover without the fish pieces',
                text: `${BEFORE}
    <|lay right soup-spoon|>
}`,
            },
            {
                title: 'A teaspoon for the soup',
                text: `${BEFORE}
    lay left fish-fork   right <|teaspoon|>, fish-knife
}`,
            },
        ],
        right: [
            {
                title: 'All of them laid',
                text: `${BEFORE}
    lay left fish-fork   right soup-spoon, fish-knife
}`,
            },
            {
                title: 'The fish pieces come with the fish',
                text: `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
    course fish "Baked hake" {
        served on fish-plate warmed to 60 °C at 62 °C
        eaten with fish-fork brought with the course and fish-knife brought with the course
        lasts 20 min
        contains fish
    }
    lay right soup-spoon
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const all = judgeLayClauses(plan, service);
        const tooSoon = laidTooSoon(all).map(({ need }) => need);
        for (const judged of all) {
            const { clause } = judged;
            const instead = mistaken(plan, judged).filter(({ need }) => !tooSoon.includes(need));
            for (const { laid, need } of instead) {
                const wanted = need.piece.piece.name;
                const title = `Lay ${quoted(wanted)} in its place`;
                report({
                    at: laid.named.origin,
                    message: `${quoted(laid.named.name)} lies where ${quoted(wanted)} is wanted: ${quoted(need.dish.title)} is eaten with ${listed(need.names.map(quoted), 'or')}.`,
                    hint: `${title}, or say that ${quoted(need.dish.title)} is eaten with ${quoted(laid.named.name)}.`,
                    related: [{ at: need.dish.head, message: `${quoted(need.dish.title)} is served here.` }],
                    fixes: [
                        {
                            title,
                            safety: 'unsafe',
                            preferred: true,
                            changes: [{ do: 'replace', at: laid.named.origin, words: asName(wanted) }],
                        },
                    ],
                });
            }
            const laid = laidNames(clause.lay).map(({ named }) => named.name);
            // What the clause lays once for two courses is `same-piece-twice`'s finding.
            const left = judged.missing.filter(
                (need) =>
                    !need.names.some((name) => laid.includes(name)) &&
                    !tooSoon.includes(need) &&
                    !instead.some((each) => each.need === need),
            );
            const byDish = new Map<Dish, Need[]>();
            for (const need of left) {
                byDish.set(need.dish, [...(byDish.get(need.dish) ?? []), need]);
            }
            for (const [dish, needs] of byDish) {
                const fixes = givePieces(plan, service, judged, needs);
                const those = agreeing(needs.length, 'it', 'them');
                report({
                    at: clause.lay.origin,
                    message: `${quoted(dish.title)} is eaten with ${listed(needs.map(({ names }) => listed(names.map(quoted), 'or')))}, which ${agreeing(needs.length, 'is', 'are')} neither laid here nor brought with the course.`,
                    hint: `${fixes.length > 1 ? `Lay ${those}, or bring` : 'Bring'} ${those} with the course.`,
                    related: [{ at: dish.head, message: `${quoted(dish.title)} is served here.` }],
                    fixes,
                });
            }
        }
    },
});
