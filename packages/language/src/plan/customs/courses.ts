import type { CustomSpec } from './custom-spec.js';

/** Where courses that the sources place differently stand in the menu. `as-written` leaves it to the menu. */
export const courseCustoms = [
    {
        name: 'salad',
        title: 'Where the salad course stands.',
        choices: [
            { value: 'after-main', means: 'after the main course or roast', sources: ['table-service 7.10'] },
            { value: 'before-main', means: 'before the main course', sources: ['table-service 7.11'] },
            {
                value: 'with-main',
                means: 'with the main course, roast or game',
                sources: ['table-service 7.12', 'table-service 6.28'],
            },
            { value: 'as-written', means: 'wherever the menu puts it', sources: ['table-service WS-4'] },
        ],
        default: 'after-main',
        because:
            'Most sources, and the firmer ones. Only the order of courses reads this: pieces follow the menu as it is written.',
        disagreements: [30],
    },
    {
        name: 'entree',
        title: 'Where the entrée stands beside the roast.',
        choices: [
            {
                value: 'before-roast',
                means: 'before the roast',
                sources: ['table-service 7.6', 'table-service 7.14'],
            },
            { value: 'after-roast', means: 'after the roast', sources: ['table-service 7.3', 'table-service 7.4'] },
            { value: 'as-written', means: 'wherever the menu puts it', sources: ['common practice, no source'] },
        ],
        default: 'before-roast',
        because: 'The classical order and the later book agree; two older dinners turn it round.',
        disagreements: [31],
    },
    {
        name: 'intermezzo',
        title: 'Where the sorbet or punch stands.',
        choices: [
            {
                value: 'before-roast',
                means: 'before the roast, or before the main course where no roast is named',
                sources: ['table-service 7.6'],
            },
            {
                value: 'before-game',
                means: 'between roast and game; before the main course where there is no game',
                sources: ['table-service 7.13'],
            },
            {
                value: 'before-releve',
                means: 'before the relevé; before the main course where there is none',
                sources: ['table-service 7.8'],
            },
            { value: 'as-written', means: 'wherever the menu puts it', sources: ['common practice, no source'] },
        ],
        default: 'before-roast',
        because: 'It is the classical order, and on a menu with one meat course it says the same as the others.',
        disagreements: [32],
    },
    {
        name: 'cheese',
        title: 'Where the cheese stands.',
        choices: [
            {
                value: 'after-dessert',
                means: 'last, with the coffee',
                sources: ['table-service 7.3', 'table-service 7.15'],
            },
            {
                value: 'before-dessert',
                means: 'before the sweet',
                sources: ['table-service 7.8', 'table-service 7.15'],
            },
            {
                value: 'with-salad',
                means: 'with the salad or right after it',
                sources: ['table-service 7.4', 'table-service 7.15'],
            },
            {
                value: 'after-savoury',
                means: 'after the savoury, before the fruit',
                sources: ['table-service 7.6', 'table-service 7.15'],
            },
            { value: 'as-written', means: 'wherever the menu puts it', sources: ['common practice, no source'] },
        ],
        default: 'after-dessert',
        because: 'Four places are published and none prevails; this one ends the fullest worked menu.',
        disagreements: [33],
    },
] as const satisfies readonly CustomSpec[];
