import type { CustomSpec } from './custom-spec.js';

/** What stands at a place besides flatware and glasses, and when it leaves. */
export const placeCustoms = [
    {
        name: 'napkin',
        title: 'Where the napkin lies when guests sit.',
        choices: [
            { value: 'left', means: 'left of the forks', sources: ['table-service 5.1'] },
            {
                value: 'on-plate',
                means: 'on the plate; left of the forks where a first course is waiting',
                sources: ['table-service 5.2', 'table-service 5.3'],
            },
            { value: 'below-bread-plate', means: 'below the bread plate', sources: ['table-service 5.4'] },
        ],
        default: 'left',
        because: 'Six sources; it holds whether or not a course is waiting on the plate.',
        disagreements: [20],
    },
    {
        name: 'bread-place',
        title: 'Where the bread is when it is set.',
        choices: [
            {
                value: 'plate',
                means: 'on the bread plate, or offered',
                sources: ['table-service 5.7', 'table-service 5.8'],
            },
            { value: 'napkin', means: 'a roll tucked in the napkin', sources: ['table-service 5.6'] },
        ],
        default: 'plate',
        because: 'The books that tuck it in the napkin are the old ones; a later one says that it is no longer done.',
        disagreements: [21],
    },
    {
        name: 'bread-plate',
        title: 'Whether a bread plate is laid when bread is served.',
        choices: [
            {
                value: 'laid',
                means: 'one for each guest, upper left',
                sources: ['table-service 5.8', 'table-service 5.10', 'table-service 5.11'],
            },
            {
                value: 'none',
                means: 'none, as at the strictest formal dinners',
                sources: ['table-service 5.9', 'table-service 5.12'],
            },
        ],
        default: 'laid',
        because: 'The later sources use it often at formal dinners, and a plan that serves bread needs a place for it.',
        disagreements: [22],
    },
    {
        name: 'bread-leaves',
        title: 'When bread and its plate leave, where the plan does not say `until`.',
        choices: [
            {
                value: 'before-dessert',
                means: 'with the last course cleared before dessert, or at the end where there is no dessert',
                sources: ['table-service 5.14'],
            },
            {
                value: 'after-salad',
                means: 'with the salad; with the main course where no salad follows it',
                sources: ['table-service 5.13', 'table-service 11.1'],
            },
            { value: 'with-its-course', means: 'with the course it came in with', sources: ['table-service 11.2'] },
        ],
        default: 'before-dessert',
        because:
            'It is the same moment as `after-salad` when dessert follows the salad, and still makes sense when the salad comes first or there is none.',
        disagreements: [23],
    },
    {
        name: 'butter-spreader',
        title: 'How the butter spreader lies on the bread plate.',
        choices: [
            {
                value: 'across',
                means: 'across it, parallel to the table edge, handle to the right',
                sources: ['table-service 2.17', 'table-service 2.20', 'table-service 2.22'],
            },
            {
                value: 'diagonal',
                means: 'diagonal, sharper edge toward the table edge',
                sources: ['table-service 2.18'],
            },
            {
                value: 'edge-left',
                means: 'upright, edge to the left',
                sources: ['table-service 2.19', 'table-service 2.20'],
            },
            { value: 'edge-right', means: 'upright, edge toward the plate', sources: ['table-service 2.20'] },
            {
                value: 'upper-right',
                means: 'along the upper right of the bread plate',
                sources: ['table-service 2.20'],
            },
        ],
        default: 'across',
        because: 'Three books, and it keeps every line of the cover along or across the table.',
        disagreements: [],
    },
    {
        name: 'service-plate',
        title: 'How long the service plate stays.',
        choices: [
            {
                value: 'until-hot-plate',
                means: 'until the first hot plate after the soup takes its place',
                sources: ['table-service 5.15', 'table-service 5.16'],
            },
            {
                value: 'with-soup-plate',
                means: 'it leaves together with the soup plate',
                sources: ['table-service 5.17'],
            },
            { value: 'not-used', means: 'no service plate is laid', sources: ['common practice, no source'] },
        ],
        default: 'until-hot-plate',
        because: 'Four sources, and one plate changed for the next leaves no place bare.',
        disagreements: [24],
    },
    {
        name: 'underliner',
        title: 'Who says that a bowl, cup or coupe stands on an underliner.',
        choices: [
            {
                value: 'derived',
                means: 'it gets the underliner that suits it without being asked for',
                sources: ['table-service 7.36', 'common practice, no source'],
            },
            {
                value: 'stated',
                means: 'only the underliners written in the plan',
                sources: ['common practice, no source'],
            },
        ],
        default: 'derived',
        because: 'A hot or footed vessel without a plate under it is an oversight more often than a wish.',
        disagreements: [],
    },
    {
        name: 'place-card',
        title: 'Where the place card stands.',
        choices: [
            { value: 'above-plate', means: 'above the plate', sources: ['table-service 8.10'] },
            { value: 'on-napkin', means: 'on the napkin', sources: ['table-service 8.11'] },
            {
                value: 'in-front-of-plate',
                means: 'in front of the plate, with the menu card',
                sources: ['table-service 8.11'],
            },
            { value: 'none', means: 'no place cards', sources: ['common practice, no source'] },
        ],
        default: 'above-plate',
        because: 'It can be read by the server and stays put wherever the napkin lies.',
        disagreements: [],
    },
    {
        name: 'salt-and-pepper',
        title: 'How many sets of salt and pepper stand on the table.',
        choices: [
            { value: 'between-two', means: 'one set between two covers', sources: ['table-service 5.31'] },
            { value: 'each-cover', means: 'one set in front of each cover', sources: ['table-service 5.31'] },
        ],
        default: 'between-two',
        because: 'The sources allow both; this one asks for half the sets.',
        disagreements: [],
    },
    {
        name: 'salt-and-pepper-leave',
        title: 'When salt and pepper leave.',
        choices: [
            {
                value: 'before-dessert',
                means: 'with the last course cleared before dessert',
                sources: ['table-service 5.14', 'table-service 6.19', 'table-service 6.20'],
            },
            {
                value: 'after-salad',
                means: 'with the salad; with the main course where no salad follows it',
                sources: ['table-service 5.13'],
            },
        ],
        default: 'before-dessert',
        because: 'Most sources clear everything that the dessert does not need, salt and pepper last.',
        disagreements: [23],
    },
    {
        name: 'coffee-spoon',
        title: 'Where the coffee spoon is.',
        choices: [
            {
                value: 'saucer',
                means: 'on the saucer, brought with the cup',
                sources: ['table-service 2.26', 'table-service 7.40'],
            },
            {
                value: 'laid',
                means: 'right of the plate when guests sit',
                sources: ['table-service 7.40', 'table-service WS-4'],
            },
        ],
        default: 'saucer',
        because: 'Three books against one, and it leaves the right side free.',
        disagreements: [],
    },
    {
        name: 'cup-place',
        title: 'Where the coffee cup is set.',
        choices: [
            { value: 'right', means: 'right of the spoons', sources: ['table-service 5.26', 'table-service 5.27'] },
            { value: 'centre', means: 'in the place of the dessert plate', sources: ['table-service 5.26'] },
        ],
        default: 'right',
        because: 'It works with the dessert as well as after it.',
        disagreements: [],
    },
] as const satisfies readonly CustomSpec[];
