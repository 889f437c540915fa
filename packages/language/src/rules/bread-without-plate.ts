import { isDoubtful } from './doubt.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const BEFORE = `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

house "Saltmarsh Hall" {
    laying { bread-plate: none }
}

menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        lasts 15 min
        contains milk
    }
`;

export default defineRule({
    id: 'bread-without-plate',
    group: 'cover',
    since: '0.1.0',
    title: 'Bread and butter with no plate of their own',
    why: 'Without its plate the bread ends on the cloth and the spreader on the rim of the soup, and both are in the way when the course is cleared.',
    source: ['table-service 5.8', 'table-service 5.11', 'table-service 5.12', 'table-service 5.9'],
    fix: 'sometimes',
    customs: ['bread-plate', 'bread-place'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'A house without bread plates serves butter',
                text: `${BEFORE}
    <|bread from cold-soup until cold-soup with butter-spreader|> {
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
        if (!bread || bread.plate || service.bread?.plate || isDoubtful(plan, bread.origin)) {
            return;
        }
        const butter = bread.accompaniments.find(({ sort }) => sort === 'butter');
        const laidByCustom =
            plan.customs['bread-plate'].value === 'laid' && plan.customs['bread-place'].value === 'plate';
        if (!laidByCustom && !bread.piece && !butter) {
            return;
        }
        const needing = bread.piece ? quoted(bread.piece.name) : butter ? 'the butter' : 'the bread';
        const title = 'Set the bread on `bread-plate`';
        report({
            at: bread.head,
            message: `No plate is set for ${needing}.`,
            hint: `${title}${laidByCustom ? '' : ', or serve it without butter'}.`,
            related: plan.customs['bread-plate'].origin
                ? [
                      {
                          at: plan.customs['bread-plate'].origin,
                          message: 'The house lays no bread plates unless the menu asks for them.',
                      },
                  ]
                : [],
            fixes: plan.cupboard.pieces.has('bread-plate')
                ? [
                      {
                          title,
                          safety: 'unsafe',
                          preferred: true,
                          changes: [{ do: 'append', at: bread.head, words: 'on bread-plate' }],
                      },
                  ]
                : [],
        });
    },
});
