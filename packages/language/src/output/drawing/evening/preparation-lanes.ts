/** What is done before the doors and after the guests, as lanes. */
import { counted, listed } from '../../../rules/wording.js';
import type { Call, PreparedTask, Timed } from '../../../service/preparations/types.js';
import type { Plan } from '../../../plan/types.js';
import { faces } from '../../sheets/evening.js';
import { originOfRole } from './people-lanes.js';
import type { Bar, Lane, LaneGroup } from './lane.js';

/** A length of the evening, minutes after guests are seated. */
export interface Stretch {
    readonly from: number;
    readonly to: number;
}

/** A lane for each task, and one each for the crew's meal, the briefing and the line-up. */
export function taskLanes(
    plan: Plan,
    {
        title,
        tasks,
        moments = [],
    }: {
        readonly title: string;
        readonly tasks: readonly PreparedTask[];
        readonly moments?: readonly (readonly [words: string, moment: Timed | undefined])[];
    },
    within: Stretch,
): LaneGroup {
    const face = faces(plan);
    const span = ({ start, end }: Timed): string => `${face(start)}–${face(end)}`;
    const lane = (name: string, note: string | undefined, bar: Omit<Bar, 'course'>): Lane => ({
        name,
        // What begins before this part of the evening says when.
        note: bar.start < within.from ? [`since ${face(bar.start)}`, ...(note ? [note] : [])].join(', ') : note,
        origin: bar.origin,
        bars: [{ ...bar, course: -1, start: Math.max(bar.start, within.from), end: Math.min(bar.end, within.to) }],
        captions: [{ start: Math.max(bar.start, within.from), words: span(bar) }],
    });
    return {
        title,
        lanes: [
            ...tasks.map((task) => {
                const by = handsOf(task);
                const says = [
                    `${span(task)} ${task.title}${by ? `: ${by}` : ''}`,
                    task.because,
                    task.isCritical
                        ? 'nothing of it can slip'
                        : `may slip ${counted(Math.floor(task.slack), 'minute')}`,
                ].join('; ');
                return lane(task.title, by, {
                    start: task.start,
                    end: task.end,
                    look: task.isCritical ? 'critical' : 'task',
                    says,
                    origin:
                        (task.stated === undefined ? undefined : plan.tasks[task.stated]?.origin) ??
                        originOfRole(plan, task.by[0]?.role ?? ''),
                });
            }),
            ...moments.flatMap(([words, moment]) =>
                moment
                    ? [
                          lane(words, undefined, {
                              ...moment,
                              look: 'talk',
                              says: `${span(moment)} ${words}`,
                              origin: plan.team?.origin,
                          }),
                      ]
                    : [],
            ),
        ],
    };
}

/** `5 servers, 2 runners` */
function handsOf({ by }: PreparedTask): string | undefined {
    return by.length === 0
        ? undefined
        : by.map(({ role, people }) => (people === 1 ? role : counted(people, role))).join(', ');
}

/** When people are called in, or may go: a mark for each moment. */
export function callLane(plan: Plan, name: string, does: string, calls: readonly Call[], within: Stretch): Lane[] {
    const face = faces(plan);
    const moments = new Map<number, string[]>();
    for (const { role, each } of calls) {
        for (const minutes of new Set(each)) {
            const people = counted(each.filter((other) => other === minutes).length, role);
            moments.set(minutes, [...(moments.get(minutes) ?? []), people]);
        }
    }
    const bars = [...moments]
        .toSorted(([a], [b]) => a - b)
        .map(([start, people]): Bar => {
            const at = Math.min(Math.max(start, within.from), within.to);
            return {
                start: at,
                end: at,
                look: 'call',
                says: `${face(start)} ${listed(people)} ${does}`,
                course: -1,
                origin: plan.team?.origin,
            };
        });
    return bars.length === 0 ? [] : [{ name, bars, captions: [] }];
}
