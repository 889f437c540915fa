import type { Disagreement } from './disagreement.js';

/** 25–37: serving and clearing, the order of courses, people and wine. */
export const serviceDisagreements: readonly Disagreement[] = [
    {
        number: 25,
        about: 'From which side to serve and to clear',
        positions: [
            { says: 'serve left, clear right', sources: ['table-service 6.1', 'table-service 6.2'] },
            { says: 'serve left, clear left', sources: ['table-service 6.1', 'table-service 6.5'] },
            { says: 'serve right, clear right', sources: ['table-service 6.2', 'table-service 6.3'] },
            { says: 'serve right, clear left', sources: ['table-service 6.3', 'table-service 6.5'] },
            { says: 'three systems are in use', sources: ['table-service 6.4'] },
        ],
        carriedBy: ['serve-from', 'clear-from'],
    },
    {
        number: 26,
        about: 'When to clear',
        positions: [
            { says: 'when the whole table has finished', sources: ['table-service 6.13'] },
            { says: 'guest by guest', sources: ['table-service 6.14'] },
        ],
        carriedBy: ['clearing'],
    },
    {
        number: 27,
        about: 'What to clear first',
        positions: [
            { says: 'food', sources: ['table-service 6.17'] },
            { says: 'soiled dishes', sources: ['table-service 6.18'] },
        ],
        carriedBy: ['clear-first'],
    },
    {
        number: 28,
        about: 'Whether to crumb with a brush',
        positions: [
            { says: 'allowed beside the napkin', sources: ['table-service 6.21'] },
            { says: 'never', sources: ['table-service 6.22'] },
        ],
        carriedBy: ['crumbing'],
    },
    {
        number: 29,
        about: 'How many courses a formal dinner has',
        positions: [
            { says: 'ten, or eight, or twelve', sources: ['table-service 7.1', 'table-service 7.3'] },
            { says: 'four or five, from three to seven', sources: ['table-service 7.2'] },
            {
                says: 'eleven, thirteen or seventeen',
                sources: ['table-service 7.6', 'table-service 7.7', 'table-service 7.8'],
            },
        ],
        noCheck: 'The menu says how long it is; no check counts courses.',
    },
    {
        number: 30,
        about: 'Where the salad stands',
        positions: [
            { says: 'after the main course', sources: ['table-service 7.10'] },
            { says: 'before it', sources: ['table-service 7.11'] },
            { says: 'with the game', sources: ['table-service 7.12'] },
        ],
        carriedBy: ['salad'],
    },
    {
        number: 31,
        about: 'Whether entrée or roast comes first',
        positions: [
            { says: 'the entrée', sources: ['table-service 7.6', 'table-service 7.14'] },
            { says: 'the roast', sources: ['table-service 7.3', 'table-service 7.4'] },
        ],
        carriedBy: ['entree'],
    },
    {
        number: 32,
        about: 'Where the sorbet stands',
        positions: [
            { says: 'between roast and game', sources: ['table-service 7.13'] },
            { says: 'between relevé and roast', sources: ['table-service 7.6'] },
            { says: 'before the relevé', sources: ['table-service 7.8'] },
        ],
        carriedBy: ['intermezzo'],
    },
    {
        number: 33,
        about: 'Where the cheese stands',
        positions: [
            { says: 'last, with the coffee', sources: ['table-service 7.3', 'table-service 7.15'] },
            { says: 'with the salad or after it', sources: ['table-service 7.4', 'table-service 7.15'] },
            { says: 'after the savoury, before the fruit', sources: ['table-service 7.6', 'table-service 7.15'] },
            { says: 'before the sweet', sources: ['table-service 7.8', 'table-service 7.15'] },
        ],
        carriedBy: ['cheese'],
    },
    {
        number: 34,
        about: 'Who is served first',
        positions: [
            { says: 'the guest at the host’s right', sources: ['table-service 8.13', 'table-service 8.18'] },
            { says: 'the hostess', sources: ['table-service 8.15', 'table-service 8.16'] },
            { says: 'the guest of honour or the hostess', sources: ['table-service 8.14'] },
            { says: 'the chief guest, ladies before gentlemen', sources: ['table-service 8.17'] },
        ],
        carriedBy: ['served-first'],
    },
    {
        number: 35,
        about: 'Who goes in to dinner last',
        positions: [
            { says: 'the hostess', sources: ['table-service 8.4'] },
            { says: 'the guests, for the hostess goes in second', sources: ['table-service 8.4'] },
        ],
        carriedBy: ['seated-last'],
    },
    {
        number: 36,
        about: 'How many guests one server looks after',
        positions: [
            { says: '3 in a private house', sources: ['table-service 10.9'] },
            { says: '4 to 6 in a private house', sources: ['table-service 10.10'] },
            { says: '8 to 10 at a formal banquet', sources: ['table-service 10.4'] },
            { says: '10 to 12, or fewer, at a formal meal of many courses', sources: ['table-service 10.8'] },
            { says: '16 to 20 with wine or French service', sources: ['table-service 10.3'] },
            { says: '32 on average', sources: ['table-service 10.1'] },
        ],
        carriedBy: ['service-style', 'server-ratio'],
    },
    {
        number: 37,
        about: 'Which wine goes with roast and with game',
        positions: [
            { says: 'roast: champagne, or red burgundy, claret or port', sources: ['table-service 11.6'] },
            { says: 'game: claret, or champagne, or either of two reds', sources: ['table-service 11.7'] },
        ],
        noCheck: 'No check matches wine to a dish: glass and temperature are checked for whatever is poured.',
    },
];
