/** Plates against what warms them, keeps them and lets them stand: only gear of which the house or the rent says what it holds. */
import { pieceLineage } from '../../plan/suiting.js';
import type { Course, Dish, Plan, Stock as StockLine } from '../../plan/types.js';
import { isWaiting } from '../cover.js';
import type { Run } from '../run/types.js';
import type { Service } from '../types.js';
import { lotsOf, up } from './lots.js';
import type { EquipmentUse } from './types.js';

type Served = Pick<Service, 'servings' | 'facts'>;

/** Gear that holds plates. */
export interface Holder {
    readonly gear: string;
    /** Plates of one. */
    readonly each: number;
    readonly count: number;
    readonly stated: StockLine;
}

/** What the house owns and the event rents that says how many plates it holds. */
export function plateHolders({ house, event, cupboard }: Plan): Holder[] {
    return [...house.stock, ...(event?.rents ?? [])].flatMap((stated) => {
        const holds = stated.holds.find(({ what }) => isPlates(what, cupboard));
        return holds && stated.count.count > 0
            ? [{ gear: stated.piece.name, each: holds.count, count: stated.count.count, stated }]
            : [];
    });
}

/** `plates`, `bowls`, `cups`, or the name of a piece that is one. */
function isPlates(what: string, cupboard: Plan['cupboard']): boolean {
    const family = cupboard.pieces.get(what)?.family ?? what.replace(/s$/, '');
    return family === 'plate' || family === 'bowl' || family === 'cup';
}

/** Every use of such gear, course by course. */
export function equipmentUses(plan: Plan, service: Served, runOf: () => Run | undefined): EquipmentUse[] {
    const holders = plateHolders(plan);
    if (holders.length === 0) {
        return [];
    }
    const isSort = (gear: string, sort: string): boolean =>
        gear === sort || pieceLineage(plan.cupboard, gear).some((piece) => piece.name === sort);
    const uses: EquipmentUse[] = [];
    const note = (
        purpose: EquipmentUse['purpose'],
        course: Course,
        plates: readonly Plates[],
        gear: readonly Holder[],
        more: { readonly peak?: Peak } = {},
    ): void => {
        const count = more.peak ? more.peak.plates : plates.reduce((sum, each) => sum + each.count, 0);
        const capacity = gear.reduce((sum, each) => sum + each.each * each.count, 0);
        if (count === 0 || capacity === 0) {
            return;
        }
        const loads = lotsOf(count, capacity);
        uses.push({
            gear: gear[0]!.gear,
            purpose,
            course: course.index,
            dishes: plates.map(({ dish }) => dish),
            plates: count,
            count: gear.reduce((sum, each) => sum + each.count, 0),
            capacity,
            loads,
            ...(purpose === 'warming' ? { minutes: loads * plan.customs['plate-warming'].value } : {}),
            ...(more.peak ? { at: more.peak.at } : {}),
        });
    };

    const shelves = holders.filter(({ gear }) => isSort(gear, 'pass-shelf'));
    const warmers = holders.filter(({ gear }) => isSort(gear, 'plate-warmer'));
    for (const { course, portions } of service.servings) {
        const plates = portions.filter(({ count }) => count > 0);
        note(
            'warming',
            course,
            plates.filter(({ dish }) => dish.served.vessel?.state === 'warmed'),
            warmers,
        );
        const ahead = plates.filter(({ dish }) => dish.platedAhead?.gear);
        for (const name of new Set(ahead.map(({ dish }) => dish.platedAhead!.gear!.name))) {
            const inIt = ahead.filter(({ dish }) => dish.platedAhead!.gear!.name === name);
            note(
                'plated ahead',
                course,
                inIt,
                holders.filter(({ gear }) => isSort(gear, name)),
            );
        }
        const isHot = plates.some(({ dish }) => service.facts.find((facts) => facts.dish === dish)?.isHot);
        const standing = holders.filter(
            ({ gear }) => !isSort(gear, 'plate-warmer') && (isHot || !isSort(gear, 'hot-box')),
        );
        if (isWaiting(plan, course.index)) {
            const atOnce = plates.filter(({ dish }) => !dish.platedAhead);
            note('preset', course, atOnce, standing);
        } else if (shelves.length > 0 && ahead.length === 0) {
            const run = runOf();
            const peak = run && peakAtPass(run, course.index);
            if (peak) {
                note('pass', course, plates, shelves, { peak });
            }
        }
    }
    return uses;
}

interface Plates {
    readonly dish: Dish;
    readonly count: number;
}

interface Peak {
    readonly plates: number;
    /** Minutes after guests are seated. */
    readonly at: number;
}

/** The most plates that stand at the pass at one time: those plated and not yet carried off, table by table. */
export function peakAtPass(run: Run, course: number): Peak | undefined {
    const guests = new Map(run.tables.map((table) => [table.name, table.guests]));
    const tables = run.courses.find((each) => each.course === course)?.tables ?? [];
    const share = (time: number, { first, last }: { readonly first: number; readonly last: number }): number =>
        time >= last ? 1 : time <= first ? 0 : (time - first) / (last - first);
    const times = tables.flatMap((table) => [table.plated.last, table.leftPass.first]);
    const standing = times.map((at) => ({
        at,
        plates: up(
            tables.reduce((sum, table) => {
                const waiting = share(at, table.plated) - share(at, table.leftPass);
                return sum + Math.max(0, waiting) * (guests.get(table.table) ?? 0);
            }, 0),
        ),
    }));
    const [most] = standing.toSorted((a, b) => b.plates - a.plates || a.at - b.at);
    return most;
}
