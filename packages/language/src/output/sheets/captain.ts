import { counted, listed } from '../../rules/wording.js';
import {
    allergenPlates,
    capital,
    courseTitle,
    faces,
    FIGURES_ADVISE,
    overCalled,
    type SheetSource,
} from './evening.js';
import { pouredAndPassed } from './at-the-table.js';
import { risksOf } from './risks.js';
import type { Block, Cell, Sheet } from './sheet.js';

/** What one page of Letter holds of 12 pt beside title and headings: lines of text, of so many letters each. */
const PAGE = { lines: 44, letters: 84 };
/** A row of a table is higher than a line of text. */
const ROW = 1.2;
/** At least so many are told, whatever else stands there. */
const LEAST_RISKS = 2;
/** Beyond so many stations they are told two to a line. */
const MOST_STATIONS = 8;

/** The evening on one page: clock, calls, stations, risks with their figures, waivers, rates nobody stated. */
export function captainSheet(source: SheetSource): Sheet {
    const { plan, service } = source;
    const { event, room, house } = plan;
    const before = [...clock(source), ...calls(source), ...tableService(source), ...stations(source)];
    const after: Block[] = [{ sort: 'text', text: waivers(source) }, ...assumed(source)];
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
            ...before,
            { sort: 'heading', text: 'Watch' },
            { sort: 'list', items: risks(source, PAGE.lines - linesOf([...before, ...after])) },
            ...after,
        ],
    };
}

/** How many lines of a page it takes, headings left out. */
function linesOf(blocks: readonly Block[]): number {
    return blocks.reduce((sum, block) => {
        switch (block.sort) {
            case 'text':
                return sum + linesOfText(block.text);
            case 'table':
                return sum + ROW * (block.rows.length + 1);
            default:
                return sum;
        }
    }, 0);
}

const linesOfText = (text: string): number => Math.ceil(text.length / PAGE.letters);

/** What comes before the first course and after the last, in one line. */
function clock(source: SheetSource): Block[] {
    const { plan, service } = source;
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
        [run?.over, overCalled(source)],
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

/** What servers do at the table beside setting plates down. */
function tableService(source: SheetSource): Block[] {
    const all = pouredAndPassed(source);
    return all.length === 0 ? [] : [{ sort: 'text', text: `At the table: ${all.join('; ')}.` }];
}

function stations(source: SheetSource): Block[] {
    const { plan, service } = source;
    const { run } = service;
    const others = (plan.team?.roles ?? [])
        .filter(({ role }) => !['servers', 'captain'].includes(role.name))
        .map(({ role, count }) => {
            const people = role.name.replaceAll('-', ' ');
            return counted(count.count, people.replace(/s$/, ''), people);
        });
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

/** What may go wrong, gravest first, with the figures that say how near it is; `check` tells what there is no room for. */
function risks(source: SheetSource, room: number): string[] {
    const { plan, service } = source;
    const all = risksOf(source);
    const always = [...(plan.event?.notice ? [plan.event.notice.text] : []), FIGURES_ADVISE];
    let left = room - always.reduce((sum, line) => sum + linesOfText(line), 0) - 1;
    const shown = all.filter((line, index) => {
        left -= linesOfText(line);
        return index < LEAST_RISKS || left >= 0;
    });
    const unsaid = all.length - shown.length;
    return [
        ...shown,
        ...(unsaid > 0 ? [`And ${unsaid} more, told by underliner check and compile.`] : []),
        ...(all.length === 0 ? [`Nothing was found in the plan for ${counted(service.guestCount, 'guest')}.`] : []),
        ...always,
    ];
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
