import { eveningClock } from '../../service/clock/evening.js';
import { courseTitle, type SheetSource } from '../sheets/evening.js';
import type { List, ListCell } from './list.js';

const PLANNED = 'Planned, not promised: people are slower and faster than a plan, and guests more so.';

/** Everything anybody does during the service, in order; `undefined` where no run sheet tells. */
export function runList({
    plan,
    service,
}: SheetSource): Pick<List, 'title' | 'columns' | 'rows' | 'cautions'> | undefined {
    const { run } = service;
    const clock = eveningClock(plan);
    return (
        run && {
            title: 'Run sheet',
            columns: [
                { key: 'from', head: 'From' },
                { key: 'until', head: 'Until' },
                { key: 'who', head: 'Who' },
                { key: 'does', head: 'Does' },
                { key: 'course', head: 'Course' },
                { key: 'table', head: 'Table' },
                { key: 'count', head: 'Count', figures: true },
                { key: 'minutes-from', head: 'Minutes after seating, from', figures: true },
                { key: 'minutes-until', head: 'Minutes after seating, until', figures: true },
                { key: 'instant', head: 'Day and time' },
            ],
            rows: run.tasks.map(({ person, sort, course, table, start, end, count }): ListCell[] => [
                clock?.face(start),
                clock?.face(end),
                run.people[person]!.name,
                sort,
                course < 0 ? undefined : courseTitle(plan, course),
                table,
                count,
                round(start),
                round(end),
                clock?.instant(start),
            ]),
            cautions: [PLANNED],
        }
    );
}

/** Two decimals: half a second. */
const round = (value: number): number => Math.round(value * 100) / 100;
