import type { Plan } from '../../plan/types.js';
import { lazily } from '../../plan/lazily.js';
import { clothsFor } from './cloths.js';
import { layOutRoom } from './lay-out-room.js';
import { clothDrop, roomToLayOut, stockedCloths } from './room-to-lay-out.js';
import type { RoomLayout, TableToPlace } from './types.js';

/** The plan's room laid out; absent where the text gives it no size. */
export function roomOf(plan: Plan, tables: readonly TableToPlace[]): RoomLayout | undefined {
    const room = roomToLayOut(plan, tables);
    if (!room) {
        return undefined;
    }
    const cloths = lazily(() =>
        clothsFor(tables, stockedCloths(plan), {
            drop: clothDrop(plan),
            overlap: plan.customs['cloth-overlap'].value,
        }),
    );
    return {
        ...layOutRoom(room),
        get cloths() {
            return cloths();
        },
    };
}
