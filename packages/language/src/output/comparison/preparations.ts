import type { Task } from '../../plan/types.js';
import type { WarmingLoad } from '../../service/preparations/types.js';
import { quoted, several } from '../../rules/wording.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { paired, type Change, type Compared } from './change.js';
import { said, saidList } from './said.js';
import { changedMoments, momentsIn, type Moment } from './times.js';

/** Tasks of the setup and the strike, when people are called in and free to go, and when plates are warmed and drinks chilled. */
export function changedPreparations(before: Compared, after: Compared): Change[] {
    return [
        ...changedThings('tasks', TASK, tasksOf(before), tasksOf(after)),
        ...changedMoments('tasks', momentsOf(before), stillToCome(after)),
        ...(after.plan.underway ? [] : changedGear(before, after)),
    ];
}

const tasksOf = ({ plan }: Compared): Thing<Task>[] =>
    plan.tasks.map((task) => ({
        key: `${task.when}: ${task.title.text}`,
        called: `${task.when} task ${quoted(task.title.text)}`,
        of: task,
    }));

const TASK: Facts<Task> = {
    takes: ({ takes }) => said(takes),
    'takes between': ({ between }) => said(between?.least, ['and', between?.most]),
    after: ({ after }) =>
        saidList(
            after.map(({ text }) => quoted(text)),
            ' and ',
        ),
    'done by': ({ by }) => said(by?.count.count, by?.role.name),
};

function momentsOf({ plan, service }: Compared): Moment[] {
    const moment = momentsIn(plan);
    const { preparations } = service;
    if (!moment || !preparations) {
        return [];
    }
    const { setUp, strike, warming, chilling } = preparations;
    const isNews = true;
    const stated = (minutes: number | undefined, key: string, what: string): Moment[] =>
        minutes === undefined ? [] : [moment(minutes, { key, said: what })];
    return [
        ...stated(setUp.begins, 'begins', 'the setup begins'),
        ...setUp.calls.map(({ role, count, at }) =>
            moment(at, {
                key: `${role} in`,
                said: `the ${count > 1 ? 'first ' : ''}${plain(role)} is called in`,
                isNews,
            }),
        ),
        ...stated(setUp.staffMeal?.start, 'meal', 'the crew’s meal begins'),
        ...stated(setUp.briefing?.start, 'briefing', 'the briefing begins'),
        ...stated(setUp.lineUp?.start, 'line-up', 'the line-up begins'),
        ...stated(preparations.doors, 'ready', 'the room has to be ready'),
        ...chilling.map(({ title, at, way }) =>
            moment(at, { key: `chill ${title}`, said: `${quoted(title)} goes into the ${plain(way)}`, isNews }),
        ),
        ...warmedBy(plan.menu?.courses.map(({ title }) => title) ?? [], warming).flatMap(
            ({ called, key, start, end }) => [
                moment(start, { key: `${key} in`, said: `${called} go in to be warmed`, isNews }),
                moment(end, { key: `${key} out`, said: `${called} come out warm` }),
            ],
        ),
        ...stated(strike.guestsGone, 'gone', 'the last guest is gone'),
        ...strike.leaves.map(({ role, count, at }) =>
            moment(at, { key: `${role} out`, said: `the ${count > 1 ? 'last ' : ''}${plain(role)} leaves`, isNews }),
        ),
        ...stated(strike.over, 'strike over', 'the strike is over'),
    ];
}

/** Of an evening that runs, nothing that is over. */
function stillToCome(after: Compared): Moment[] {
    const { plan } = after;
    const now = plan.underway && momentsIn(plan)?.(plan.underway.minutes, { key: 'now', said: '' }).minutes;
    return momentsOf(after).filter(({ minutes }) => now === undefined || minutes >= now);
}

const plain = (name: string): string => name.replaceAll('-', ' ');

interface Warmed {
    readonly key: string;
    readonly called: string;
    readonly start: number;
    readonly end: number;
}

/** Of each course's piece the first load in and the first out: the earliest of either is what somebody has to be there for. */
function warmedBy(titles: readonly string[], warming: readonly WarmingLoad[]): Warmed[] {
    const found = new Map<string, Warmed>();
    for (const { course, piece, start, end } of warming) {
        const called = `${several(plain(piece))} for ${quoted(titles[course] ?? '')}`;
        const known = found.get(called);
        found.set(called, {
            key: `warm ${called}`,
            called: `the first ${called}`,
            start: Math.min(start, known?.start ?? start),
            end: Math.min(end, known?.end ?? end),
        });
    }
    return [...found.values()];
}

/** In how many loads, and in which gear, each course's plates are warmed. */
function changedGear(before: Compared, after: Compared): Change[] {
    const loads = ({ plan, service }: Compared) => {
        const of = new Map<string, WarmingLoad[]>();
        for (const load of service.preparations?.warming ?? []) {
            const key = `${several(plain(load.piece))} for ${quoted(plan.menu?.courses[load.course]?.title ?? '')}`;
            of.set(key, [...(of.get(key) ?? []), load]);
        }
        return [...of].map(([key, all]) => ({
            key,
            gear: all.map(({ gear = '' }) => gear).join(', '),
            said: all
                .map(({ pieces, gear }) => `${pieces}${gear === undefined ? '' : ` in ${plain(gear)}`}`)
                .join(', '),
        }));
    };
    return paired(loads(before), loads(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] =>
        !was || !is || was.gear === is.gear
            ? []
            : [{ subject: 'tasks', key: `loads of ${key}`, text: `${key} to warm: ${is.said} instead of ${was.said}` }],
    );
}
