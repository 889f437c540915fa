import type { Event } from '../plan/types.js';
import { isDoubtful, swallows } from './doubt.js';
import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

const MENU = `
menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'event-incomplete',
    group: 'guests',
    severity: 'warning',
    since: '0.1.0',
    title: 'An event without its date, time zone, hour, guests or menu',
    why: 'Every count comes from the guests, and every time on the run sheet from the hour they sit down.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the host knows the day, the hour and the guests.',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'No hour',
                text: `event <|"Harbour lunch"|> {\n    date 2026-10-17\n    zone America/Halifax\n    guests 24\n}\n${MENU}`,
            },
            {
                title: 'No guests',
                text: `event <|"Harbour lunch"|> {\n    date 2026-10-17\n    zone America/Halifax\n    seated 12:30\n}\n${MENU}`,
            },
        ],
        right: [
            {
                text: `event "Harbour lunch" {\n    date 2026-10-17\n    zone America/Halifax\n    seated 12:30\n    guests 24\n}\n${MENU}`,
            },
        ],
    },
    check({ plan, report }) {
        const { event, menu } = plan;
        if (!event) {
            return;
        }
        const absent = isDoubtful(plan, event.origin) ? [] : CLAUSES.filter(({ of }) => of(event) === undefined);
        if (absent.length > 0) {
            report({
                at: event.titleOrigin,
                severity: absent.some(({ word }) => word === 'guests') ? 'error' : 'warning',
                message: `${quoted(event.title)} has no ${listed(
                    absent.map(({ word }) => quoted(word)),
                    'or',
                )}.`,
                hint: `Write ${absent.length === 1 ? 'it' : 'them'}, such as ${listed(absent.map(({ example }) => quoted(example)))}.`,
            });
        }
        const isElsewhere =
            plan.useProblems.length > 0 ||
            plan.readings.some(
                (reading) => reading.syntax.length > 0 || reading.misspelt.length > 0 || reading.written.some(swallows),
            );
        if (!menu && !isElsewhere) {
            report({
                at: event.titleOrigin,
                severity: 'error',
                message: `${quoted(event.title)} has no menu, neither in this file nor in those it uses.`,
                hint: 'Write `menu { … }`, or use the file it stands in: `use "menu.cover"`.',
            });
        }
    },
});

const CLAUSES: readonly { readonly word: string; readonly example: string; readonly of: (event: Event) => unknown }[] =
    [
        { word: 'date', example: 'date 2026-10-17', of: ({ date }) => date },
        { word: 'zone', example: 'zone America/Halifax', of: ({ zone }) => zone },
        { word: 'seated', example: 'seated 19:00', of: ({ seated }) => seated },
        { word: 'guests', example: 'guests 84', of: ({ guests }) => guests },
    ];
