/**
 * Tables, ways and cloths against rows of quantities.md §7 and §14.2 and of table-service.md §3c, read back from the compiled
 * plan and the findings. Inches in the rows, millimetres in the plan.
 */
import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';

interface Table {
    readonly table: string;
    readonly seats: readonly { readonly edge: number; readonly degrees: number }[];
    readonly cloth?: {
        readonly piece?: string;
        readonly drop?: number;
        readonly needed: { readonly across?: number; readonly length?: number; readonly width?: number };
    };
}

interface Room {
    readonly tables: readonly Table[];
    readonly clearances: Readonly<Record<string, number>>;
    readonly guests: { readonly most: number };
    readonly seats: { readonly accessibleWanted: number };
    readonly cloths: { readonly pull: readonly { readonly piece: string; readonly count: number }[] };
}

interface Setting {
    readonly tables: string;
    readonly size?: string;
    readonly laying?: string;
    readonly own?: string;
    readonly guests?: number;
    /** Declared before the house. */
    readonly pieces?: string;
}

function laidOut({ tables, size = '60 m by 40 m', laying = '', own = '', guests = 2, pieces = '' }: Setting) {
    const text = `${pieces}
house "Saltmarsh Hall" { ${own} laying { ${laying} } }
event "Lantern supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests ${guests} }
room "Long gallery" ${size} { ${tables} }
menu { course main "Lamb" { served on dinner-plate warmed to 60 °C at 60 °C  lasts 30 min  contains nothing } }
`;
    const checked = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    const unread = checked.findings.filter(({ rule }) => rule === 'unreadable-text' || rule === 'unknown-name');
    expect([...unread.map(({ message }) => message), ...checked.broken]).toEqual([]);
    const { service } = planJson(checked) as unknown as { service: { room: Room } };
    return {
        room: service.room,
        found: (rule: string) => checked.findings.filter((finding) => finding.rule === rule),
    };
}

const inches = (millimetres: number | undefined): number => Math.round((millimetres ?? Number.NaN) / 0.254) / 100;
const round = (diameter: number, seats: number): string => `table K: round ${diameter} inch, ${seats} seats`;

