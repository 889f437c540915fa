/** The movements of the service at the tables of one station, as the server carries them out. */
import type { Step, TableItem } from '../../service/types.js';
import { courseTitle, faces, pieceCalled, type SheetSource } from './evening.js';
import type { Block, Cell } from './sheet.js';

/** One movement of all covers; what only some covers get says whose it is. */
interface Movement {
    readonly step: Step;
    readonly brought: readonly string[];
    readonly cleared: readonly string[];
}

/**
 * What comes and what goes at each step.
 * @param variations indices of the sets of dishes that guests of the station have
 * @param tables the station's; their first plate and first clearing give the times
 */
export function movementsTable(source: SheetSource, variations: readonly number[], tables: readonly string[]): Block {
    const face = faces(source.plan);
    const rows = movements(source, variations).map(({ step, brought, cleared }): Cell[] => [
        face(timeOf(source, step, tables)).replace('–', ''),
        { text: titleOf(source, step), strong: true },
        brought.join(', '),
        cleared.join(', '),
    ]);
    return {
        sort: 'table',
        columns: [
            { head: 'About', share: 0.11 },
            { head: 'What', share: 0.33 },
            { head: 'Bring' },
            { head: 'Take away', share: 0.3 },
        ],
        rows,
    };
}

function movements(source: SheetSource, variations: readonly number[]): Movement[] {
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
            return step ? [{ label: variation.label, step }] : [];
        });
        const { step } = own[0]!;
        const words = (of: (step: Step) => readonly TableItem[]): string[] =>
            sharedFirst(
                source,
                own.map(({ label, step: each }) => ({ label, items: of(each) })),
                all.length,
            );
        const cleared = [...new Set(own.flatMap(({ step: each }) => each.cleared.map(({ piece }) => piece)))];
        // What guests do by themselves moves nothing.
        return step.sort === 'eat'
            ? []
            : // What is laid before guests sit is drawn, not brought.
              [
                  {
                      step,
                      brought: step.sort === 'seated' ? [] : words((each) => each.brought),
                      cleared: cleared.map((piece) => pieceCalled(source.plan, piece)),
                  },
              ];
    });
}

function titleOf({ plan }: SheetSource, { sort, course, title }: Step): string {
    return sort === 'bring' ? `Lay for ${courseTitle(plan, course)}` : title;
}

/** The pieces that all covers have, then those of some, with whose they are. */
function sharedFirst(
    { plan }: SheetSource,
    own: readonly { readonly label: string; readonly items: readonly TableItem[] }[],
    covers: number,
): string[] {
    const pieces = [...new Set(own.flatMap(({ items }) => items.map(({ piece }) => piece)))];
    const having = (piece: string): string[] =>
        own.filter(({ items }) => items.some((item) => item.piece === piece)).map(({ label }) => label);
    const isShared = (piece: string): boolean => having(piece).length === covers;
    return [
        ...pieces.filter(isShared).map((piece) => pieceCalled(plan, piece)),
        ...pieces
            .filter((piece) => !isShared(piece))
            .map((piece) => `${pieceCalled(plan, piece)} (${having(piece).join('; ')})`),
    ];
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
