import type { CustomSpec } from './custom-spec.js';

/** How the room is served and cleared. Drinks come from the right in every system (table-service 6.6), so no custom says so. */
export const serviceCustoms = [
    {
        name: 'serve-from',
        title: 'From which side of the guest food is served.',
        choices: [
            { value: 'left', means: 'from the left', sources: ['table-service 6.1', 'table-service 6.4'] },
            { value: 'right', means: 'from the right', sources: ['table-service 6.3', 'table-service 6.4'] },
        ],
        default: 'left',
        because:
            'With clearing from the right it is one of the three recognised systems, and the one of the fullest manual.',
        disagreements: [25],
    },
    {
        name: 'clear-from',
        title: 'From which side of the guest plates are cleared.',
        choices: [
            { value: 'right', means: 'from the right', sources: ['table-service 6.2', 'table-service 6.4'] },
            { value: 'left', means: 'from the left', sources: ['table-service 6.4', 'table-service 6.5'] },
        ],
        default: 'right',
        because:
            'With serving from the left it is one of the three recognised systems, and the one of the fullest manual.',
        disagreements: [25],
    },
    {
        name: 'clearing',
        title: 'When a course is cleared.',
        choices: [
            { value: 'whole-table', means: 'when everyone at the table has finished', sources: ['table-service 6.13'] },
            { value: 'guest-by-guest', means: 'as each guest finishes', sources: ['table-service 6.14'] },
        ],
        default: 'whole-table',
        because: 'Two sources against one, and no slow eater is left with the only plate.',
        disagreements: [26],
    },
    {
        name: 'clear-first',
        title: 'What leaves first when a course is cleared.',
        choices: [
            { value: 'food', means: 'food, then soiled dishes, then clean ones', sources: ['table-service 6.17'] },
            { value: 'soiled', means: 'soiled dishes, then food, then clean ones', sources: ['table-service 6.18'] },
        ],
        default: 'food',
        because: 'Six sources against one.',
        disagreements: [27],
    },
    {
        name: 'crumbing',
        title: 'What the table is crumbed with.',
        choices: [
            { value: 'napkin', means: 'a folded napkin and a plate or tray', sources: ['table-service 6.21'] },
            { value: 'brush', means: 'a brush and a tray', sources: ['table-service 6.21'] },
        ],
        default: 'napkin',
        because: 'No source minds a napkin; two forbid the brush (table-service 6.22).',
        disagreements: [28],
    },
    {
        name: 'first-course',
        title: 'Whether the first course stands on the table when guests sit, where the plan does not say `preset`.',
        choices: [
            {
                value: 'served-after-seated',
                means: 'served once all are seated',
                sources: ['table-service 6.31', 'table-service 9.2'],
            },
            { value: 'waiting', means: 'waiting at each place', sources: ['table-service 6.31'] },
        ],
        default: 'served-after-seated',
        because: 'Waiting food is out of temperature control: the plan should ask for it.',
        disagreements: [20],
    },
    {
        name: 'served-first',
        title: 'Who at a table is served first; service then goes round to the right.',
        choices: [
            {
                value: 'guest-at-hosts-right',
                means: 'the guest at the host’s right',
                sources: ['table-service 8.13', 'table-service 8.18'],
            },
            {
                value: 'hostess',
                means: 'the hostess, then the guest at her right',
                sources: ['table-service 8.15', 'table-service 8.16'],
            },
            {
                value: 'guest-of-honour',
                means: 'the guest of honour, wherever seated',
                sources: ['table-service 8.14', 'table-service 8.17'],
            },
            {
                value: 'ladies',
                means: 'guests before family, ladies before gentlemen',
                sources: ['table-service 8.17'],
            },
        ],
        default: 'guest-at-hosts-right',
        because: 'Four sources; it is also the seat of honour (table-service 8.1).',
        disagreements: [34],
    },
    {
        name: 'seated-last',
        title: 'Who goes in to dinner last.',
        choices: [
            { value: 'hostess', means: 'the hostess, when all guests have gone in', sources: ['table-service 8.4'] },
            {
                value: 'any-guest',
                means: 'any of the guests: they follow host and hostess in no set order',
                sources: ['table-service 8.4'],
            },
        ],
        default: 'hostess',
        because: 'Two books against one handbook.',
        disagreements: [35],
    },
    {
        name: 'finished',
        title: 'How a guest’s knife and fork say that the guest has finished.',
        choices: [
            { value: 'parallel', means: 'side by side on the plate', sources: ['common practice, no source'] },
            { value: 'crossed', means: 'crossed on the plate', sources: ['common practice, no source'] },
        ],
        default: 'parallel',
        because: 'Common practice, no source: brief the team on what the house declares.',
        disagreements: [],
    },
    {
        name: 'back-soon',
        title: 'Where a guest who will be back leaves the napkin.',
        choices: [
            { value: 'chair', means: 'on the chair', sources: ['common practice, no source'] },
            { value: 'beside-plate', means: 'loosely beside the plate', sources: ['common practice, no source'] },
        ],
        default: 'chair',
        because:
            'Common practice, no source: a napkin by the plate then says that the guest has left the table for good.',
        disagreements: [],
    },
    {
        name: 'coffee-sign',
        title: 'How a guest says whether coffee is wanted.',
        choices: [
            { value: 'asked', means: 'each guest is asked', sources: ['common practice, no source'] },
            {
                value: 'cup-turned',
                means: 'a cup turned up says yes, one left upside down says no',
                sources: ['common practice, no source'],
            },
        ],
        default: 'asked',
        because: 'Common practice, no source: nobody has to know a sign.',
        disagreements: [],
    },
] as const satisfies readonly CustomSpec[];