describe('the edge of a round table for each guest (quantities §7.1)', () => {
    it.each([
        [48, { 6: 25.13, 7: 21.54, 8: 18.85, 9: 16.76, 10: 15.08 }],
        [54, { 6: 28.27, 7: 24.24, 8: 21.21, 9: 18.85, 10: 16.96 }],
        [60, { 6: 31.42, 7: 26.93, 8: 23.56, 9: 20.94, 10: 18.85, 11: 17.14 }],
        [66, { 6: 34.56, 7: 29.62, 8: 25.92, 9: 23.04, 10: 20.73, 11: 18.85, 12: 17.28 }],
        [72, { 6: 37.7, 7: 32.31, 8: 28.27, 9: 25.13, 10: 22.62, 11: 20.56, 12: 18.85 }],
        [84, { 6: 43.98, 7: 37.7, 8: 32.99, 9: 29.32, 10: 26.39, 11: 23.99, 12: 21.99 }],
    ])('%s inch across', (diameter, row) => {
        for (const [seats, edge] of Object.entries(row)) {
            const { room } = laidOut({ tables: round(diameter, Number(seats)) });
            expect(inches(room.tables[0]!.seats[0]!.edge), `${seats} guests`).toBeCloseTo(edge, 1);
        }
    });

    it('R11 (C60): 60 inch with eight and with ten, and what is said of it', () => {
        expect(laidOut({ tables: round(60, 8) }).found('cover-too-narrow')).toEqual([]);
        const [ten] = laidOut({ tables: round(60, 10) }).found('cover-too-narrow');
        expect(ten).toMatchObject({ severity: 'error' });
        expect(ten!.message).toContain('18.85 inch');
        const [nine] = laidOut({ tables: round(60, 9) }).found('cover-too-narrow');
        expect(nine).toMatchObject({ severity: 'warning' });
        expect(nine!.message).toContain('20.94 inch');
    });

    it('METRIC (table-service 3.9): a house that wants 580 mm is content with 72 inch and ten in no case, with 574 mm it is', () => {
        expect(
            laidOut({ tables: round(72, 10), laying: 'close-cover-width: 580 mm' }).found('cover-too-narrow'),
        ).toHaveLength(1);
        expect(
            laidOut({ tables: round(72, 10), laying: 'close-cover-width: 574 mm' }).found('cover-too-narrow'),
        ).toEqual([]);
    });

    it.each([
        ['round 48 inch', 6, 'HIREC'],
        ['round 60 inch', 8, 'RUSH, NJS, BIZ, PATASS'],
        ['rectangle 72 inch by 30 inch', 6, 'BIZ'],
        ['rectangle 96 inch by 30 inch', 8, 'BIZ'],
        ['square 60 inch', 8, 'NJS'],
    ])('%s seats %s where the plan does not say (%s)', (shape, seats) => {
        expect(laidOut({ tables: `table K: ${shape}` }).room.tables[0]!.seats).toHaveLength(seats);
    });

    it.each([
        ['72 inch by 30 inch', 8, 24],
        ['96 inch by 30 inch', 10, 24],
    ])('%s seats %s with ends, %s inch along the sides (NJS)', (size, seats, along) => {
        const { room } = laidOut({ tables: `table K: rectangle ${size}, ${seats} seats` });
        const sides = room.tables[0]!.seats.filter(({ degrees }) => degrees % 180 === 90);
        expect(sides).toHaveLength(seats - 2);
        expect(sides.map(({ edge }) => inches(edge))).toEqual(sides.map(() => along));
    });

    it('R12 (TSS): places of 25 inch, ends used, six and eight guests', () => {
        // The row's 29 inch for both ends, of which each takes half.
        const laying = 'cover-width: 25 inch  cover-depth: 14.5 inch  close-cover-width: 30 inch';
        for (const [guests, length] of [
            [6, 79],
            [8, 104],
            [10, 129],
        ] as const) {
            const [finding] = laidOut({
                tables: `table K: rectangle ${length - 30} inch by 36 inch, ${guests} seats`,
                laying,
            }).found('cover-too-narrow');
            expect(finding!.hint).toContain(`${guests} guests, one at each end, take ${length} inch of length`);
        }
    });
});

describe('ways between tables (quantities §7.2, table-service §3c)', () => {
    /** Whether two round tables of 60 inch, their edges so far apart, are too near. */
    const tooNear = (apart: string, laying = ''): boolean => {
        const [value = '', unit = ''] = apart.split(' ');
        const millimetres = Number(value) * (unit === 'inch' ? 25.4 : 1);
        const tables = `table A: round 60 inch, 8 seats, at 10 m by 10 m
            table B: round 60 inch, 8 seats, at ${10000 + 1524 + millimetres} mm by 10 m`;
        return laidOut({ tables, laying }).found('aisle-too-narrow').length > 0;
    };

    it.each([
        ['60 inch', '59 inch', '', 'C60: 18 + 24 + 18'],
        ['72 inch', '71 inch', 'aisle-width: 36 inch', 'table-service 3.40, IHM-SPACE: two chairs and 36 inch'],
        ['1350 mm', '1340 mm', 'chair-depth: 450 mm  aisle-width: 450 mm', 'table-service 3.42, METRIC'],
        ['66 inch', '65 inch', 'aisle-width: 30 inch', 'quantities §7.2: service aisle 30 + 36'],
    ])('%s between table edges is enough, %s is not (%s %s)', (enough, less, laying) => {
        expect(tooNear(enough, laying)).toBe(false);
        expect(tooNear(less, laying)).toBe(true);
    });

    it('table-service 3.43 (PATASS): 60 inch tables 12 feet from middle to middle', () => {
        expect(tooNear('84 inch')).toBe(false);
    });

    it('24 inch from the edge to the wall is enough, 23 is not (quantities §7.2: 18 + 6)', () => {
        const atWall = (inchesFromWall: number): number =>
            laidOut({
                tables: `table A: round 60 inch, 8 seats, at 10 m by ${762 + inchesFromWall * 25.4} mm`,
            }).found('aisle-too-narrow').length;
        expect([24, 23].map(atWall)).toEqual([0, 1]);
    });

    it('table-service 3.41 (IHM-SPACE): 36 inch from chair back to wall', () => {
        const atWall = (inchesFromWall: number): number =>
            laidOut({
                tables: `table A: round 60 inch, 8 seats, at 10 m by ${762 + inchesFromWall * 25.4} mm`,
                laying: 'wall-gap: 36 inch',
            }).found('aisle-too-narrow').length;
        expect([54, 53].map(atWall)).toEqual([0, 1]);
    });
});

