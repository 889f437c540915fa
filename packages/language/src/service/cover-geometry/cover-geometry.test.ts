import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeSeats } from '../room/seats.js';
import { layCovers } from './covers-on-table.js';
import { outline, partIn, poseAt, seenFrom, toFrame, type Part, type Point } from './outline.js';
import { overlapOf, OWN, Solid } from './overlap.js';
import { bottomAt, lowestClear } from './room-at-the-cover.js';
import type { CoverToPlace, LayingDistances, PieceToPlace, PlacedPiece } from './types.js';

const placed = fc.record({
    id: fc.constant('piece'),
    name: fc.constant('piece'),
    label: fc.constant('piece'),
    shape: fc.constantFrom('fork', 'knife', 'spoon', 'round', 'napkin', 'card', 'pair'),
    row: fc.constant('left'),
    when: fc.constant('laid'),
    course: fc.constant(0),
    x: fc.integer({ min: -300, max: 300 }),
    y: fc.integer({ min: -300, max: 300 }),
    length: fc.integer({ min: 60, max: 260 }),
    width: fc.integer({ min: 12, max: 60 }),
    degrees: fc.integer({ min: 0, max: 359 }),
}) as fc.Arbitrary<PlacedPiece>;

function holds(part: Part, { x, y }: Point): boolean {
    if ('radius' in part) {
        return Math.hypot(x - part.middle.x, y - part.middle.y) < part.radius;
    }
    return part.corners.every((from, index) => {
        const to = part.corners[(index + 1) % part.corners.length]!;
        return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) > 0;
    });
}

/** Whether any point of a fine net lies in both: an answer that knows nothing of separating lines. */
function shareAPoint(one: PlacedPiece, other: PlacedPiece): boolean {
    const [mine, theirs] = [outline(one), outline(other)];
    const reach = Math.max(one.length, one.width);
    for (let dx = -reach; dx <= reach; dx += 3) {
        for (let dy = -reach; dy <= reach; dy += 3) {
            const point = { x: one.x + dx, y: one.y + dy };
            if (mine.some((part) => holds(part, point)) && theirs.some((part) => holds(part, point))) {
                return true;
            }
        }
    }
    return false;
}

describe('overlap', () => {
    it('is there wherever two pieces share a point, and is the same the other way round', () => {
        let meetings = 0;
        fc.assert(
            fc.property(placed, placed, (one, other) => {
                const [a, b] = [new Solid(one, OWN), new Solid(other, OWN)];
                const by = overlapOf(a, b);
                expect(overlapOf(b, a)).toBeCloseTo(by, 6);
                if (shareAPoint(one, other)) {
                    meetings++;
                    expect(by).toBeGreaterThan(0);
                } else {
                    // Smaller than the net's mesh at most.
                    expect(by).toBeLessThan(9);
                }
            }),
            { seed: 4, numRuns: 300 },
        );
        expect(meetings).toBeGreaterThan(20);
    });

    it('of two round pieces is what their radii exceed their distance by', () => {
        const round = (x: number, length: number): Solid =>
            new Solid({ ...PLATE, row: 'centre', when: 'laid', x, y: 0, degrees: 0, length, width: length }, OWN);
        expect(overlapOf(round(0, 200), round(170, 160))).toBeCloseTo(10, 6);
        expect(overlapOf(round(0, 200), round(180, 160))).toBe(0);
    });

    it('does not depend on where the table stands or how it is turned', () => {
        fc.assert(
            fc.property(placed, placed, fc.integer({ min: 0, max: 359 }), (one, other, degrees) => {
                const pose = poseAt(1234, -567, degrees);
                const here = overlapOf(new Solid(one, OWN), new Solid(other, OWN));
                const there = overlapOf(new Solid(one, pose), new Solid(other, pose));
                expect(there).toBeCloseTo(here, 5);
            }),
            { seed: 6, numRuns: 100 },
        );
    });
});

describe('frames', () => {
    it('a cover seen from another lies where both say', () => {
        const pose = fc
            .tuple(
                fc.integer({ min: -900, max: 900 }),
                fc.integer({ min: -900, max: 900 }),
                fc.integer({ min: -360, max: 360 }),
            )
            .map(([x, y, degrees]) => poseAt(x, y, degrees));
        fc.assert(
            fc.property(pose, pose, (one, other) => {
                const point = { x: 37, y: 91 };
                const there = toFrame(one, toFrame(seenFrom(one, other), point));
                const same = toFrame(other, point);
                expect(there.x).toBeCloseTo(same.x, 6);
                expect(there.y).toBeCloseTo(same.y, 6);
            }),
            { seed: 8 },
        );
        expect(partIn(poseAt(10, 0, 90), { middle: { x: 5, y: 0 }, radius: 2 })).toMatchObject({ radius: 2 });
    });

    it('the edge of a round table curves away as a circle does', () => {
        expect(bottomAt(762, 0)).toBe(0);
        expect(bottomAt(762, 250)).toBeCloseTo(762 - Math.sqrt(762 ** 2 - 250 ** 2), 6);
        expect(bottomAt(undefined, 250)).toBe(0);
    });

    it('a round piece settled above others keeps its gap from each', () => {
        const round = placed.filter(({ shape }) => shape === 'round');
        fc.assert(
            fc.property(
                fc.array(round, { minLength: 1, maxLength: 6 }),
                fc.integer({ min: -200, max: 200 }),
                (others, x) => {
                    const y = lowestClear(x, 40, 10, others);
                    for (const other of others) {
                        const isBelow = y >= other.y;
                        const gap = Math.hypot(x - other.x, y - other.y) - 40 - other.length / 2;
                        expect(!isBelow || gap > 10 - 1e-6).toBe(true);
                    }
                },
            ),
            { seed: 9 },
        );
    });
});

