import { listed } from '../../../rules/wording.js';
import type { Origin } from '../../../plan/origin.js';
import type { Plan } from '../../../plan/types.js';
import type { Bottleneck, Run, RunTask } from '../../../service/run/types.js';
import { courseTitle, faces } from '../../sheets/evening.js';
import type { Drawable } from '../pictures.js';
import type { Bar, Caption, Fill, Lane, LaneGroup } from './lane.js';

/** Work of one sort that begins so soon after the last, min, is drawn as one bar. */
const JOINED = 1;
/** Bars so close together, min, share their words. */
const CLOSE = 2;

const GROUPS: Readonly<Record<string, string>> = {
    captain: 'Captain',
    server: 'Servers, by station',
    runner: 'Runners',
    'plating line': 'Kitchen lines',
    plater: 'Platers',
    sommelier: 'Sommeliers',
    busser: 'Bussers',
};

/** The word under the bar, what the person does, what is handled, and how the bar looks. */
const WORK: Readonly<
    Record<RunTask['sort'], { word: string; does: string; handled: readonly [one: string, more: string]; look: Fill }>
> = {
    call: { word: 'call', does: 'calls', handled: ['table', 'tables'], look: 'call' },
    plate: { word: 'plate', does: 'plates', handled: ['plate', 'plates'], look: 'bring' },
    carry: { word: 'carry', does: 'carries', handled: ['plate', 'plates'], look: 'bring' },
    serve: { word: 'serve', does: 'serves', handled: ['guest', 'guests'], look: 'bring' },
    pour: { word: 'pour', does: 'pours', handled: ['glass', 'glasses'], look: 'pour' },
    bread: { word: 'bread', does: 'offers bread', handled: ['guest', 'guests'], look: 'bring' },
    clear: { word: 'clear', does: 'clears', handled: ['cover', 'covers'], look: 'clear' },
    crumb: { word: 'crumb', does: 'crumbs the table', handled: ['cover', 'covers'], look: 'clear' },
    relay: { word: 'lay', does: 'lays', handled: ['piece', 'pieces'], look: 'lay' },
    coffee: { word: 'coffee', does: 'serves coffee', handled: ['guest', 'guests'], look: 'bring' },
    seat: { word: 'seat', does: 'seats', handled: ['guest', 'guests'], look: 'lay' },
    toast: { word: 'toast', does: 'announces a toast', handled: ['toast', 'toasts'], look: 'talk' },
    speech: { word: 'speech', does: 'announces a speech', handled: ['speech', 'speeches'], look: 'talk' },
};

/** Everybody of the team: captain, servers by station, runners, kitchen lines. */
export function peopleLanes(drawable: Drawable, run: Run): LaneGroup[] {
    const { plan } = drawable;
    const order = Object.keys(GROUPS);
    const roles = [...new Set(run.people.map(({ role }) => role))].toSorted(
        (a, b) => order.indexOf(a) - order.indexOf(b),
    );
    return roles.map((role) => ({
        title: GROUPS[role] ?? role,
        bottleneck: run.bottleneck?.role === role ? bottleneckInWords(run.bottleneck) : undefined,
        lanes: run.people.flatMap((person, index) =>
            person.role === role ? [personLane(drawable, run, index, originOfRole(plan, role))] : [],
        ),
    }));
}

/** What holds the evening up most, with what one more of it would save. */
export function bottleneckInWords({ role, busy, oneMore }: Bottleneck): string {
    const gain = oneMore.find((each) => each.role === role);
    const saved = [
        ...(gain && gain.shorterWait >= LEAST_GAIN ? [`the longest wait ${minutes(gain.shorterWait)} shorter`] : []),
        ...(gain && gain.sooner >= LEAST_GAIN ? [`the service over ${minutes(gain.sooner)} sooner`] : []),
    ];
    return `bottleneck: at work ${Math.round(busy * 100)} % of the service; one more would make ${
        saved.length > 0 ? listed(saved) : 'no difference'
    }`;
}

const LEAST_GAIN = 0.05;
const minutes = (value: number): string => `${value < 10 ? value.toFixed(1) : Math.round(value)} min`;

