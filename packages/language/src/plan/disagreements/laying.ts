import type { Disagreement } from './disagreement.js';

/** 1–12 and 38–39: which pieces lie where, and how large things are. */
export const layingDisagreements: readonly Disagreement[] = [
    {
        number: 1,
        about: 'How many forks are laid at once',
        positions: [
            {
                says: 'three at most',
                sources: [
                    'table-service 1.1',
                    'table-service 1.2',
                    'table-service 1.3',
                    'table-service 1.4',
                    'table-service 1.5',
                ],
            },
            { says: 'three or four', sources: ['table-service 1.8'] },
            { says: 'four at the left, the oyster fork among them', sources: ['table-service 1.10'] },
            { says: 'five in all', sources: ['table-service 1.9'] },
            { says: 'six', sources: ['table-service 1.11'] },
            { says: 'no limit', sources: ['table-service 1.14'] },
        ],
        carriedBy: ['limit'],
    },
    {
        number: 2,
        about: 'What the limit counts',
        positions: [
            { says: 'forks on one count and knives on another', sources: ['table-service 1.4', 'table-service 1.5'] },
            { says: 'forks only', sources: ['table-service 1.1', 'table-service 1.2', 'table-service 1.3'] },
            { says: 'every piece on a side', sources: ['table-service 1.13'] },
            { says: 'all pieces of the cover together, usually six', sources: ['table-service 1.7'] },
        ],
        carriedBy: ['limit-counts', 'limit'],
    },
    {
        number: 3,
        about: 'Whether the oyster fork counts toward the limit',
        positions: [
            { says: 'it does not count', sources: ['table-service 1.4', 'table-service 1.5'] },
            { says: 'no exception is named', sources: ['table-service 1.1', 'table-service 1.2'] },
        ],
        carriedBy: ['oyster-fork-counts'],
    },
    {
        number: 4,
        about: 'Where the oyster fork lies',
        positions: [
            { says: 'right, outermost', sources: ['table-service 2.5'] },
            { says: 'left, outermost', sources: ['table-service 1.10'] },
            { says: 'across the soup spoon', sources: ['table-service 2.6'] },
        ],
        carriedBy: ['oyster-fork'],
    },
    {
        number: 5,
        about: 'Where a fork lies that has no knife beside it',
        positions: [
            { says: 'right, whenever no knife is laid', sources: ['table-service 2.9'] },
            { says: 'right for oysters, fish and salad, though many prefer the left', sources: ['table-service 2.10'] },
            { says: 'left', sources: ['table-service 2.8'] },
        ],
        carriedBy: ['fork-without-knife'],
    },
    {
        number: 6,
        about: 'How wide a cover is',
        positions: [
            { says: '20 inch', sources: ['table-service 3.5'] },
            { says: '20 to 24 inch', sources: ['table-service 3.6'] },
            { says: '20 to 30 inch', sources: ['table-service 3.7'] },
            { says: '580 mm at least', sources: ['table-service 3.9'] },
            { says: '24 inch', sources: ['table-service 3.1', 'table-service 3.3'] },
            { says: '24 to 30 inch', sources: ['table-service 3.4'] },
        ],
        carriedBy: ['cover-width', 'least-cover-width'],
    },
    {
        number: 7,
        about: 'How far pieces and plate stand from the table edge',
        positions: [
            { says: '1/2 inch for silver', sources: ['table-service 3.11'] },
            { says: '1/2 to 1 inch', sources: ['table-service 3.13'] },
            { says: '1 inch', sources: ['table-service 3.12', 'table-service 3.14'] },
            { says: '1 1/2 inch for the plate', sources: ['table-service 3.15'] },
            { says: 'about 2 inch', sources: ['table-service 3.16'] },
            { says: 'at least 2 inch', sources: ['table-service 3.17'] },
        ],
        carriedBy: ['edge', 'plate-edge'],
    },
    {
        number: 8,
        about: 'How far the cloth hangs down',
        positions: [
            { says: 'at least 8 inch', sources: ['table-service 3.28'] },
            { says: 'at least 9 inch', sources: ['table-service 3.27'] },
            { says: 'at least 12 inch', sources: ['table-service 3.29'] },
            { says: '12 to 15 inch', sources: ['table-service 3.26'] },
            { says: 'half-way to the floor', sources: ['table-service 3.30'] },
            { says: 'its corners almost on the floor', sources: ['table-service 3.31'] },
            { says: 'to the floor at a top table', sources: ['table-service 3.32'] },
        ],
        carriedBy: ['cloth-drop'],
    },
    {
        number: 9,
        about: 'How many guests sit at a 60 inch round table',
        positions: [
            { says: '8', sources: ['table-service 3.43', 'table-service 3.45'] },
            { says: '8 to 10', sources: ['table-service 3.46'] },
        ],
        carriedBy: ['cover-width', 'least-cover-width'],
    },
    {
        number: 10,
        about: 'How large a service plate is',
        positions: [
            { says: '10 to 11 inch', sources: ['table-service 3.50'] },
            { says: '10 inch or more', sources: ['table-service 3.51'] },
            { says: '11 to 14 inch', sources: ['table-service 3.52'] },
        ],
        noCheck: 'A house has the plates it has: the cupboard states their size, and checks measure what it states.',
    },
    {
        number: 11,
        about: 'How large soup, bread and dessert plates are',
        positions: [
            {
                says: 'American sizes in inches',
                sources: ['table-service 3.55', 'table-service 3.56', 'table-service 3.57'],
            },
            { says: 'hotel sizes in centimetres, under half an inch away', sources: ['table-service 3.58'] },
        ],
        noCheck: 'Sizes come from the cupboard, as for the service plate.',
    },
    {
        number: 12,
        about: 'How long a dinner fork is',
        positions: [
            { says: '7 1/2 to 8 inch', sources: ['table-service 3.62'] },
            { says: '7 1/2 inch in one pattern', sources: ['table-service 3.64'] },
            { says: 'about 7 inch', sources: ['table-service 3.65'] },
        ],
        noCheck: 'Lengths come from the cupboard, as for plates.',
    },
    {
        number: 38,
        about: 'Which pieces a dessert gets',
        positions: [
            { says: 'fork and spoon', sources: ['table-service 7.38'] },
            { says: 'fork only', sources: ['table-service WS-4'] },
            { says: 'knife, fork and spoon', sources: ['table-service 5.25'] },
        ],
        carriedBy: ['dessert-pieces'],
    },
    {
        number: 39,
        about: 'Whether spoons lie outside the knives or in order of use with them',
        positions: [
            { says: 'right of the knives', sources: ['table-service 2.2', 'table-service 2.11'] },
            { says: 'strict order of use', sources: ['table-service 2.12'] },
        ],
        carriedBy: ['spoons'],
    },
];
