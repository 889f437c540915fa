import { lazily } from '../../plan/lazily.js';
import { remember } from '../remember.js';
import { footprintOf } from './footprint.js';
import { narrowPlaces, type Standing } from './narrow-places.js';
import { passSquare, setOut } from './set-out.js';
import type { RoomLayout, RoomToLayOut } from './types.js';
import { walkFromPass } from './walk.js';

/** Lays a room out: tables in their places, what is too narrow, and how far each is to walk to. */
export const layOutRoom = remember((room: RoomToLayOut): Omit<RoomLayout, 'cloths'> => {
    const { width, depth, clearances } = room;
    const pass = passOf(room);
    const { places, grid } = setOut(room, pass);
    const standing = room.tables.flatMap((table): Standing[] => {
        const place = places.get(table.name);
        return place
            ? [{ table: footprintOf(table, place.isTurned, clearances), at: place, isStated: table.at !== undefined }]
            : [];
    });
    const walks = lazily(() => walkFromPass(room, pass, standing));
    return {
        width,
        depth,
        pass,
        clearances,
        grid,
        narrow: narrowPlaces(standing, room, passSquare(room, pass)),
        tables: room.tables.map((table) => {
            const place = places.get(table.name);
            return {
                name: table.name,
                shape: table.shape,
                width: table.width,
                depth: table.depth,
                at: place && { x: place.x, y: place.y, degrees: place.isTurned ? 90 : 0 },
                seats: table.seats,
                get fromPass() {
                    return walks().get(table.name) ?? 0;
                },
            };
        }),
    };
});

/** The middle of the wall that the room names. */
function passOf({ width, depth, passWall }: RoomToLayOut): RoomLayout['pass'] {
    switch (passWall) {
        case 'left':
            return { x: 0, y: depth / 2 };
        case 'right':
            return { x: width, y: depth / 2 };
        case 'near':
            return { x: width / 2, y: 0 };
        case 'far':
            return { x: width / 2, y: depth };
    }
}
