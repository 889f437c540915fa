import type { LocalCode } from '../plan/cupboard.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { isZone } from './time-zones.js';
import { asName, listed, quoted } from './wording.js';

const plan = (code: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
    local code ${code}
}

menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'code-and-zone',
    group: 'trade',
    since: '0.1.0',
    title: 'A local food code that is not the code of the place',
    why: 'Holding limits and the allergens that must be named differ from place to place. The code where the food is served decides.',
    source: ['temperature 2.3', 'temperature 3.1'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('<|us-model|>') }],
        right: [{ text: plan('canada') }],
    },
    check({ plan, report }) {
        const { event, house, code, cupboard } = plan;
        const declared = event?.code ?? house.code;
        const zone = event?.zone?.text;
        // A code that nobody declares is the default, and no claim about the place.
        if (
            !event ||
            !declared ||
            !cupboard.codes.has(declared.name) ||
            zone === undefined ||
            !isZone(zone) ||
            fits(code, zone)
        ) {
            return;
        }
        const fitting = [...cupboard.codes.values()].filter((each) => fits(each, zone)).map((each) => each.name);
        // No code lists every zone of its country: where none claims this one, only another part of the world is another code's.
        if (
            code.zones.length === 0 ||
            (fitting.length === 0 && code.zones.some((each) => regionOf(each) === regionOf(zone)))
        ) {
            return;
        }
        report({
            at: declared.origin,
            message: `${quoted(declared.name)} is not the code of ${quoted(zone)}.`,
            hint:
                fitting.length > 0
                    ? `There ${listed(fitting.map(quoted), 'or')} holds; ask the local authority.`
                    : 'Ask the local authority which limits hold, and declare them: `code … { hot-holding 63 °C }`.',
            related: [{ at: event.zone!.origin, message: 'The event is here.' }],
            fixes: fitting.map((name): Fix => ({
                title: `Go by ${quoted(name)}`,
                safety: 'unsafe',
                preferred: fitting.length === 1,
                changes: event.code
                    ? [{ do: 'replace', at: event.code.origin, words: asName(name) }]
                    : [{ do: 'add-clause', to: event.origin, clause: `local code ${asName(name)}` }],
            })),
        });
    },
});

/** A region such as `Europe` takes in all its zones. */
function fits({ zones }: LocalCode, zone: string): boolean {
    return zones.some((each) => zone === each || zone.startsWith(`${each}/`));
}

function regionOf(zone: string): string {
    return zone.slice(0, zone.indexOf('/'));
}
