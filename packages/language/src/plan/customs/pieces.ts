import type { CustomSpec } from './custom-spec.js';

/** Which flatware lies where when guests sit. */
export const pieceCustoms = [
    {
        name: 'limit',
        title: 'How many pieces may lie on one side of the plate when guests sit.',
        figure: {
            dimension: 'count',
            per: 'side',
            low: 1,
            high: 8,
            sources: [
                'table-service 1.1',
                'table-service 1.8',
                'table-service 1.10',
                'table-service 1.24',
                'table-service WS-1',
            ],
        },
        choices: [
            {
                value: 'none',
                means: 'as many as the courses need',
                sources: ['table-service 1.9', 'table-service 1.11', 'table-service 1.14'],
            },
        ],
        default: 3,
        because: 'Five sources stop at three forks; the covers with five or six are mostly older.',
        disagreements: [1, 2],
    },
    {
        name: 'limit-counts',
        title: 'Which pieces the limit counts.',
        choices: [
            {
                value: 'pieces',
                means: 'every piece lying left, and every piece lying right, of the plate',
                sources: ['table-service 1.13'],
            },
            {
                value: 'forks-and-knives',
                means: 'forks on one count and knives on another; spoons are free',
                sources: ['table-service 1.4', 'table-service 1.5'],
            },
            {
                value: 'forks-left',
                means: 'forks left of the plate only',
                sources: ['table-service 1.1', 'table-service 1.2', 'table-service 1.3', 'table-service 1.6'],
            },
            {
                value: 'all-pieces',
                means: 'left and right added up, so that the limit is for the whole cover (`limit: 6`)',
                sources: ['table-service 1.7'],
            },
        ],
        default: 'pieces',
        because:
            'It keeps both sides short, and three on each side make up the usual six (table-service 1.7). Military covers declare `forks-and-knives`.',
        disagreements: [2],
    },
    {
        name: 'oyster-fork-counts',
        title: 'Whether the oyster fork counts toward the limit.',
        choices: [
            {
                value: 'yes',
                means: 'it counts like any other piece',
                sources: ['table-service 1.1', 'table-service 1.2', 'table-service 1.10'],
            },
            {
                value: 'no',
                means: 'it may lie beside a full side',
                sources: ['table-service 1.4', 'table-service 1.5', 'table-service 1.13'],
            },
        ],
        default: 'yes',
        because:
            'It takes its place on the table like the others; only the sources that name an exception leave it out.',
        disagreements: [3],
    },
    {
        name: 'overflow',
        title: 'What happens to the pieces past the limit.',
        choices: [
            {
                value: 'reported',
                means: 'everything is laid and the finding offers to bring a piece with its course',
                sources: ['common practice, no source'],
            },
            {
                value: 'brought',
                means: 'the pieces used last come with their courses without being asked for',
                sources: ['table-service 1.1', 'table-service 1.2', 'table-service 1.15', 'table-service 1.16'],
            },
        ],
        default: 'reported',
        because:
            'Who carries a piece in, and when, is work for the team: the chef should decide it and not find it done.',
        disagreements: [],
    },
    {
        name: 'oyster-fork',
        title: 'Where the oyster fork lies.',
        choices: [
            { value: 'right', means: 'right, outermost, beyond the spoons', sources: ['table-service 2.5'] },
            { value: 'left', means: 'left, outermost, beyond the other forks', sources: ['table-service 1.10'] },
            { value: 'across-the-spoon', means: 'across the soup spoon', sources: ['table-service 2.6'] },
        ],
        default: 'right',
        because: 'Seven sources agree on the right; the other two places have one source each.',
        disagreements: [4],
    },
    {
        name: 'fork-without-knife',
        title: 'Where a fork lies when its course has no knife.',
        choices: [
            { value: 'left', means: 'left with the other forks', sources: ['table-service 2.8', 'table-service 2.10'] },
            {
                value: 'right',
                means: 'right, in the place of the knife',
                sources: ['table-service 2.9', 'table-service 2.10', 'table-service WS-14'],
            },
            {
                value: 'either',
                means: 'laid left, and accepted at the right where a `lay` clause puts it there',
                sources: ['table-service 2.8', 'table-service 2.9', 'table-service 2.10'],
            },
        ],
        default: 'left',
        because: 'Even the source that moves it says that many prefer the left; a cover needs one place for it.',
        disagreements: [5],
    },
    {
        name: 'spoons',
        title: 'How spoons lie among the knives.',
        choices: [
            {
                value: 'outside-knives',
                means: 'all spoons right of all knives, each group in order of use',
                sources: ['table-service 2.2', 'table-service 2.11', 'table-service WS-4'],
            },
            {
                value: 'order-of-use',
                means: 'spoons and knives in one order, first used outermost',
                sources: ['table-service 2.12'],
            },
        ],
        default: 'outside-knives',
        because:
            'The books read at first hand say so; strict order is worked out from one set of course notes. The two differ only when a knife is used before a spoon.',
        disagreements: [39],
    },
    {
        name: 'dessert',
        title: 'Where the dessert pieces are when guests sit.',
        choices: [
            {
                value: 'above',
                means: 'above the plate',
                sources: ['table-service 1.21', 'table-service 5.23', 'table-service 5.25'],
            },
            {
                value: 'brought',
                means: 'not laid: they come with the dessert',
                sources: ['table-service 1.18', 'table-service 1.19', 'table-service 1.21', 'table-service 1.22'],
            },
            {
                value: 'laid',
                means: 'left and right, innermost, with the rest',
                sources: ['table-service 1.11', 'table-service 1.20'],
            },
        ],
        default: 'above',
        because:
            'It leaves both sides free and saves bringing them; the sources allow every place, so this is our choice.',
        disagreements: [],
    },
    {
        name: 'dessert-pieces',
        title: 'Which pieces a dessert gets when the plan names none.',
        choices: [
            { value: 'fork-and-spoon', means: 'dessert fork and dessert spoon', sources: ['table-service 7.38'] },
            { value: 'fork', means: 'dessert fork only', sources: ['table-service WS-4', 'table-service 7.43'] },
            { value: 'spoon', means: 'dessert spoon only, as for ices', sources: ['table-service 7.37'] },
            { value: 'knife-fork-and-spoon', means: 'a small knife, fork and spoon', sources: ['table-service 5.25'] },
        ],
        default: 'fork-and-spoon',
        because: 'Three sources, and it serves nearly every sweet.',
        disagreements: [38],
    },
] as const satisfies readonly CustomSpec[];