describe('how many a room is for, and places for wheelchairs (quantities §7.3, §14.2)', () => {
    it.each([
        ['R18', '40 ft by 28 ft', 'floor-per-guest: 20 sq ft', 56],
        ['R19', '60 ft by 50 ft', '', 200],
        ['7 sq ft, the ceiling (IBC 1004.2)', '10 ft by 7 ft', 'floor-per-guest: 7 sq ft', 10],
    ])('%s: %s', (_, size, laying, most) => {
        const tables = 'table K: round 60 inch, 8 seats';
        expect(laidOut({ tables, size, laying }).room.guests.most).toBe(most);
        expect(laidOut({ tables, size, laying, guests: most }).found('room-too-full')).toEqual([]);
        expect(laidOut({ tables, size, laying, guests: most + 1 }).found('room-too-full')).toHaveLength(1);
    });

    it.each([
        [1, 20],
        [2, 21],
        [2, 40],
        [3, 41],
        [5, 84],
        [5, 100],
    ])(
        '%s of %s seats are accessible: five in a hundred, the next whole number (ADA 226.1, 104.2)',
        (wanted, seats) => {
            const tables = `table K: rectangle 59 m by 30 inch, ${seats} seats, 1 accessible`;
            const { room, found } = laidOut({ tables });
            expect(room.seats.accessibleWanted).toBe(wanted);
            expect(found('too-few-accessible-places')).toHaveLength(wanted > 1 ? 1 : 0);
        },
    );

    it('R21 (KENT): 31 inch from the route, 29 where a chair goes 19 inch under the table', () => {
        const inset = (laying: string): number =>
            inches(laidOut({ tables: round(60, 8), laying }).room.clearances.wheelchair);
        expect(inset('')).toBe(31);
        expect(inset('wheelchair-under-table: 19 inch')).toBe(29);
    });
});

