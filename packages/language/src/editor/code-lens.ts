import type { CodeLens } from 'vscode-languageserver';
import type { Checked } from '../check.js';
import type { Origin } from '../plan/origin.js';
import { counted, listed } from '../rules/wording.js';
import { eveningClock } from '../service/clock/evening.js';
import type { Place } from './workspace.js';

/** Figures above the event, the menu and each course: guests, pieces a side, when it is served and what comes next. */
export function codeLenses({ folder, path }: Place): CodeLens[] {
    const checked = folder.checked(path);
    const { event, menu } = checked.plan;
    const lenses: readonly (readonly [Origin | undefined, readonly (string | undefined)[]])[] = [
        [event?.origin, eventFigures(checked)],
        [menu?.head, menuFigures(checked)],
        ...(menu?.courses ?? []).map((course) => [course.head, courseFigures(checked, course.index)] as const),
    ];
    return lenses.flatMap(([at, figures]) => {
        const range = at?.file === path ? folder.rangeOf({ ...at, end: at.start }) : undefined;
        const title = figures.filter((figure) => figure !== undefined).join(' · ');
        // Without a command it is a line of text.
        return range && title !== '' ? [{ range, command: { title, command: '' } }] : [];
    });
}

function eventFigures({ plan, service }: Checked): (string | undefined)[] {
    const { guests } = plan.event ?? {};
    if (!guests) {
        return [];
    }
    const clock = eveningClock(plan);
    const { run } = service;
    return [
        counted(guests.expected.count, 'guest'),
        service.groups.length > 1 ? `${service.groups.length} sorts of guests` : undefined,
        service.variations.length > 1 ? `${service.variations.length} covers` : undefined,
        clock && run ? `over at ${clock.face(run.over)}` : undefined,
    ];
}

/** What lies on each side of a cover; where covers differ, the fewest and the most. */
function menuFigures({ service }: Checked): (string | undefined)[] {
    type Cover = (typeof service.variations)[number]['cover'];
    const side = (name: string, names: string, piecesOf: (cover: Cover) => readonly unknown[]): string | undefined => {
        const counts = service.variations.map(({ cover }) => piecesOf(cover).length);
        const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
        return most === 0 ? undefined : fewest === most ? counted(most, name, names) : `${fewest} to ${most} ${names}`;
    };
    if (service.variations.length === 0) {
        return [];
    }
    const sides = [
        side('left', 'left', ({ left }) => left),
        side('right', 'right', ({ right }) => right),
        side('above', 'above', ({ above }) => above),
        side('glass', 'glasses', ({ glasses }) => glasses),
    ].filter((words) => words !== undefined);
    return sides.length > 0 ? [`laid at each place: ${listed(sides)}`] : [];
}

function courseFigures({ plan, service }: Checked, index: number): (string | undefined)[] {
    const clock = eveningClock(plan);
    const runs = service.run?.courses;
    const [own, next] = [index, index + 1].map((each) => runs?.find(({ course }) => course === each));
    if (!clock || !own) {
        return [];
    }
    const following = plan.menu!.courses[index + 1]?.title ?? (plan.menu!.coffee && next ? 'Coffee' : undefined);
    return [
        `called ${clock.face(own.fired)}`,
        `cleared ${clock.face(own.cleared.last)}`,
        next && following !== undefined ? `then ${following} at ${clock.face(next.served.first)}` : undefined,
    ];
}
