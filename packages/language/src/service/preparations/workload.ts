/** What there is to lay, to polish, to clear and to wash. */
import type { Plan } from '../../plan/types.js';
import { isInHouse } from '../facts.js';
import type { Cover, Service, Variation } from '../types.js';
import type { Workload } from './derived-tasks.js';

type ForWorkload = Pick<Service, 'guestCount' | 'variations' | 'seats' | 'room' | 'pull' | 'counts' | 'stock' | 'run'>;

/** @returns `undefined` where no table is stated */
export function workloadOf(plan: Plan, service: ForWorkload): Workload | undefined {
    const { variations, seats, pull } = service;
    const common = variations[0];
    if (seats.tables.length === 0 || !common) {
        return undefined;
    }
    const cloths = new Map(
        (service.room?.cloths.tables ?? []).map((each) => [each.table, each.piece ? each.count : 0]),
    );
    // A room without measures has its cloths all the same, where the house has any.
    const usual = isInHouse('tablecloth', plan.house) ? 1 : 0;
    const cards = pull.find(({ piece }) => piece === 'place-card')?.pull ?? plan.seating.length;
    const covers = seats.tables.reduce((sum, table) => sum + table.laid, 0);
    const family = (name: string): string | undefined => plan.cupboard.pieces.get(name)?.family;
    const polished = ['fork', 'knife', 'spoon', 'glass'];
    const laid = seatedShare(service, ({ cover }) => laidAt(cover));
    const left = seatedShare(service, leftAt);
    return {
        tables: seats.tables.map(({ name, guests, laid: places }) => ({
            name,
            cloths: cloths.get(name) ?? usual,
            // Covers beyond the guests' are laid as most are.
            laid: laid(name) + Math.max(0, places - guests) * laidAt(common.cover),
            left: left(name) + Math.max(0, places - guests) * laidAt(common.cover),
            cards: covers > 0 ? Math.round((cards * places) / covers) : 0,
        })),
        polished: sum(pull.filter(({ piece }) => polished.includes(family(piece) ?? ''))),
        napkins: pull.find(({ piece }) => piece === 'napkin')?.pull ?? 0,
        pulled: sum(pull),
        racks: racksLeft(service),
    };
}

const sum = (lines: readonly { readonly pull: number }[]): number => lines.reduce((total, { pull }) => total + pull, 0);

/** Adds up what every guest of a table has. */
function seatedShare(
    { seats, variations }: ForWorkload,
    of: (variation: Variation) => number,
): (table: string) => number {
    const each = variations.map(of);
    const byTable = new Map<string, number>();
    for (const { table, variation } of seats.guests) {
        byTable.set(table, (byTable.get(table) ?? 0) + each[variation]!);
    }
    return (table) => byTable.get(table) ?? 0;
}

/** Pieces that lie at a cover when guests sit. */
function laidAt({ left, right, above, breadPlate, glasses, servicePlate, bread }: Cover): number {
    const napkin = 1;
    const plates = (servicePlate ? 1 : 0) + (bread ? 1 : 0);
    return left.length + right.length + above.length + breadPlate.length + glasses.length + plates + napkin;
}

/** Pieces that are still there when guests leave. */
function leftAt({ steps }: Variation): number {
    return steps.at(-1)?.cleared.length ?? 0;
}

/** Racks of each course, in the dish room once it is cleared; those of no course come off the tables at the end. */
function racksLeft({ counts, stock, run }: ForWorkload): Workload['racks'] {
    const byCourse = new Map<number, number>();
    for (const { piece, racks } of stock.racks) {
        const uses = counts.find((count) => count.piece === piece)?.by ?? [];
        const all = uses.reduce((total, use) => total + use.count, 0);
        for (const { course, count, purpose } of uses) {
            const isLast = purpose === 'drinking' || run?.courses[course] === undefined;
            const at = isLast ? -1 : course;
            byCourse.set(at, (byCourse.get(at) ?? 0) + (all > 0 ? (racks * count) / all : 0));
        }
    }
    return [...byCourse]
        .map(([course, racks]) => ({ racks: Math.ceil(racks - 1e-9), from: run?.courses[course]?.cleared.last }))
        .toSorted((a, b) => (a.from ?? Infinity) - (b.from ?? Infinity));
}
