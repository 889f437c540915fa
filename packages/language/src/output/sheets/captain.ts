import { counted, listed } from '../../rules/wording.js';
import type { CourseRun } from '../../service/run/types.js';
import { allergenPlates, capital, courseTitle, degrees, faces, FIGURES_ADVISE, type SheetSource } from './evening.js';
import type { Block, Cell, Sheet } from './sheet.js';

/** More would not fit on the page that the captain carries; `check` tells all of it. */
const MOST_RISKS = 6;
/** Beyond so many stations they are told two to a line. */
const MOST_STATIONS = 8;

/** The evening on one page: clock, calls, stations, risks with their figures, waivers, rates nobody stated. */
export function captainSheet(source: SheetSource): Sheet {
    const { plan, service } = source;
    const { event, room, house } = plan;
    const where = [room?.title, house.origin && house.title].filter((name) => name !== undefined);
    return {
        name: 'captain',
        title: 'Captain',
        subtitle: [
            `${counted(service.guestCount, 'guest')}, covers for ${service.setFor}`,
            ...(event?.ends?.minutes === undefined ? [] : [`ends ${event.ends.written}`]),
            ...where,
        ].join(' · '),
        onePage: true,
        blocks: [
            ...clock(source),
            ...calls(source),
            ...stations(source),
            { sort: 'heading', text: 'Watch' },
            { sort: 'list', items: risks(source) },
            { sort: 'text', text: waivers(source) },
            ...assumed(source),
        ],
    };
}

/** What comes before the first course and after the last, in one line. */
function clock({ plan, service }: SheetSource): Block[] {
    const face = faces(plan);
    const { preparations, run } = service;
    const before = preparations?.setUp;
    const after = preparations?.strike;
    const moments: [minutes: number | undefined, what: string][] = [
        ...(before?.calls ?? []).map((call): [number, string] => [
            call.at,
            call.count > 1 ? `${call.count} ${call.role}s in` : `${call.role} in`,
        ]),
        [before?.staffMeal?.start, 'crew eats'],
        [before?.briefing?.start, 'briefing'],
        [before?.lineUp?.start, 'line-up'],
        [preparations?.doors, 'doors'],
        [0, 'guests sit'],
        [run?.over, 'service over'],
        [after?.guestsGone, 'guests gone'],
        [after?.over, 'room clear'],
    ];
    const known = moments
        .filter((moment): moment is [number, string] => moment[0] !== undefined)
        .toSorted((a, b) => a[0] - b[0]);
    return known.length > 1
        ? [{ sort: 'text', text: known.map(([at, what]) => `${face(at)} ${what}`).join(' · ') }]
        : [];
}

function calls(source: SheetSource): Block[] {
    const { plan, service } = source;
    const face = faces(plan);
    const { run } = service;
    if (!run) {
        return [
            {
                sort: 'text',
                text: `No times: the plan does not state ${plan.room ? 'a team' : 'a room and a team'}. Courses: ${listed(
                    plan.menu?.courses.map(({ title }) => title) ?? [],
                )}.`,
            },
        ];
    }
    const courses = run.courses.map((course): [at: number, row: Cell[]] => [
        course.fired,
        [
            courseTitle(plan, course.course),
            { text: face(course.fired), strong: true },
            face(course.served.first),
            face(course.served.last),
            face(course.cleared.last),
        ],
    ]);
    const speeches = run.speeches.map((speech): [at: number, row: Cell[]] => {
        const { sort, title } = plan.menu!.speeches[speech.speech]!;
        return [
            speech.start,
            [
                `${capital(sort)}${title ? `: ${title}` : ''}`,
                { text: face(speech.start), strong: true },
                '',
                '',
                face(speech.end),
            ],
        ];
    });
    return [
        {
            sort: 'table',
            columns: [
                { head: 'Course' },
                { head: 'Call*', figures: true, share: 0.12 },
                { head: 'First set', figures: true, share: 0.15 },
                { head: 'Last set', figures: true, share: 0.15 },
                { head: 'Cleared', figures: true, share: 0.15 },
            ],
            rows: [...courses, ...speeches].toSorted((a, b) => a[0] - b[0]).map(([, row]) => row),
        },
    ];
}

function stations(source: SheetSource): Block[] {
    const { plan, service } = source;
    const { run } = service;
    const others = (plan.team?.roles ?? [])
        .filter(({ role }) => !['servers', 'captain'].includes(role.name))
        .map(({ role, count }) => `${count.count} ${role.name.replaceAll('-', ' ')}`);
    const head: Block = {
        sort: 'heading',
        text: others.length > 0 ? `Stations, with ${listed(others)}` : 'Stations',
    };
    if (!run) {
        return others.length > 0 ? [head] : [];
    }
    const servers = [...new Set(run.tables.map(({ server }) => server))].toSorted((a, b) => a - b);
    const plates = allergenPlates(source);
    const cells = servers.map((server) => {
        const tables = run.tables.filter((table) => table.server === server);
        const marked = new Map(
            plates
                .filter(({ guest }) => tables.some(({ name }) => name === guest.table))
                .map(({ guest, marker }) => [`${guest.table} seat ${guest.seat}`, marker.replace(/ \d+$/, '')]),
        );
        return {
            who: run.people[server]?.name ?? '',
            tables: tables.map(({ name, guests }) => `${name} (${guests})`).join(', '),
            marked: [...marked].map(([seat, marker]) => `${marker}: ${seat}`).join(', '),
        };
    });
    if (cells.length > MOST_STATIONS) {
        const short = cells.map(({ who, tables }) => `${who.replace(/^server /, '')}: ${tables}`);
        const seats = cells.filter(({ marked }) => marked !== '').map(({ marked }) => marked);
        return [
            { sort: 'heading', text: others.length > 0 ? `Servers, with ${listed(others)}` : 'Servers' },
            { sort: 'text', text: short.join(' · ') },
            ...(seats.length > 0 ? [{ sort: 'text' as const, text: `Allergens kept off: ${seats.join(', ')}.` }] : []),
        ];
    }
    return [
        head,
        {
            sort: 'table',
            columns: [
                { head: 'Who', share: 0.16 },
                { head: 'Tables (guests)', share: 0.3 },
                { head: 'An allergen is kept off' },
            ],
            rows: cells.map(({ who, tables, marked }) => [who, tables, marked]),
        },
    ];
}

