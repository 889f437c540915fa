import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clothsFor, dropOf } from './cloths.js';
import { floorOf, footprintOf, type Rectangle } from './footprint.js';
import { layOutRoom } from './lay-out-room.js';
import { edgeLength, placeSeats } from './seats.js';
import type { Clearances, RoomToLayOut, TableToPlace } from './types.js';

const widths = { coverWidth: 609.6, leastWidth: 508 };
const clearances: Clearances = { chair: 457.2, wheelchair: 787.4, aisle: 609.6, route: 914.4, wall: 152.4, pass: 1524 };

const shapes = fc.oneof(
    fc.record({ shape: fc.constant('round' as const), width: fc.integer({ min: 900, max: 2200 }) }).map((table) => ({
        ...table,
        depth: table.width,
    })),
    fc.record({
        shape: fc.constantFrom('rectangle' as const, 'oval' as const),
        width: fc.integer({ min: 1500, max: 3600 }),
        depth: fc.integer({ min: 700, max: 1400 }),
    }),
);

const tables = fc
    .array(fc.tuple(shapes, fc.integer({ min: 2, max: 12 }), fc.boolean(), fc.boolean()), {
        minLength: 1,
        maxLength: 12,
    })
    .map((drawn) =>
        drawn.map(([shape, guests, turned, isAccessible], index): TableToPlace => ({
            name: `T${index + 1}`,
            ...shape,
            turned,
            seats: placeSeats(shape, guests, isAccessible ? 1 : 0, widths),
        })),
    );

const rooms = fc.record({
    width: fc.integer({ min: 4000, max: 24_000 }),
    depth: fc.integer({ min: 4000, max: 24_000 }),
    passWall: fc.constantFrom('left' as const, 'right' as const, 'near' as const, 'far' as const),
    tables,
    clearances: fc.constant(clearances),
});

describe('seats', () => {
    it('stand on the edge of the table, look across it, and share it', () => {
        fc.assert(
            fc.property(shapes, fc.integer({ min: 2, max: 14 }), (shape, guests) => {
                const seats = placeSeats(shape, guests, 0, widths);
                expect(seats.map(({ number }) => number)).toEqual(seats.map((_, index) => index + 1));
                expect(seats).toHaveLength(guests);
                for (const { x, y, degrees } of seats) {
                    const [a, b] = [shape.width / 2, shape.depth / 2];
                    const out =
                        shape.shape === 'rectangle'
                            ? Math.max(Math.abs(x) / a, Math.abs(y) / b)
                            : Math.hypot(x / a, y / b);
                    expect(out).toBeCloseTo(1, 6);
                    // A step forward is a step onto the table.
                    const turn = (degrees * Math.PI) / 180;
                    const [inX, inY] = [x + Math.cos(turn), y + Math.sin(turn)];
                    expect(Math.hypot(inX / a, inY / b)).toBeLessThan(Math.hypot(x / a, y / b));
                }
                if (shape.shape !== 'rectangle') {
                    const whole = seats.reduce((sum, { pitch }) => sum + pitch, 0);
                    expect(whole).toBeCloseTo(edgeLength(shape), 3);
                }
            }),
            { seed: 5, numRuns: 200 },
        );
    });

    it('divide an oval into arcs of one length', () => {
        const shape = { shape: 'oval', width: 2400, depth: 1200 } as const;
        const seats = placeSeats(shape, 8, 0, widths);
        // Opposite seats mirror each other.
        for (const [index, { x, y }] of seats.entries()) {
            const opposite = seats[(index + 4) % 8]!;
            expect(opposite.x).toBeCloseTo(-x, 1);
            expect(opposite.y).toBeCloseTo(-y, 1);
        }
        // Measured along the edge in small steps; the formula for the whole edge is Ramanujan's.
        const arc = (from: number, to: number): number =>
            Array.from({ length: 2000 }, (_, step) => {
                const at = (part: number): [number, number] => {
                    const angle = from + ((to - from) * part) / 2000;
                    return [1200 * Math.cos(angle), 600 * Math.sin(angle)];
                };
                const [[x, y], [nextX, nextY]] = [at(step), at(step + 1)];
                return Math.hypot(nextX - x, nextY - y);
            }).reduce((sum, each) => sum + each, 0);
        const angles = seats.map(({ x, y }) => Math.atan2(y / 600, x / 1200));
        expect(arc(angles[0]!, angles[1]!)).toBeCloseTo(edgeLength(shape) / 8, 0);
        expect(arc(angles[1]!, angles[2]!)).toBeCloseTo(edgeLength(shape) / 8, 0);
        expect(arc(-Math.PI, Math.PI)).toBeCloseTo(edgeLength(shape), 0);
    });
});

