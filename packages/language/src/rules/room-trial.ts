import type { Plan } from '../plan/types.js';
import { coverGeometry } from '../service/cover-geometry/cover-geometry.js';
import { deriveService } from '../service/derive.js';
import { lazily } from '../plan/lazily.js';
import { roomOf } from '../service/room/room-of.js';
import { tablesOf } from '../service/room/room-to-lay-out.js';
import type { Service } from '../service/types.js';
import type { Fix, Intention } from './fixes.js';
import {
    accessibleShort,
    centreShort,
    crowdedTables,
    floorShort,
    laidTables,
    narrowPlacesOf,
    offTableTold,
    overlapsTold,
    seatsMissing,
} from './table-problems.js';

/** A change of the room or of a custom, and the plan as it would then be. */
export interface Change {
    readonly title: string;
    readonly changes: readonly Intention[];
    readonly plan: Plan;
}

/** The part of the service that a change of the room changes. */
export type Furnished = Pick<Service, 'guestCount' | 'variations' | 'tables' | 'room' | 'coverGeometry'>;

/** How much is wrong with the room, by rule: what a change must not make worse. */
function tally(plan: Plan, service: Furnished): readonly number[] {
    const laid = laidTables(plan, service);
    const crowded = crowdedTables(plan, service);
    const grid = service.room?.grid;
    return [
        crowded.filter(({ isCrowded }) => isCrowded).length,
        crowded.length,
        laid.filter((each) => overlapsTold(each).length > 0).length,
        laid.filter((each) => offTableTold(each).length > 0).length,
        laid.filter((each) => centreShort(plan, each) > 0).length,
        floorShort(plan, service) ? 1 : 0,
        grid && grid.state !== 'fits' ? 1 : 0,
        narrowPlacesOf(service).length,
        seatsMissing(plan, service),
        accessibleShort(plan, service) ? 1 : 0,
    ];
}

/**
 * The changes that mend what a rule has found and make nothing else in the room worse, as fixes: of each sort the first that
 * does, tried on the plan itself when somebody asks. The first sort that mends it is preferred.
 */
export function fixesThat(
    isMended: (plan: Plan, service: Furnished) => boolean,
    now: { readonly plan: Plan; readonly service: Service },
    sorts: readonly (readonly Change[])[],
): () => Fix[] {
    return () => {
        const before = tally(now.plan, now.service);
        const mends = (change: Change): boolean => {
            const service = afterChange(change.plan, now);
            const isWorse = tally(change.plan, service).some((count, index) => count > before[index]!);
            return !isWorse && isMended(change.plan, service);
        };
        const found = sorts.flatMap((changes) => changes.find(mends) ?? []);
        return found.map(({ title, changes }, index) => ({ title, safety: 'unsafe', preferred: index === 0, changes }));
    };
}

/** Only what lies at a cover depends on the house's customs; a change of the room leaves the rest of the service as it is. */
function afterChange(plan: Plan, now: { readonly plan: Plan; readonly service: Service }): Furnished {
    if (plan.customs !== now.plan.customs) {
        return deriveService(plan);
    }
    const { guestCount, variations, facts, coffee } = now.service;
    const tables = tablesOf(plan);
    const geometry = lazily(() => coverGeometry(plan, { variations, facts, coffee }, tables));
    const room = lazily(() => roomOf(plan, tables));
    return {
        guestCount,
        variations,
        tables,
        get room() {
            return room();
        },
        get coverGeometry() {
            return geometry();
        },
    };
}
