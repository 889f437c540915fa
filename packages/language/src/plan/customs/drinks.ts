import type { CustomSpec } from './custom-spec.js';

// A third and two thirds are accepted as a chef writes them, `33 %` and `67 %`; hence ranges from 0.33 and to 0.67.

/** How full, how many, how much. Shares are of the glass or of the guests, 0–1. */
export const drinkCustoms = [
    {
        name: 'water-poured',
        title: 'When water is first poured.',
        choices: [
            {
                value: 'before-seating',
                means: 'a few minutes before guests sit',
                sources: ['table-service 4.17', 'table-service 4.19'],
            },
            { value: 'at-table', means: 'once guests sit', sources: ['table-service 4.21'] },
        ],
        default: 'before-seating',
        because: 'Two sources against one, and servers are free then.',
        disagreements: [17],
    },
    {
        name: 'water-fill',
        title: 'How full a water glass is poured.',
        figure: {
            dimension: 'share',
            low: 0.5,
            high: 0.75,
            sources: ['table-service 4.16', 'table-service 4.17', 'table-service 4.19', 'table-service 4.20'],
        },
        default: 0.75,
        because: 'Three sources say three quarters, one half at a formal dinner; none fills to the brim.',
        disagreements: [17],
    },
    {
        name: 'wine-fill',
        title: 'How full a wine glass may be poured at most.',
        figure: {
            dimension: 'share',
            low: 0.33,
            high: 0.67,
            sources: ['table-service 4.22', 'table-service 4.23', 'table-service 4.24'],
        },
        default: 2 / 3,
        because:
            'Two thirds is the one fill found in a book; the trade figures for white and red contradict each other.',
        disagreements: [18],
    },
    {
        name: 'sparkling-fill',
        title: 'How full a glass of sparkling wine may be poured at most.',
        figure: { dimension: 'share', low: 0.66, high: 0.75, sources: ['table-service 4.22', 'table-service 4.25'] },
        default: 0.75,
        because: 'The trade figures agree on three quarters; a house that holds all wine to two thirds may say so.',
        disagreements: [18],
    },
    {
        name: 'water-share',
        title: 'The share of guests who take water.',
        figure: { dimension: 'share', low: 0, high: 1, sources: ['common practice, no source'] },
        default: 1,
        because: 'Every guest is offered water.',
        disagreements: [],
    },
    {
        name: 'sparkling-water-share',
        title: 'The share of guests who take sparkling water where both are offered.',
        figure: { dimension: 'share', low: 0, high: 1, sources: ['common practice, no source'] },
        default: 0.5,
        because: 'No figure is published; an even split is the plainest guess until the house knows its guests.',
        disagreements: [],
    },
    {
        name: 'coffee-share',
        title: 'The share of guests who take coffee when it is offered on request.',
        figure: { dimension: 'share', low: 0, high: 1, sources: ['quantities §2.6'] },
        default: 0.8,
        because:
            'No figure is published for after dinner. At breaks 55 to 80 % take coffee, decaffeinated counted in; the higher figure does not run short.',
        disagreements: [],
    },
    {
        name: 'alcohol-limit',
        title: 'The standard drinks a guest above which the plan carries a caution. Local law and licensed staff decide.',
        figure: { dimension: 'count', per: 'guest', low: 0, high: 5, sources: ['quantities §2.4', 'quantities §2.5'] },
        default: 2,
        because:
            'Common US guidance is at most two a day for men and one for women. It is a line for caution, never an amount to reach.',
        disagreements: [],
    },
] as const satisfies readonly CustomSpec[];