/** The floors of the tables that have a place, each with its lanes told apart. */
function standing(room: RoomToLayOut) {
    const layout = layOutRoom(room);
    return {
        layout,
        floors: layout.tables.flatMap((table, index) => {
            if (!table.at) {
                return [];
            }
            const footprint = footprintOf(room.tables[index]!, table.at.degrees === 90, clearances);
            return [{ footprint, floor: floorOf(footprint, table.at) }];
        }),
    };
}

const apart = (one: Rectangle, other: Rectangle): number =>
    Math.max(one.left - other.right, other.left - one.right, one.near - other.far, other.near - one.far);

describe('tables set out by the room', () => {
    it('keep aisles, walls and the pass clear where they fit, and never stand in each other', () => {
        let fitted = 0;
        fc.assert(
            fc.property(rooms, (room) => {
                const { layout, floors } = standing(room);
                const { state, unplaced, short } = layout.grid!;
                fitted += state === 'fits' ? 1 : 0;
                expect(unplaced).toHaveLength(room.tables.length - floors.length);
                expect(unplaced.length > 0).toBe(state === 'full');
                expect(short.by > 0).toBe(state !== 'fits');
                const wall = state === 'fits' || state === 'full' ? clearances.wall : 0;
                const aisle = state === 'fits' || state === 'full' ? clearances.aisle : layout.grid!.aisle;
                for (const [index, { footprint, floor }] of floors.entries()) {
                    expect(floor.left).toBeGreaterThanOrEqual(wall - 1e-6);
                    expect(floor.near).toBeGreaterThanOrEqual(wall - 1e-6);
                    expect(floor.right).toBeLessThanOrEqual(room.width - wall + 1e-6);
                    expect(floor.far).toBeLessThanOrEqual(room.depth - wall + 1e-6);
                    for (const other of floors.slice(index + 1)) {
                        expect(apart(floor, other.floor)).toBeGreaterThanOrEqual(aisle - 1e-6);
                    }
                    const { x, y } = layout.pass;
                    const reach = clearances.pass / 2 - 1;
                    const beforePass = { left: x - reach, right: x + reach, near: y - reach, far: y + reach };
                    expect(apart(floor, beforePass), footprint.name).toBeGreaterThanOrEqual(-1e-6);
                }
            }),
            { seed: 11, numRuns: 150 },
        );
        // The rooms drawn are of both sorts.
        expect(fitted).toBeGreaterThan(20);
        expect(fitted).toBeLessThan(140);
    });

    it('fit as well when a room grows by what it is said to be short of', () => {
        fc.assert(
            fc.property(rooms, (room) => {
                const { state, short } = layOutRoom(room).grid!;
                fc.pre(state !== 'fits' && Number.isFinite(short.by));
                // The pass moves with the wall it is in the middle of: one that stays where it is makes the figure exact.
                const passWall = short.along === 'depth' ? ('near' as const) : ('left' as const);
                const from = { ...room, passWall };
                const needed = layOutRoom(from).grid!.short;
                fc.pre(needed.by > 0 && needed.along === short.along);
                const larger = { ...from, [needed.along]: from[needed.along] + needed.by + 1 };
                expect(layOutRoom(larger).grid!.state).toBe('fits');
            }),
            { seed: 3, numRuns: 100 },
        );
    });

    it('leave a table where the text puts it, and go round it', () => {
        const seats = placeSeats({ shape: 'round', width: 1524, depth: 1524 }, 8, 0, widths);
        const table = { shape: 'round', width: 1524, depth: 1524, seats, turned: false } as const;
        const room: RoomToLayOut = {
            width: 12_000,
            depth: 9000,
            passWall: 'left',
            clearances,
            tables: [
                { ...table, name: 'K', at: { x: 6000, y: 4500 } },
                ...['A', 'B', 'C', 'D', 'E'].map((name) => ({ ...table, name })),
            ],
        };
        const layout = layOutRoom(room);
        expect(layout.tables[0]!.at).toEqual({ x: 6000, y: 4500, degrees: 0 });
        expect(layout.grid).toMatchObject({ state: 'fits' });
        expect(layout.narrow).toEqual([]);
    });
});

