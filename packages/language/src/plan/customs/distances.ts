import type { CustomSpec } from './custom-spec.js';

/** Lengths on the table, in mm. */
export const distanceCustoms = [
    {
        name: 'edge',
        title: 'How far the pieces lie from the table edge.',
        figure: {
            dimension: 'length',
            low: 12.7,
            high: 50.8,
            sources: [
                'table-service 3.11',
                'table-service 3.13',
                'table-service 3.14',
                'table-service 3.16',
                'table-service 3.17',
            ],
        },
        default: 25.4,
        because: 'One inch has seven sources; published figures run from half an inch to two.',
        disagreements: [7],
    },
    {
        name: 'plate-edge',
        title: 'How far the plate stands from the table edge.',
        figure: {
            dimension: 'length',
            low: 12.7,
            high: 50.8,
            sources: ['table-service 3.12', 'table-service 3.15', 'table-service 3.17'],
        },
        choices: [
            {
                value: 'with-pieces',
                means: 'level with the pieces, as `edge` says',
                sources: ['table-service 3.14', 'table-service 3.17'],
            },
        ],
        default: 'with-pieces',
        because:
            'All pieces of a cover stand equally far in; one book sets plate and knives apart and another gives the plate a figure of its own.',
        disagreements: [7],
    },
    {
        name: 'piece-gap',
        title: 'The space between a piece and the next, and between the inner pieces and the plate.',
        figure: {
            dimension: 'length',
            low: 1,
            high: 25.4,
            sources: ['table-service 3.20', 'table-service 3.21'],
        },
        default: 12.7,
        because:
            'One page says half an inch and another an inch; the books say only that pieces lie close and do not touch.',
        disagreements: [],
    },
    {
        name: 'cover-width',
        title: 'The width of table to aim at for each guest, plate centre to plate centre.',
        figure: {
            dimension: 'length',
            low: 508,
            high: 762,
            sources: [
                'table-service 3.4',
                'table-service 3.5',
                'table-service 3.6',
                'table-service 3.7',
                'table-service 3.9',
            ],
        },
        default: 609.6,
        because: 'Two sources read at first hand say 24 inch, and every published range includes it.',
        disagreements: [6, 9],
    },
    {
        name: 'least-cover-width',
        title: 'The width of table below which a guest is crowded.',
        figure: {
            dimension: 'length',
            low: 508,
            high: 609.6,
            sources: ['table-service 3.5', 'table-service 3.6', 'table-service 3.7', 'table-service 3.9'],
        },
        default: 508,
        because: 'No source allows less than 20 inch, and one calls less than that crowding.',
        disagreements: [6, 9],
    },
    {
        name: 'cover-depth',
        title: 'The depth of table that one cover takes, from the edge inward.',
        figure: {
            dimension: 'length',
            low: 304.8,
            high: 508,
            sources: ['table-service 3.2', 'common practice, no source'],
        },
        default: 381,
        because: 'Every source that gives a depth says 15 inch; the range round it is common practice.',
        disagreements: [],
    },
    {
        name: 'cloth-drop',
        title: 'How far the cloth hangs below the table edge.',
        figure: {
            dimension: 'length',
            low: 203.2,
            high: 762,
            sources: [
                'table-service 3.26',
                'table-service 3.27',
                'table-service 3.28',
                'table-service 3.29',
                'quantities §7.4',
            ],
        },
        choices: [
            { value: 'half-way', means: 'half-way to the floor', sources: ['table-service 3.30'] },
            {
                value: 'floor',
                means: 'to the floor',
                sources: ['table-service 3.31', 'table-service 3.32', 'table-service 3.35'],
            },
        ],
        default: 304.8,
        because: '12 inch is enough for every book that gives a least drop, and clears the lap of a seated guest.',
        disagreements: [8],
    },
    {
        name: 'water-glass-gap',
        title: 'The space between the tip of the knife and the foot of the water glass.',
        figure: {
            dimension: 'length',
            low: 10,
            high: 50.8,
            sources: ['table-service 3.23', 'table-service 3.24', 'common practice, no source'],
        },
        default: 25.4,
        because: 'Two pages say about an inch and one 2 cm; no book gives a figure, so the range is common practice.',
        disagreements: [],
    },
    {
        name: 'dessert-gap',
        title: 'The space between the plate and the dessert pieces above it.',
        figure: {
            dimension: 'length',
            low: 10,
            high: 80,
            sources: ['table-service 3.24', 'common practice, no source'],
        },
        default: 40,
        because: '4 cm is the one figure published, in hotel notes; the range is common practice.',
        disagreements: [],
    },
    {
        name: 'cup-edge',
        title: 'How far the saucer stands from the table edge.',
        figure: {
            dimension: 'length',
            low: 25.4,
            high: 101.6,
            sources: ['table-service 3.25', 'common practice, no source'],
        },
        default: 50.8,
        because: 'About 2 inch is the one figure published; the range is common practice.',
        disagreements: [],
    },
] as const satisfies readonly CustomSpec[];
