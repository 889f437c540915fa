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
        name: 'still-water-from',
        title: 'What still water is poured from.',
        choices: [
            { value: 'jugs', means: 'jugs, filled again as they empty', sources: ['quantities §2.5'] },
            { value: 'bottles', means: 'bottles, opened as they are needed', sources: ['quantities §2.5'] },
        ],
        default: 'jugs',
        because: 'The published rule takes half a bottle a guest or a jug a table; a jug is what every house has.',
        disagreements: [],
    },
    {
        name: 'sparkling-water-from',
        title: 'What sparkling water is poured from.',
        choices: [
            { value: 'bottles', means: 'bottles, opened as they are needed', sources: ['quantities §2.5'] },
            {
                value: 'jugs',
                means: 'jugs, filled at a tap for sparkling water',
                sources: ['common practice, no source'],
            },
        ],
        default: 'bottles',
        because: 'It keeps its gas in the bottle.',
        disagreements: [],
    },
    {
        name: 'water-bottle',
        title: 'What a bottle of water holds.',
        figure: { dimension: 'volume', low: 200, high: 2000, sources: ['common practice, no source'] },
        default: 750,
        because: 'No size is prescribed for water; 750 ml is what tables are served with.',
        disagreements: [],
    },
    {
        name: 'jug-fill',
        title: 'How full a jug is carried to the table.',
        figure: { dimension: 'share', low: 0.5, high: 0.67, sources: ['table-service 4.27'] },
        default: 2 / 3,
        because: 'One handbook says one half to two thirds; the fuller jug is filled less often.',
        disagreements: [],
    },
    {
        name: 'water-top-up',
        title: 'The share of a full glass that each topping-up with water takes.',
        figure: { dimension: 'share', low: 0.1, high: 1, sources: ['common practice, no source'] },
        default: 0.5,
        because:
            'At half a glass a course a dinner of three courses comes close to the published half bottle a guest (quantities §2.5).',
        disagreements: [],
    },
    {
        name: 'top-up',
        title: 'The share of a full pour that each topping-up takes, for a further course or a toast; water apart.',
        figure: { dimension: 'share', low: 0.1, high: 1, sources: ['common practice, no source'] },
        default: 1,
        because: 'No figure is published. A whole pour does not run short, and does not tell a guest’s drinks too low.',
        disagreements: [],
    },
    {
        name: 'alternative-share',
        title: 'The share of the guests a pour is for, for whom what is offered in its place is at hand as well.',
        figure: { dimension: 'share', low: 0, high: 1, sources: ['common practice, no source'] },
        default: 0.2,
        because:
            'No figure is published. Who drives or rather does not drink is not known before the evening, and need not say why.',
        disagreements: [],
    },
    {
        name: 'host-tasting',
        title: 'How much of a wine `tasted by the host` is poured for tasting.',
        figure: { dimension: 'volume', low: 10, high: 60, sources: ['common practice, no source'] },
        default: 30,
        because: 'The handbook says a small portion; about an ounce is common practice.',
        disagreements: [],
    },
    {
        name: 'host-tastes',
        title: 'Which bottles of a wine `tasted by the host` are tasted.',
        choices: [
            {
                value: 'first-bottle',
                means: 'the first, which stands for all of its case',
                sources: ['common practice, no source'],
            },
            { value: 'every-bottle', means: 'every new bottle', sources: ['table-service 4.29'] },
        ],
        default: 'first-bottle',
        because:
            'The handbook speaks of one table; where servers open many bottles at once the host tastes one, and the team the rest.',
        disagreements: [],
    },
    {
        name: 'pours-of-a-bottle',
        title: 'How the pours of a bottle are counted.',
        choices: [
            { value: 'whole', means: 'whole pours: what is left is less than one', sources: ['quantities §13'] },
            { value: 'nearest', means: 'to the nearest pour: the last one may be short', sources: ['quantities §13'] },
        ],
        default: 'whole',
        because: 'The published tables do either; the whole pour does not run short.',
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
