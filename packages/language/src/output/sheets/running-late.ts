import { counted, listed } from '../../rules/wording.js';
import {
    allergenPlates,
    capital,
    courseTitle,
    faces,
    FIGURES_ADVISE,
    overCalled,
    serverOf,
    type SheetSource,
} from './evening.js';
import type { Block, Cell, Sheet } from './sheet.js';

/**
 * The calls that are left, timed again while the evening runs.
 * @param source of a plan whose evening is under way, as `whatIf` computes it
 * @returns nothing for a plan that is not under way
 */
export function runningLateSheet(source: SheetSource): Sheet | undefined {
    const { plan, service } = source;
    const { underway } = plan;
    if (!underway) {
        return undefined;
    }
    const face = faces(plan);
    const left = service.run?.courses.filter(({ course }) => course > underway.done) ?? [];
    const speeches = (service.run?.speeches ?? []).filter(({ start }) => start >= underway.minutes);
    const rows: [at: number, row: Cell[]][] = [
        ...left.map(({ course, fired, served, cleared }): [number, Cell[]] => [
            fired,
            [
                courseTitle(plan, course),
                { text: face(fired), strong: true },
                face(served.first),
                face(served.last),
                face(cleared.last),
            ],
        ]),
        ...speeches.map(({ speech, start, end }): [number, Cell[]] => [
            start,
            [
                plan.menu!.speeches[speech]!.title ?? plan.menu!.speeches[speech]!.sort,
                { text: face(start), strong: true },
                '',
                '',
                face(end),
            ],
        ]),
    ];
    return {
        name: 'running-late',
        title: 'New times',
        subtitle: `As of ${face(underway.minutes)}, ${courseTitle(plan, underway.done)} cleared. Throw older cards away.`,
        onePage: true,
        blocks: [
            {
                sort: 'table',
                columns: [
                    { head: 'Course' },
                    { head: 'Call', figures: true, share: 0.12 },
                    { head: 'First set', figures: true, share: 0.15 },
                    { head: 'Last set', figures: true, share: 0.15 },
                    { head: 'Cleared', figures: true, share: 0.15 },
                ],
                rows: rows.toSorted((a, b) => a[0] - b[0]).map(([, row]) => row),
            },
            { sort: 'text', text: `${capital(overCalled(source))} about ${face(service.run?.over)}.` },
            ...marked(
                source,
                left.map(({ course }) => course),
            ),
            { sort: 'caution', text: `Food that waited: measure it again before it goes. ${FIGURES_ADVISE}` },
        ],
    };
}

/** Whose plates stay apart, however late it is. */
function marked(source: SheetSource, courses: readonly number[]): Block[] {
    const plates = allergenPlates(source).filter(({ course }) => courses.includes(course));
    const seats = new Map(
        plates.map(({ guest, marker }) => [
            `${guest.table} seat ${guest.seat}`,
            `${marker.replace(/ \d+$/, '')}: ${guest.table} seat ${guest.seat} (${serverOf(source, guest.table) ?? 'server'})`,
        ]),
    );
    return seats.size === 0
        ? []
        : [
              {
                  sort: 'text',
                  text: `Still checked by two people: ${counted(plates.length, 'plate')}, ${listed([...seats.values()])}.`,
              },
          ];
}
