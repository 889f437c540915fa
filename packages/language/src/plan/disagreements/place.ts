import type { Disagreement } from './disagreement.js';

/** 13–24: glasses, napkin, bread and service plate. */
export const placeDisagreements: readonly Disagreement[] = [
    {
        number: 13,
        about: 'Where the water glass stands',
        positions: [
            { says: 'at the tip of the knife', sources: ['table-service 4.1'] },
            { says: 'above the plate, right of its centre', sources: ['table-service 4.2'] },
            { says: 'above the knives, a little to the right', sources: ['table-service 4.4'] },
            { says: 'behind the forks', sources: ['table-service 4.3'] },
        ],
        carriedBy: ['water-glass'],
    },
    {
        number: 14,
        about: 'Which glass is nearest the knife',
        positions: [
            { says: 'water', sources: ['table-service 4.1', 'table-service 4.5', 'table-service 4.6'] },
            { says: 'the wine used first', sources: ['table-service 4.8'] },
        ],
        carriedBy: ['first-glass'],
    },
    {
        number: 15,
        about: 'In what order and shape wine glasses stand',
        positions: [
            { says: 'in order of use, going right', sources: ['table-service 4.2', 'table-service 4.5'] },
            { says: 'water, white, red from the left', sources: ['table-service 4.6'] },
            { says: 'a triangle or a diamond', sources: ['table-service 4.8', 'table-service 4.11'] },
        ],
        carriedBy: ['glass-order', 'glass-shape'],
    },
    {
        number: 16,
        about: 'How many glasses stand at a cover',
        positions: [
            { says: 'three for wine at most', sources: ['table-service 4.7'] },
            { says: 'five in all at most', sources: ['table-service 4.9'] },
            { says: 'six', sources: ['table-service 4.10'] },
        ],
        carriedBy: ['most-wine-glasses', 'most-glasses'],
    },
    {
        number: 17,
        about: 'How full water is poured, and when',
        positions: [
            { says: 'three quarters', sources: ['table-service 4.16'] },
            { says: 'half, a few minutes before a formal dinner', sources: ['table-service 4.17'] },
            { says: 'to within 3/4 inch of the rim', sources: ['table-service 4.18'] },
            { says: 'not before dinner', sources: ['table-service 4.21'] },
        ],
        carriedBy: ['water-fill', 'water-poured'],
    },
    {
        number: 18,
        about: 'How full wine is poured',
        positions: [
            { says: 'two thirds at most, any wine', sources: ['table-service 4.22'] },
            { says: 'white a third', sources: ['table-service 4.23'] },
            { says: 'white a half or two thirds, red a third', sources: ['table-service 4.23', 'table-service 4.24'] },
            { says: 'red a half', sources: ['table-service 4.24'] },
            { says: 'sparkling three quarters', sources: ['table-service 4.25'] },
        ],
        carriedBy: ['wine-fill', 'sparkling-fill'],
    },
    {
        number: 19,
        about: 'Whether glasses leave with their course',
        positions: [
            { says: 'each leaves with its course', sources: ['table-service 4.31'] },
            { says: 'they stay through the dinner', sources: ['table-service 4.30'] },
        ],
        carriedBy: ['glasses-leave'],
    },
    {
        number: 20,
        about: 'Where the napkin lies',
        positions: [
            { says: 'left of the forks', sources: ['table-service 5.1'] },
            { says: 'on the plate', sources: ['table-service 5.2'] },
            { says: 'on the plate, unless a first course is waiting there', sources: ['table-service 5.3'] },
            { says: 'below the bread plate', sources: ['table-service 5.4'] },
        ],
        carriedBy: ['napkin', 'first-course'],
    },
    {
        number: 21,
        about: 'Whether bread is tucked in the napkin',
        positions: [
            { says: 'yes', sources: ['table-service 5.6'] },
            { says: 'no longer', sources: ['table-service 5.7'] },
        ],
        carriedBy: ['bread-place'],
    },
    {
        number: 22,
        about: 'Whether a formal dinner has bread plates',
        positions: [
            { says: 'no', sources: ['table-service 5.9'] },
            { says: 'yes, or often', sources: ['table-service 5.10', 'table-service 5.11'] },
        ],
        carriedBy: ['bread-plate'],
    },
    {
        number: 23,
        about: 'When bread plates leave, salt and pepper with them',
        positions: [
            { says: 'after the salad', sources: ['table-service 5.13'] },
            { says: 'before dessert', sources: ['table-service 5.14'] },
        ],
        carriedBy: ['bread-leaves', 'salt-and-pepper-leave'],
    },
    {
        number: 24,
        about: 'When the service plate leaves',
        positions: [
            { says: 'with the soup plate', sources: ['table-service 5.17'] },
            { says: 'when a hot plate takes its place', sources: ['table-service 5.16'] },
        ],
        carriedBy: ['service-plate'],
    },
];