/** What may go wrong, with the figures that say how near it is. */
function risks(source: SheetSource): string[] {
    const { plan, service, findings } = source;
    const found = findings
        .filter(({ severity }) => severity === 'error' || severity === 'warning')
        .map(({ message }) => message.replaceAll('`', ''));
    const all = [...found, ...warmth(source), ...pace(source), ...alcohol(source)];
    const shown = all.slice(0, all.length > MOST_RISKS ? MOST_RISKS - 1 : MOST_RISKS);
    const left = all.length - shown.length;
    return [
        ...shown,
        ...(left > 0 ? [`And ${left} more, in underliner check.`] : []),
        ...(all.length === 0 ? [`Nothing was found in the plan for ${counted(service.guestCount, 'guest')}.`] : []),
        ...(plan.event?.notice ? [plan.event.notice.text] : []),
        FIGURES_ADVISE,
    ];
}

/** Dishes that may reach a guest other than they are wanted. */
function warmth({ plan, service }: SheetSource): string[] {
    return service.heat.dishes.flatMap((heat) => {
        const { wanted, last, first, published } = heat;
        const title = plan.menu?.courses[heat.course]?.dishes.find(({ index }) => index === heat.dish)?.title;
        if (wanted === undefined || heat.side !== 'hot' || !title) {
            return [];
        }
        if (published) {
            return published.low < wanted
                ? [
                      `${title}: wanted at ${degrees(wanted)}; plates arrive at ${Math.round(published.low)} to ${degrees(published.high)}.`,
                  ]
                : [];
        }
        const temperature = last?.temperature;
        return temperature?.celsius === undefined || temperature.low >= wanted
            ? []
            : [
                  `${title}: wanted at ${degrees(wanted)}; last guest (${last!.journey.table}) about ${degrees(temperature.celsius)}, ` +
                      `${Math.round(temperature.low)} to ${Math.round(temperature.high)}` +
                      (first?.temperature?.celsius === undefined
                          ? '.'
                          : `; first guest ${degrees(first.temperature.celsius)}, hot.`),
              ];
    });
}

function pace({ plan, service }: SheetSource): string[] {
    const { run, preparations } = service;
    const face = faces(plan);
    const slowest = slowestTable(run?.courses ?? []);
    const chance = preparations?.setUp.chance.inTime;
    const most = run?.bottleneck?.oneMore.toSorted((a, b) => b.sooner - a.sooner)[0];
    return [
        ...(slowest
            ? [
                  `Longest wait: ${slowest.table} gets ${courseTitle(plan, slowest.course)} ${Math.round(slowest.minutes)} min after the first table, at ${face(slowest.at)}.`,
              ]
            : []),
        ...(run?.bottleneck
            ? [
                  `${capital(run.bottleneck.role)}s hold the evening up most` +
                      (most && most.sooner >= 1
                          ? `; one more ${most.role} ends it ${Math.round(most.sooner)} min sooner.`
                          : '.'),
              ]
            : []),
        ...(chance !== undefined && chance < 0.95
            ? [`Set-up is done in time in ${Math.round(chance * 100)} of 100 such days.`]
            : []),
    ];
}

function slowestTable(
    courses: readonly CourseRun[],
): { course: number; table: string; minutes: number; at: number } | undefined {
    return courses
        .filter(({ tables }) => tables.length > 1)
        .map((course) => {
            const last = course.tables.reduce((a, b) => (b.served.last > a.served.last ? b : a));
            return {
                course: course.course,
                table: last.table,
                minutes: last.served.last - course.served.first,
                at: last.served.last,
            };
        })
        .toSorted((a, b) => b.minutes - a.minutes)[0];
}

function alcohol({ plan, service }: SheetSource): string[] {
    const most = Math.max(0, ...service.alcohol.map(({ drinks }) => drinks ?? 0));
    return most > 0
        ? [
              `A guest who takes every pour has ${most.toFixed(1)} standard drinks (${plan.code.called ?? plan.code.name}). Licensed staff decide who is served.`,
          ]
        : [];
}

function waivers({ plan }: SheetSource): string {
    return plan.waivers.length === 0
        ? 'Waivers: none.'
        : `Waived: ${plan.waivers
              .map(({ rule, reason }) => `${rule.name}${reason ? ` (${reason.text})` : ''}`)
              .join('; ')}.`;
}

function assumed({ service }: SheetSource): Block[] {
    const names = [...new Set<string>([...(service.run?.assumed ?? []), ...(service.preparations?.assumed ?? [])])];
    return names.length === 0
        ? []
        : [
              {
                  sort: 'text',
                  text: `* Times rest on rates that are assumed, not measured here: ${names.map((name) => name.replaceAll('-', ' ')).join(', ')}.`,
              },
          ];
}