const flat = (id: string, shape: 'fork' | 'knife' | 'spoon', length: number, width: number): PieceToPlace => ({
    ...{ id, name: id, label: id, shape, length, width, course: 0 },
});
const disc = (id: string, across: number): PieceToPlace => ({
    ...{ id, name: id, label: id, shape: 'round', length: across, width: across, course: -1 },
});
const PLATE = disc('service-plate', 254);

const distances: LayingDistances = {
    edge: 25.4,
    plateEdge: 25.4,
    pieceGap: 12.7,
    dessertGap: 40,
    waterGlassGap: 25.4,
    cupEdge: 50.8,
    coverWidth: 609.6,
    waterGlass: 'knife-tip',
    glassShape: 'row',
    napkin: 'left',
    butterSpreader: 'across',
    placeCard: 'above-plate',
    saltAndPepper: 'between-two',
    cupPlace: 'right',
};
const closer: LayingDistances = { ...distances, pieceGap: 1, dessertGap: 10, waterGlassGap: 10, napkin: 'on-plate' };

function cover(pairs: number, glasses: number): CoverToPlace {
    const row = (side: string, shape: 'fork' | 'knife'): PieceToPlace[] =>
        Array.from({ length: pairs }, (_, index) => flat(`${side}-${index + 1}`, shape, 190 + 10 * index, 24));
    return {
        servicePlate: PLATE,
        centre: 254,
        left: row('left', 'fork'),
        right: row('right', 'knife'),
        above: [],
        breadPlate: disc('bread-plate', 160),
        onBreadPlate: [flat('on-bread-plate-1', 'knife', 150, 16)],
        glasses: Array.from({ length: glasses }, (_, index) => disc(`glass-${index + 1}`, 80)),
        napkin: { ...flat('napkin', 'fork', 186, 93), shape: 'napkin' },
        brought: [],
        broughtGlasses: [],
    };
}

describe('covers on a table', () => {
    const widths = { coverWidth: 609.6, leastWidth: 508 };
    const onRound = (diameter: number, guests: number, pairs: number, glasses: number) => {
        const shape = { shape: 'round', width: diameter, depth: diameter } as const;
        const top = { ...shape, seats: placeSeats(shape, guests, 0, widths) };
        return layCovers({ cover: cover(pairs, glasses), distances, drawnTogether: closer, keptFree: 152.4 })(top);
    };

    it('never overlap where guests sit further apart than any cover is wide', () => {
        fc.assert(
            fc.property(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }), (pairs, glasses) => {
                const on = onRound(6000, 8, pairs, glasses);
                expect(on.overlaps).toEqual([]);
                expect(on.offTable).toEqual([]);
                expect(on.laid).toBe('as-the-house-lays');
            }),
            { seed: 1, numRuns: 16 },
        );
    });

    it('always overlap where plates alone need more of the table than there is', () => {
        // Fifteen plates of 254 mm whose middles stand on a circle of 610 mm: 3,830 mm of it for 3,810 of plates side by side, and chords are shorter than arcs.
        const { overlaps } = onRound(1524, 15, 1, 1);
        expect(overlaps.some(({ piece, other }) => piece === 'service-plate' && other === 'service-plate')).toBe(true);
        // Two plates whose middles are d apart lie on each other by 254 - d.
        const apart = 2 * (762 - 25.4 - 127) * Math.sin(Math.PI / 15);
        const plates = overlaps.find(({ piece, other }) => piece === 'service-plate' && other === 'service-plate');
        expect(plates!.by).toBeCloseTo(254 - apart, 3);
    });

    it('overlap no less where more guests sit', () => {
        const worst = (guests: number): number =>
            onRound(1676, guests, 2, 2).overlaps.reduce((sum, { by }) => sum + by, 0);
        const sums = [6, 7, 8, 9, 10, 11, 12].map(worst);
        expect(sums).toEqual(sums.toSorted((a, b) => a - b));
        expect(sums[0]).toBe(0);
        expect(sums.at(-1)).toBeGreaterThan(0);
    });

    it('lie on the table at every seat, whatever its shape, when there is room', () => {
        for (const shape of [
            { shape: 'rectangle', width: 3000, depth: 1200 },
            { shape: 'square', width: 1600, depth: 1600 },
            { shape: 'oval', width: 3200, depth: 1700 },
        ] as const) {
            const top = { ...shape, seats: placeSeats(shape, 6, 0, widths) };
            const on = layCovers({ cover: cover(2, 2), distances, drawnTogether: closer, keptFree: 0 })(top);
            expect([shape.shape, on.overlaps, on.offTable]).toEqual([shape.shape, [], []]);
        }
    });
});