describe('cloths (quantities §7.4, table-service 3.26–3.35)', () => {
    const clothOf = (setting: Setting) => laidOut(setting).room.tables[0]!.cloth!;
    const needed = (setting: Setting): number[] => {
        const { across, length, width } = clothOf(setting).needed;
        return [across, length, width].flatMap((size) => (size === undefined ? [] : [inches(size)]));
    };

    it('R13 (HIREC): 60 inch round with a drop of 15 inch takes 90', () => {
        const setting = { tables: round(60, 8), laying: 'cloth-drop: 15 inch' };
        expect(needed(setting)).toEqual([90]);
        expect(clothOf(setting).piece).toBe('round-cloth-90');
    });

    it('R15: 30 by 72 with a drop of 12 inch takes 54 by 96', () => {
        const setting = { tables: 'table K: rectangle 72 inch by 30 inch, 6 seats', laying: 'cloth-drop: 12 inch' };
        expect(needed(setting)).toEqual([96, 54]);
        expect(clothOf(setting).piece).toBe('cloth-54-by-96');
    });

    it('R16: 36 inch round to the floor takes 96; of 90, 108 and 120 the 108', () => {
        const setting = {
            tables: round(36, 4),
            laying: 'cloth-drop: floor',
            own: 'own 5 round-cloth-90, 5 round-cloth-108, 5 round-cloth-120',
        };
        expect(needed(setting)).toEqual([96]);
        expect(clothOf(setting).piece).toBe('round-cloth-108');
    });

    it.each([
        [36, 96],
        [48, 108],
        [54, 114],
        [60, 120],
    ])('table-service 3.35 (WEDD): %s inch to the floor takes %s', (table, cloth) => {
        expect(needed({ tables: round(table, 4), laying: 'cloth-drop: floor' })).toEqual([cloth]);
    });

    it.each([
        [70, { 30: 20, 36: 17, 42: 14, 48: 11, 54: 8, 60: 5 }],
        [78, { 30: 24, 36: 21, 42: 18, 48: 15, 54: 12, 60: 9, 66: 6 }],
        [90, { 30: 30, 36: 27, 42: 24, 48: 21, 54: 18, 60: 15, 66: 12, 72: 9 }],
        [108, { 48: 30, 54: 27, 60: 24, 66: 21, 72: 18 }],
        [120, { 60: 30, 66: 27, 72: 24 }],
        [132, { 72: 30 }],
    ])('a round cloth of %s inch hangs as printed', (cloth, row) => {
        for (const [table, drop] of Object.entries(row)) {
            const setting = { tables: round(Number(table), 4), own: `own 9 round-cloth-${cloth}` };
            expect(inches(clothOf(setting).drop), `on ${table} inch`).toBe(drop);
        }
    });

    it.each([
        ['72 inch by 30 inch', 'cloth-60-by-102', 15],
        ['72 inch by 30 inch', 'cloth-90-by-132', 30],
        ['96 inch by 30 inch', 'cloth-60-by-126', 15],
        ['96 inch by 30 inch', 'cloth-90-by-156', 30],
    ])('on %s a %s hangs %s inch (HIREC)', (size, cloth, drop) => {
        const tables = `table K: rectangle ${size}, 6 seats`;
        expect(inches(clothOf({ tables, own: `own 9 ${cloth}` }).drop)).toBe(drop);
    });

    it('60 inch round with a square of 85 inch hangs 12.5 in the middle of a side (D)', () => {
        const pieces = 'linen topper is tablecloth { length 85 inch  width 85 inch }';
        expect(inches(clothOf({ tables: round(60, 8), pieces, own: 'own 9 topper' }).drop)).toBe(12.5);
    });

    it('76 cm square with 137 cm hangs 30.5 cm (FBNO)', () => {
        const pieces = 'linen small-cloth is tablecloth { length 137 cm  width 137 cm }';
        expect(clothOf({ tables: 'table K: square 76 cm, 2 seats', pieces, own: 'own 9 small-cloth' }).drop).toBe(305);
    });

    it('table-service 3.30 (MORTON): half-way to the floor is half the height of the table', () => {
        expect(needed({ tables: round(60, 8), laying: 'cloth-drop: half-way' })).toEqual([90]);
    });

    it('counts the cloths to pull: one a table, more on a long row', () => {
        const { room } = laidOut({
            tables: 'table T1 to T3: round 60 inch, 8 seats  table R: row of 3 rectangle 72 inch by 30 inch, 18 seats',
            own: 'own 20 round-cloth-90, 20 cloth-60-by-126',
        });
        // 216 + 24 inch of cloth, each 126 lying 150 mm over the next: two reach 246 inch.
        expect(room.cloths.pull).toEqual([
            { piece: 'cloth-60-by-126', count: 2 },
            { piece: 'round-cloth-90', count: 3 },
        ]);
    });
});
