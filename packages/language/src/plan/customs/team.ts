import type { CustomSpec } from './custom-spec.js';

/** How many people a style of service needs, and how punctual it is. */
export const teamCustoms = [
    {
        name: 'service-style',
        title: 'The style of service, which sets how many guests one server looks after.',
        choices: [
            {
                value: 'plated',
                means: 'plated banquet, 32 guests a server',
                sources: ['table-service 10.1', 'quantities §6.1'],
            },
            {
                value: 'plated-with-wine',
                means: 'plated banquet with wine poured at table, 20 guests a server',
                sources: ['table-service 10.3', 'quantities §6.1'],
            },
            {
                value: 'french',
                means: 'food offered from platters at table, 16 guests a server',
                sources: ['table-service 10.3', 'quantities §6.1'],
            },
            {
                value: 'formal',
                means: 'formal dinner of many courses, 10 guests a server',
                sources: ['table-service 10.4', 'table-service 10.8', 'quantities §6.1'],
            },
            {
                value: 'private',
                means: 'dinner in a private house, 4 guests a server',
                sources: ['table-service 10.9', 'table-service 10.10'],
            },
            { value: 'buffet', means: 'seated buffet, 40 guests a server', sources: ['quantities §6.1'] },
        ],
        default: 'plated-with-wine',
        because:
            'A plan written here has courses and pours; the published ratios differ by kind of house and are no rule.',
        disagreements: [36],
    },
    {
        name: 'server-ratio',
        title: 'How many guests one server looks after.',
        figure: {
            dimension: 'count',
            per: 'server',
            low: 3,
            high: 40,
            sources: ['table-service 10.2', 'table-service 10.9'],
        },
        choices: [
            {
                value: 'by-style',
                means: 'the ratio of the `service-style`',
                sources: ['table-service 10.1', 'table-service 10.3'],
            },
        ],
        default: 'by-style',
        because: 'A ratio means little without its style; a house that knows its own writes it.',
        disagreements: [36],
    },
    {
        name: 'window',
        title: 'How early or late a course may start.',
        figure: { dimension: 'time', low: 1, high: 30, sources: ['common practice, no source'] },
        default: 5,
        because: 'No figure is published; five minutes is common practice.',
        disagreements: [],
    },
] as const satisfies readonly CustomSpec[];

/** Guests a server by style: the figures that the choices of `service-style` state, with the sources given there. */
export const guestsPerServer = {
    plated: 32,
    'plated-with-wine': 20,
    french: 16,
    formal: 10,
    private: 4,
    buffet: 40,
} as const satisfies Record<(typeof teamCustoms)[0]['choices'][number]['value'], number>;
