/** The movements of the service at the tables of one station, as the server carries them out. */
import type { SeatedGuest } from '../../service/seats/types.js';
import type { Step, TableItem, Variation } from '../../service/types.js';
import { bringsToTable } from './at-the-table.js';
import { capital, courseTitle, faces, pieceCalled, type SheetSource } from './evening.js';
import type { Block, Cell } from './sheet.js';

/** One movement of all covers; what only some covers get says whose it is. */
interface Movement {
    readonly step: Step;
    readonly brought: string;
    readonly cleared: readonly string[];
}

/**
 * What comes and what goes at each step.
 * @param variations indices of the sets of dishes that guests of the station have
 * @param tables the station's; their first plate and first clearing give the times
 */
export function movementsTable(source: SheetSource, variations: readonly number[], tables: readonly string[]): Block {
    const face = faces(source.plan);
    const guests = source.service.seats.guests.filter(({ table }) => tables.includes(table));
    const moved = movements(source, variations, guests).map(({ step, brought, cleared }): Row => {
        const time = timeOf(source, step, tables);
        return { time, cells: [{ text: titleOf(source, step), strong: true }, brought, cleared.join(', ')] };
    });
    const rows = withSpeeches(source, moved).map(({ time, cells }) => [face(time).replace('–', ''), ...cells]);
    return {
        sort: 'table',
        columns: [
            { head: 'About', share: 0.11 },
            { head: 'What', share: 0.27 },
            { head: 'Bring' },
            { head: 'Take away', share: 0.27 },
        ],
        rows,
    };
}

interface Row {
    /** Min after guests are seated; absent where no run sheet tells. */
    readonly time?: number;
    readonly cells: readonly Cell[];
}

/** Toasts and speeches that only have an hour, behind what is done before it. */
function withSpeeches({ plan, service }: SheetSource, moved: readonly Row[]): Row[] {
    const rows = [...moved];
    for (const { speech, start } of service.run?.speeches ?? []) {
        const { sort, title, when, pour } = plan.menu!.speeches[speech]!;
        if (!when) {
            const before = rows.findLastIndex(({ time }) => time !== undefined && time <= start);
            const cells: Cell[] = [
                { text: title ?? capital(sort), strong: true },
                pour ? `${pour.text} in every glass by then` : '',
                '',
            ];
            rows.splice(before + 1, 0, { time: start, cells });
        }
    }
    return rows;
}

function movements(source: SheetSource, variations: readonly number[], guests: readonly SeatedGuest[]): Movement[] {
    const all = variations.map((index) => source.service.variations[index]!);
    const keyOf = (step: Step): string => `${step.course} ${step.sort} ${step.title}`;
    const keys: string[] = [];
    for (const { steps } of all) {
        let after = -1;
        for (const step of steps) {
            const known = keys.indexOf(keyOf(step));
            if (known < 0) {
                keys.splice(after + 1, 0, keyOf(step));
                after += 1;
            } else {
                after = known;
            }
        }
    }
    return keys.flatMap((key): Movement[] => {
        const own = all.flatMap((variation) => {
            const step = variation.steps.find((each) => keyOf(each) === key);
            return step ? [{ variation, step }] : [];
        });
        const { step } = own[0]!;
        const words = (of: (step: Step) => readonly TableItem[]): string[] =>
            sharedFirst(
                source,
                own.map(({ variation, step: each }) => ({ variation, items: of(each) })),
                all,
            );
        const dishes = all.map((variation) => variation.dishes[step.course]);
        const atTable = step.sort === 'serve' ? bringsToTable(source, step.course, dishes, guests) : [];
        const cleared = [...new Set(own.flatMap(({ step: each }) => each.cleared.map(({ piece }) => piece)))];
        // What guests do by themselves moves nothing.
        return step.sort === 'eat'
            ? []
            : // What is laid before guests sit is drawn, not brought.
              [
                  {
                      step,
                      brought:
                          step.sort === 'seated'
                              ? ''
                              : [words((each) => each.brought).join(', '), ...atTable].join('; '),
                      cleared: cleared.map((piece) => pieceCalled(source.plan, piece)),
                  },
              ];
    });
}

function titleOf({ plan }: SheetSource, { sort, course, title }: Step): string {
    return sort === 'bring' ? `Lay for ${courseTitle(plan, course)}` : title;
}

/** A set of dishes and what comes to its covers in one movement. */
interface Coming {
    readonly variation: Variation;
    readonly items: readonly TableItem[];
}

/** The pieces that all covers have, then those of some, with the dish they are for. */
function sharedFirst({ plan }: SheetSource, own: readonly Coming[], all: readonly Variation[]): string[] {
    const pieces = [...new Set(own.flatMap(({ items }) => items.map(({ piece }) => piece)))];
    const having = (piece: string): Coming[] => own.filter(({ items }) => items.some((item) => item.piece === piece));
    const isShared = (piece: string): boolean => having(piece).length === all.length;
    return [
        ...pieces.filter(isShared).map((piece) => pieceCalled(plan, piece)),
        ...pieces
            .filter((piece) => !isShared(piece))
            .map((piece) => `${pieceCalled(plan, piece)} (${whose(piece, having(piece), all)})`),
    ];
}

/** The dishes of its own course that a piece is for; where they do not tell its covers from others, whole sets of dishes. */
function whose(piece: string, having: readonly Coming[], all: readonly Variation[]): string {
    const dishes = having.map(({ variation, items }) => {
        const { course } = items.find((item) => item.piece === piece)!;
        return { course, dish: variation.dishes[course] };
    });
    const isAlone = dishes.every(
        ({ course, dish }) =>
            dish !== undefined &&
            all.every((other) => other.dishes[course] !== dish || having.some(({ variation }) => variation === other)),
    );
    const words = isAlone ? dishes.map(({ dish }) => dish!.title) : having.map(({ variation }) => variation.label);
    return [...new Set(words)].join(isAlone ? ' or ' : '; or ');
}

/** When the station's first table is due for it; absent where no run sheet tells. */
function timeOf({ plan, service }: SheetSource, step: Step, tables: readonly string[]): number | undefined {
    const { run } = service;
    const own = (run?.courses.find(({ course }) => course === step.course)?.tables ?? []).filter(({ table }) =>
        tables.includes(table),
    );
    const first = (times: readonly number[]): number | undefined => (times.length > 0 ? Math.min(...times) : undefined);
    switch (step.sort) {
        case 'seated':
            return 0;
        case 'serve':
        case 'coffee':
            return first(own.map(({ served }) => served.first));
        case 'clear':
            return first(own.map(({ cleared }) => cleared.first));
        case 'toast':
        case 'speech':
            return run?.speeches.find(({ speech }) => {
                const { sort, title } = plan.menu!.speeches[speech]!;
                return (title ?? sort) === step.title;
            })?.start;
        default:
            return undefined;
    }
}
