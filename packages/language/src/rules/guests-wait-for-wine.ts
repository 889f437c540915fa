import type { Plan } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import { freeTimeFor } from '../service/run/speech-times.js';
import type { Miss } from '../service/run/targets.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report, type RuleInput } from './rule.js';
import { sayTeam, sayWait, serviceMisses, teamFix, teamWanted, type ServiceMisses } from './service-misses.js';
import { quoted } from './wording.js';

const plan = (servers: number, house = ''): string => `${house}event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

room "Boathouse" 14 m by 10 m {
    table A to E: round 60 inch, 8 seats
}

team { captain 1   servers ${servers}   runners 3   plating-lines 1 at 12 plates per min }

menu {
    course main "Saddle of lamb" is roast-meat {
        served on dinner-plate warmed to 62 °C at 58 °C
        cook to 63 °C
        lasts 30 min
        contains lamb
        pour "Cellar red" 5 fl oz into red-wine-glass at 17 °C, is full-red-wine {
            contains sulphites
            instead "Blackcurrant cordial" 5 fl oz, is cordial { contains nothing }
        }
    }
}
`;

const after = (figures: string): string => `house "Saltmarsh Hall" {
    laying { wine-poured: after-the-plate   server-ratio: 40 per server${figures} }
}

`;

export default defineRule({
    id: 'guests-wait-for-wine',
    group: 'drinks',
    since: '0.2.0',
    title: 'Guests have their plates, or a toast its hour, and no wine',
    why: 'A guest who waits for the glass lets the plate go cold, and a toast is not drunk from empty glasses.',
    source: ['table-service 11.11', 'common practice, no source'],
    fix: 'sometimes',
    customs: ['wine-poured', 'longest-wine-wait', 'pouring-glass', 'tasting'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'One server pours for five tables after serving them',
                text: plan(1, after('   longest-table-wait: 30 min'))
                    .replace('course main', '<|course main')
                    .replace('roast-meat {', 'roast-meat|> {'),
            },
            {
                title: 'A toast before its wine has been poured',
                text: plan(
                    1,
                    'house "Saltmarsh Hall" {\n    laying { server-ratio: 40 per server   longest-table-wait: 30 min }\n}\n\n',
                ).replace(/}\n$/, '    toast "To the keepers" at <|19:00|>, lasts 2 min, with "Cellar red"\n}\n'),
            },
        ],
        right: [{ text: plan(5, after('')) }, { title: 'Poured before the plates come', text: plan(3) }],
    },
    check(input) {
        const { plan, service, report } = input;
        const found = serviceMisses(plan, service);
        for (const miss of found?.misses ?? []) {
            const finding =
                miss.sort === 'wine-wait'
                    ? atTable(input, found!, miss)
                    : miss.sort === 'toast-wait'
                      ? atToast(plan, found!, miss)
                      : undefined;
            if (finding) {
                report(finding);
            }
        }
    },
});

function atTable(
    input: RuleInput,
    found: ServiceMisses,
    { course: index, table, minutes, limit }: Miss,
): Report | undefined {
    const { plan } = input;
    const course = plan.menu?.courses[index];
    const wanted = teamWanted(found);
    const people = wanted && teamFix(plan, wanted);
    const first = pourFirst(input);
    return (
        course && {
            at: course.head,
            message: `${quoted(table!)} has its plates of ${quoted(course.title)} for ${sayWait(minutes)} before its last glass is poured; the house allows ${sayWait(limit)}.`,
            hint:
                wanted && people
                    ? `${wanted.isSmallest ? 'The smallest team that keeps to it has' : 'It would do with'} ${sayTeam(wanted)}.`
                    : 'Pour before the plates come, or have a sommelier.',
            fixes: [...(people ? [people] : []), ...(first ? [first] : [])],
        }
    );
}

function atToast(plan: Plan, { run }: ServiceMisses, { course: index, minutes, limit }: Miss): Report | undefined {
    const toast = plan.menu?.speeches[index];
    const held = run.speeches.find((each) => each.speech === index);
    const clock = eveningClock(plan);
    if (!toast?.at || !clock || held?.poured === undefined) {
        return undefined;
    }
    const to = clock.face(freeTimeFor(run, held.poured, held.end - held.start, held.poured));
    return {
        at: toast.at.origin,
        message: `The last glass of ${quoted(toast.pour?.text ?? 'wine')} is poured at ${clock.face(Math.ceil(held.poured))}, ${sayWait(minutes)} after the toast at ${quoted(toast.at.written)}; the house allows ${sayWait(limit)}.`,
        hint: `Let it begin at ${to}, or pour sooner.`,
        fixes: [
            {
                title: `Let it begin at ${to}`,
                safety: 'unsafe',
                preferred: true,
                changes: [{ do: 'replace', at: toast.at.origin, words: to }],
            },
        ],
    };
}

/** The house pours before the plates instead. */
function pourFirst({ plan }: RuleInput): Fix | undefined {
    const { origin } = plan.customs['wine-poured'];
    const { house } = plan;
    const custom = house.customs.findLast((each) => each.name.name === 'wine-poured');
    return origin && house.origin && custom
        ? {
              title: 'Pour before the plates come',
              safety: 'show',
              changes: [
                  {
                      do: 'set-custom',
                      house: house.origin,
                      laying: house.layingOrigin,
                      custom: custom.origin,
                      name: 'wine-poured',
                      value: 'before-the-plate',
                  },
              ],
          }
        : undefined;
}