function personLane(drawable: Drawable, run: Run, person: number, origin: Origin | undefined): Lane {
    const works = joined(run.tasks.filter((task) => task.person === person));
    const tables = run.tables.filter(({ server }) => server === person).map(({ name }) => name);
    const note = tables.length > 0 ? tables.join(', ') : helps(run, works);
    return {
        name: run.people[person]!.name,
        note,
        origin,
        bars: works.map((work) => barOf(drawable, run.people[person]!.name, work)),
        captions: captionsOf(works),
    };
}

/** A second server of a table, whose station the room's list does not tell. */
function helps(run: Run, works: readonly Work[]): string | undefined {
    const served = works.filter(({ sort }) => sort === 'serve').flatMap(({ tables }) => tables);
    const isServer = works.some(({ person }) => run.people[person]!.role === 'server');
    return isServer && served.length > 0 ? [...new Set(served)].join(', ') : undefined;
}

/** Tasks of one sort for one course, one after the other at several tables. */
interface Work extends Omit<RunTask, 'table'> {
    readonly tables: readonly string[];
}

function joined(tasks: readonly RunTask[]): Work[] {
    const works: Work[] = [];
    for (const { table, ...task } of tasks) {
        const tables = table === undefined ? [] : [table];
        const place = works.findLastIndex(({ sort, course }) => sort === task.sort && course === task.course);
        const before = works[place];
        if (before && task.start - before.end <= JOINED && task.sort !== 'call') {
            works[place] = {
                ...before,
                end: Math.max(before.end, task.end),
                count: before.count + task.count,
                tables: [...new Set([...before.tables, ...tables])],
            };
        } else {
            works.push({ ...task, tables });
        }
    }
    return works;
}

function barOf({ plan }: Drawable, who: string, { sort, course, tables, start, end, count }: Work): Bar {
    const face = faces(plan);
    const { does, handled, look } = WORK[sort];
    const isOfCourse = course >= 0 && sort !== 'coffee' && sort !== 'toast' && sort !== 'speech';
    const when = start === end ? face(start) : `${face(start)}–${face(end)}`;
    const says = [
        `${when} ${who} ${does}${isOfCourse ? `: ${courseTitle(plan, course)}` : ''}`,
        ...(tables.length > 0 ? [listed(tables)] : []),
        ...(look === 'talk' ? [] : [`${count} ${handled[count === 1 ? 0 : 1]}`]),
    ].join(', ');
    return { start, end, look, says, course, origin: originOf(plan, sort, course, start) };
}

function captionsOf(works: readonly Work[]): Caption[] {
    const captions: { start: number; until: number; words: string[] }[] = [];
    for (const { sort, start, end } of works) {
        const last = captions.at(-1);
        const { word } = WORK[sort];
        if (last && start - last.until <= CLOSE) {
            last.until = Math.max(last.until, end);
            if (!last.words.includes(word)) {
                last.words.push(word);
            }
        } else {
            captions.push({ start, until: end, words: [word] });
        }
    }
    return captions.map(({ start, words }) => ({ start, words: words.join(', ') }));
}

/** The words of the plan that a task comes from; nothing for what comes of customs alone. */
function originOf({ menu, event }: Plan, sort: RunTask['sort'], course: number, start: number): Origin | undefined {
    const own = menu?.courses[course];
    switch (sort) {
        case 'seat':
            return event?.seated?.origin;
        case 'bread':
            return menu?.bread?.head;
        case 'coffee':
            return menu?.coffee?.head;
        case 'toast':
        case 'speech':
            return menu?.speeches.find((speech) => speech.sort === sort)?.origin;
        case 'pour':
            return (
                own?.pours[0]?.titleOrigin ??
                own?.dishes.flatMap(({ pours }) => pours)[0]?.titleOrigin ??
                (start < 0 ? menu?.water?.origin : undefined) ??
                menu?.water?.origin ??
                own?.head
            );
        default:
            return own?.head ?? menu?.coffee?.head;
    }
}

/** Where the plan names a role of the team; else the team, for what is derived of it. */
export function originOfRole({ team }: Plan, role: string): Origin | undefined {
    const names = [role, `${role}s`].map((name) => name.replaceAll(' ', '-'));
    return team?.roles.find(({ role: { name } }) => names.includes(name))?.origin ?? team?.origin;
}
