import type { Dish } from '../plan/types.js';
import { writeEaten, writtenUses } from './eaten-with.js';
import { firstSight } from './first-sight.js';
import { laidNames } from './lay-clauses.js';
import { judgeLayClauses, needOf } from './lay-judgement.js';
import { givePieces } from './mend-lay.js';
import { defineRule, type Report } from './rule.js';
import { quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course smoked-fish "Smoked eel" {
        served on fish-plate chilled at 6 °C
        eaten with fish-fork
        lasts 15 min
        contains fish
    }
    course fish "Grilled trout" {
        served on fish-plate warmed to 60 °C at 62 °C
        lasts 20 min
        contains fish
    }
`;

export default defineRule({
    id: 'same-piece-twice',
    group: 'cover',
    since: '0.1.0',
    title: 'One piece for two courses',
    why: 'A piece leaves with the course it was used for. Guests who see that it is all they have keep it, and lay it soiled on the cloth.',
    source: ['table-service 2.28', 'table-service 6.16', 'table-service 6.15'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A cover with one fish fork for two fish courses',
                text: `${BEFORE}
    lay left <|fish-fork|>   right fish-knife
}`,
            },
            {
                title: 'A dish that names a fork twice',
                text: `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {
    course main "Roast duck" {
        served on dinner-plate warmed to 62 °C at 63 °C
        eaten with dinner-fork and dinner-knife and <|dinner-fork|>
        lasts 30 min
        contains nothing
    }
}`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
    lay left fish-fork, fish-fork   right fish-knife
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const dish of (plan.menu?.courses ?? []).flatMap((course) => course.dishes)) {
            const again = namedTwice(dish);
            if (again && isNew(again.at)) {
                report(again);
            }
        }
        for (const judged of judgeLayClauses(plan, service)) {
            for (const need of judged.missing) {
                const laid = laidNames(judged.clause.lay).findLast(({ named }) => need.names.includes(named.name));
                const first = laid && needOf(judged, laid.named)?.dish;
                if (!laid || !first) {
                    continue;
                }
                const fixes = givePieces(plan, service, judged, [need]);
                report({
                    at: laid.named.origin,
                    message: `${quoted(laid.named.name)} leaves with ${quoted(first.title)}, and ${quoted(need.dish.title)} is eaten with it too.`,
                    hint: `${fixes[0]!.title}.`,
                    related: [first, need.dish].map((dish) => ({
                        at: dish.head,
                        message: `${quoted(dish.title)} is served here.`,
                    })),
                    fixes,
                });
            }
        }
    },
});

/** A piece that one `eaten with` clause names again. */
function namedTwice(dish: Dish): Report | undefined {
    const { eaten = [], eatenOrigin } = dish;
    const uses = eaten.flat();
    const again = uses.find(
        (use, index) => use.piece.name !== '' && uses.findIndex((first) => first.piece.name === use.piece.name) < index,
    );
    if (!again || !eatenOrigin) {
        return undefined;
    }
    const clause = writeEaten(writtenUses(eaten, (use) => use === again));
    return {
        at: again.piece.origin,
        message: `${quoted(dish.title)} is eaten with ${quoted(again.piece.name)} named twice.`,
        hint: 'Name it once.',
        fixes: [
            {
                title: `Name ${quoted(again.piece.name)} once`,
                safety: 'safe',
                preferred: true,
                changes: [{ do: 'replace', at: eatenOrigin, words: clause }],
            },
        ],
    };
}
