import { isDoubtful } from './doubt.js';
import type { Intention } from './fixes.js';
import { defineRule } from './rule.js';
import { isSortOfPiece, mismatchedPair, ownsEatenClause, suitsKind } from '../plan/suiting.js';
import { writeEaten, writtenUses } from './eaten-with.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'steak-without-steak-knife',
    group: 'cover',
    since: '0.1.0',
    title: 'Steak without a steak knife',
    why: 'A table knife is not made to cut grilled meat in one stroke: guests saw, tear and ask for another knife while the plate cools.',
    source: ['common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak for everyone {
            served on dinner-plate warmed to 60 °C at 55 °C
            eaten with dinner-fork and <|dinner-knife|>
            contains milk
        }
    }
}
`,
            },
        ],
        right: [
            {
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak for everyone {
            served on dinner-plate warmed to 60 °C at 55 °C
            eaten with dinner-fork and steak-knife
            contains milk
        }
    }
}
`,
            },
        ],
    },
    check({ plan, report }) {
        const { cupboard } = plan;
        const isSteakKnife = (name: string) => isSortOfPiece(cupboard, name, 'steak-knife');
        for (const dish of (plan.menu?.courses ?? []).flatMap((course) => course.dishes)) {
            const kind = cupboard.kinds.get(dish.kind.name);
            // A house that declares its steaks to be eaten with another knife is taken at its word.
            const wanted = (kind?.eaten ?? []).flat().find((use) => isSteakKnife(use.piece.name))?.piece.name;
            if (
                !kind?.lineage.includes('steak') ||
                !wanted ||
                !dish.eaten ||
                isDoubtful(plan, dish.origin) ||
                mismatchedPair(cupboard, dish.eaten, kind)
            ) {
                continue;
            }
            const uses = dish.eaten.flat();
            // Names nobody declares and pieces that do not suit are findings of their own, and their fixes say the knife.
            const isOther = uses.some(
                ({ piece }) => !cupboard.pieces.has(piece.name) || !suitsKind(cupboard, piece.name, kind),
            );
            if (isOther || uses.some((use) => isSteakKnife(use.piece.name))) {
                continue;
            }
            const owned = ownsEatenClause(dish);
            const knife = uses.find((use) => cupboard.pieces.get(use.piece.name)?.family === 'knife');
            const title = `Eat ${quoted(dish.title)} with ${quoted(wanted)}`;
            const change: Intention = !owned
                ? {
                      do: 'add-clause',
                      to: dish.origin,
                      clause: writeEaten([...writtenUses(dish.eaten, (use) => use === knife), [wanted]]),
                  }
                : knife
                  ? { do: 'replace', at: knife.piece.origin, words: wanted }
                  : { do: 'append', at: uses.at(-1)!.origin, words: `and ${wanted}` };
            report({
                at: !owned ? dish.head : (knife?.piece.origin ?? dish.eatenOrigin!),
                message: `${quoted(dish.title)} is a steak, and ${knife ? `${quoted(knife.piece.name)} is not a steak knife` : 'no knife is laid for it'}.`,
                hint: `${title}.`,
                fixes: [{ title, safety: 'unsafe', preferred: true, changes: [change] }],
            });
        }
    },
});
