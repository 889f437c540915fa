import { isDoubtful } from './doubt.js';
import { defineRule } from './rule.js';
import { isSortOfPiece, suitsKind } from '../plan/suiting.js';
import { quoted } from './wording.js';

const BEFORE = `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
`;

export default defineRule({
    id: 'bread-without-spreader',
    group: 'cover',
    since: '0.1.0',
    title: 'Bread and butter with no butter spreader',
    why: 'A guest who has none takes the first knife of the cover, and that knife is then missing from its course.',
    source: ['table-service 1.23', 'table-service 2.8', 'table-service 2.17'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A dinner knife for the butter',
                text: `${BEFORE}
    bread from cold-soup until cold-soup on bread-plate with <|dinner-knife|> {
        contains gluten
        butter "Salted butter" { contains milk }
    }
}
`,
            },
        ],
        right: [
            {
                text: `${BEFORE}
    bread from cold-soup until cold-soup on bread-plate with butter-spreader {
        contains gluten
        butter "Salted butter" { contains milk }
    }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        const { bread } = plan.menu ?? {};
        const butter = bread?.accompaniments.find(({ sort }) => sort === 'butter');
        const spreader = bread?.piece ? plan.cupboard.pieces.get(bread.piece.name) : service.bread?.spreader;
        // A name nobody declares is a finding of its own; bread without butter needs no spreader.
        if (!bread || isDoubtful(plan, bread.origin) || (bread.piece ? !spreader : spreader !== undefined || !butter)) {
            return;
        }
        const kind = plan.cupboard.kinds.get('bread');
        if (
            spreader &&
            (isSortOfPiece(plan.cupboard, spreader.name, 'butter-spreader') ||
                (kind && suitsKind(plan.cupboard, spreader.name, kind)))
        ) {
            return;
        }
        const title = 'Lay `butter-spreader` with the bread';
        report({
            at: bread.piece?.origin ?? bread.head,
            message: spreader
                ? `${quoted(spreader.name)} is no butter spreader.`
                : `\`${butter?.title ?? 'butter'}\` comes with the bread, and no spreader does.`,
            hint: `${title}.`,
            fixes: plan.cupboard.pieces.has('butter-spreader')
                ? [
                      {
                          title,
                          safety: 'safe',
                          preferred: true,
                          changes: [
                              bread.piece
                                  ? { do: 'replace', at: bread.piece.origin, words: 'butter-spreader' }
                                  : { do: 'append', at: bread.head, words: 'with butter-spreader' },
                          ],
                      },
                  ]
                : [],
        });
    },
});