describe('the way from the pass', () => {
    it('is straight where nothing stands in it, and never shorter than the crow flies', () => {
        fc.assert(
            fc.property(rooms, (room) => {
                const { layout } = standing(room);
                for (const { at, fromPass, width, depth, shape } of layout.tables) {
                    if (!at) {
                        continue;
                    }
                    const [w, d] = at.degrees === 90 ? [depth, width] : [width, depth];
                    const [dx, dy] = [Math.abs(at.x - layout.pass.x), Math.abs(at.y - layout.pass.y)];
                    const flight =
                        shape === 'round'
                            ? Math.hypot(dx, dy) - width / 2
                            : Math.hypot(Math.max(0, dx - w / 2), Math.max(0, dy - d / 2));
                    // Squares of 250 mm: half of one at each end.
                    expect(fromPass).toBeGreaterThanOrEqual(flight - 300);
                    if (layout.tables.length === 1) {
                        expect(fromPass).toBeLessThanOrEqual(flight + 400);
                    }
                }
            }),
            { seed: 7, numRuns: 60 },
        );
    });

    it('bends round a table that stands between', () => {
        const seats = placeSeats({ shape: 'rectangle', width: 3000, depth: 1000 }, 8, 0, widths);
        const bar = { shape: 'rectangle', width: 3000, depth: 1000, seats, turned: true } as const;
        const far = { name: 'far', shape: 'round', width: 1000, depth: 1000, seats: [], turned: false } as const;
        const room = (tables: readonly TableToPlace[]): RoomToLayOut => ({
            width: 12_000,
            depth: 8000,
            passWall: 'left',
            clearances,
            tables,
        });
        const alone = layOutRoom(room([{ ...far, at: { x: 10_000, y: 4000 } }])).tables[0]!.fromPass;
        const behind = layOutRoom(
            room([
                { ...far, at: { x: 10_000, y: 4000 } },
                { ...bar, name: 'between', at: { x: 5000, y: 4000 } },
            ]),
        ).tables[0]!.fromPass;
        expect(alone).toBeCloseTo(9500, -3);
        // Turned, its long side of 3 m and no chair at its ends lies across the way: past one end of it and on, 1.5 m aside.
        const corners = Math.hypot(5000 - 957, 1500) + 1914 + Math.hypot(10_000 - 5957, 1500) - 500;
        expect(behind).toBeGreaterThan(alone + 200);
        expect(Math.abs(behind - corners)).toBeLessThan(500);
    });
});

describe('cloths', () => {
    it('hang as wanted where one is large enough, and none that is smaller does', () => {
        const stocked = fc.array(
            fc.oneof(
                fc.integer({ min: 1000, max: 3600 }).map((across) => ({ shape: 'round' as const, across })),
                fc.record({
                    shape: fc.constant('rectangle' as const),
                    length: fc.integer({ min: 1000, max: 4500 }),
                    width: fc.integer({ min: 1000, max: 3600 }),
                }),
            ),
            { minLength: 1, maxLength: 8 },
        );
        const area = (size: { shape: string; across?: number; length?: number; width?: number }): number =>
            size.shape === 'round' ? (Math.PI * size.across! ** 2) / 4 : size.length! * size.width!;
        fc.assert(
            fc.property(
                stocked,
                fc.integer({ min: 900, max: 1900 }),
                fc.integer({ min: 200, max: 760 }),
                (sizes, across, drop) => {
                    const cloths = sizes.map((size, index) => ({ piece: `cloth-${index}`, size }));
                    const table = {
                        name: 'K',
                        shape: 'round',
                        width: across,
                        depth: across,
                        seats: [],
                        turned: false,
                    } as const;
                    const [laid] = clothsFor([table], cloths, { drop, overlap: 150 }).tables;
                    const enough = cloths.filter(({ size }) => dropOf(table, size) >= drop);
                    if (enough.length === 0) {
                        expect(laid!.drop!).toBeCloseTo(Math.max(...cloths.map(({ size }) => dropOf(table, size))), 6);
                    } else {
                        expect(laid!.drop!).toBeGreaterThanOrEqual(drop);
                        expect(area(laid!.size!)).toBeCloseTo(Math.min(...enough.map(({ size }) => area(size))), 3);
                    }
                },
            ),
            { seed: 2, numRuns: 200 },
        );
    });
});
