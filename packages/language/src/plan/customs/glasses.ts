import type { CustomSpec } from './custom-spec.js';

/** Glasses: where they stand, how many, when they leave. */
export const glassCustoms = [
    {
        name: 'water-glass',
        title: 'Where the water glass stands.',
        choices: [
            {
                value: 'knife-tip',
                means: 'at the tip of the innermost, longest knife',
                sources: ['table-service 4.1', 'table-service 4.5'],
            },
            {
                value: 'above-plate',
                means: 'above the plate, just right of its centre',
                sources: ['table-service 4.2'],
            },
            { value: 'above-knives', means: 'above the knives, a little to the right', sources: ['table-service 4.4'] },
            { value: 'behind-forks', means: 'behind the forks', sources: ['table-service 4.3'] },
        ],
        default: 'knife-tip',
        because: 'Six sources; every other place has one.',
        disagreements: [13],
    },
    {
        name: 'first-glass',
        title: 'Which glass stands nearest the knife.',
        choices: [
            {
                value: 'water',
                means: 'the water glass',
                sources: ['table-service 4.1', 'table-service 4.5', 'table-service 4.6'],
            },
            { value: 'first-used', means: 'the glass of the first drink poured', sources: ['table-service 4.8'] },
        ],
        default: 'water',
        because: 'Most sources; water is also poured first and stays longest.',
        disagreements: [14],
    },
    {
        name: 'glass-order',
        title: 'In what order the other glasses stand.',
        choices: [
            {
                value: 'in-order-of-use',
                means: 'in the order in which they are poured, going right',
                sources: ['table-service 4.2', 'table-service 4.5'],
            },
            {
                value: 'white-before-red',
                means: 'by colour, white left of red, whatever the menu',
                sources: ['table-service 4.6'],
            },
        ],
        default: 'in-order-of-use',
        because: 'It gives the order by colour wherever fish comes before meat, and the right one elsewhere.',
        disagreements: [15],
    },
    {
        name: 'glass-shape',
        title: 'What shape the glasses make.',
        choices: [
            {
                value: 'row',
                means: 'a row to the right',
                sources: ['table-service 4.2', 'table-service 4.5', 'table-service 4.6'],
            },
            {
                value: 'triangle',
                means: 'a triangle, for three glasses',
                sources: ['table-service 4.8', 'table-service 4.11', 'table-service 4.12'],
            },
            { value: 'diamond', means: 'a diamond, for four glasses', sources: ['table-service 4.11'] },
            {
                value: 'fan',
                means: 'a slanting line to the right, folded into a V from three on',
                sources: ['table-service 4.13'],
            },
        ],
        default: 'row',
        because: 'The firmer sources give an order from left to right, which a row shows plainly.',
        disagreements: [15],
    },
    {
        name: 'most-wine-glasses',
        title: 'How many wine glasses may stand at one cover.',
        figure: {
            dimension: 'count',
            low: 1,
            high: 5,
            sources: ['table-service 4.7', 'table-service 4.9', 'table-service 4.10'],
        },
        choices: [{ value: 'none', means: 'no limit', sources: ['common practice, no source'] }],
        default: 3,
        because: 'It is the usual most at a formal dinner; the largest cover published has five and water.',
        disagreements: [16],
    },
    {
        name: 'most-glasses',
        title: 'How many glasses, water among them, may stand at one cover.',
        figure: { dimension: 'count', low: 1, high: 6, sources: ['table-service 4.9', 'table-service 4.10'] },
        choices: [{ value: 'none', means: 'no limit', sources: ['common practice, no source'] }],
        default: 5,
        because: 'It is the one limit published; a single state dinner shows six.',
        disagreements: [16],
    },
    {
        name: 'glasses-leave',
        title: 'When wine glasses leave.',
        choices: [
            {
                value: 'stay',
                means: 'they stay until the end of the meal',
                sources: ['table-service 4.30', 'table-service 5.21', 'table-service 6.26'],
            },
            {
                value: 'with-their-course',
                means: 'each leaves with the course it was set for',
                sources: ['table-service 4.31'],
            },
        ],
        default: 'stay',
        because: 'Three sources against one, and a guest may not have finished the wine.',
        disagreements: [19],
    },
] as const satisfies readonly CustomSpec[];
