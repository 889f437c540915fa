/**
 * Where the pieces of a cover lie, against rows of table-service.md §3 to §5, read back from the compiled plan. Each check
 * declares the custom of its source.
 */
import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { course } from '../support/evening.js';

interface Placed {
    readonly id: string;
    readonly piece: string;
    readonly row: string;
    readonly brought?: true;
    readonly x: number;
    readonly y: number;
    readonly degrees: number;
    readonly length: number;
    readonly width: number;
}

interface OnTable {
    readonly laid: string;
    readonly centre: number;
    readonly pieces: readonly Pick<Placed, 'id' | 'x' | 'y'>[];
    readonly overlaps: readonly unknown[];
}

const MENU = `${course('soup', 'served in soup-plate warmed to 60 °C at 66 °C  eaten with soup-spoon')}
    ${course('fish', 'served on fish-plate warmed to 60 °C at 62 °C')}
    ${course('main', 'served on dinner-plate warmed to 60 °C at 62 °C  pour "Red" 100 ml into red-wine-glass at 17 °C, is full-red-wine { strength 13 % }')}
    ${course('dessert', 'served on dessert-plate at 8 °C')}
    bread from soup until main on bread-plate with butter-spreader { contains wheat }
    coffee after dessert { contains nothing }`;

function laid({ laying = '', menu = MENU, table = '', pieces = '' } = {}) {
    const text = `${pieces}
house "Saltmarsh Hall" { laying { limit: none  ${laying} } }
event "Lantern supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests 8 }
${table === '' ? '' : `room "Long gallery" 18 m by 11 m { table K: ${table} }`}
menu {
    ${menu}
}
`;
    const checked = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    const unread = checked.findings.filter(({ rule }) => rule === 'unreadable-text' || rule === 'unknown-name');
    expect([...unread.map(({ message }) => message), ...checked.broken]).toEqual([]);
    const { service } = planJson(checked) as unknown as {
        service: { covers: { geometry: { pieces: readonly Placed[]; onTables: readonly OnTable[] } }[] };
    };
    const { pieces: placed, onTables } = service.covers[0]!.geometry;
    const piece = (name: string): Placed => {
        const found = placed.find((each) => each.piece === name || each.id === name);
        expect(found, name).toBeDefined();
        return found!;
    };
    return { placed, piece, onTable: onTables[0]! };
}

const bottom = ({ y, length }: Placed): number => y - length / 2;
const top = ({ y, length }: Placed): number => y + length / 2;
const INCH = 25.4;

describe('from the table edge', () => {
    it.each([
        ['edge: 0.5 inch', 0.5, '3.11: ALLEN, LANS'],
        ['edge: 1 inch', 1, '3.14: NAVY, SILVER, BLUE and four more'],
        ['edge: 2 inch', 2, '3.16, 3.17: MODEL, IHM-REQ'],
    ])('pieces and plate with `%s` (table-service %s %s)', (laying, inches) => {
        const { placed, piece } = laid({ laying });
        const flatware = placed.filter(({ row, id }) => (row === 'left' || row === 'right') && id !== 'napkin');
        expect(flatware.length).toBeGreaterThan(4);
        for (const each of [...flatware, piece('service-plate')]) {
            expect(bottom(each), each.piece).toBeCloseTo(inches * INCH, 0);
        }
    });

    it('table-service 3.15 (LOWNEY): the plate alone at 1 1/2 inch', () => {
        const { piece } = laid({ laying: 'plate-edge: 1.5 inch' });
        expect(bottom(piece('service-plate'))).toBeCloseTo(1.5 * INCH, 0);
        expect(bottom(piece('dinner-fork'))).toBeCloseTo(INCH, 0);
    });

    it('table-service 3.25: cup and saucer about 2 inch; 5.26: right of the spoons', () => {
        const { piece } = laid();
        expect(bottom(piece('coffee-saucer'))).toBeCloseTo(2 * INCH, 0);
        expect(piece('coffee-saucer').x).toBeGreaterThan(piece('service-plate').length / 2);
        expect(piece('coffee-cup')).toMatchObject({ x: piece('coffee-saucer').x, brought: true });
    });

    it('table-service 3.18 (ROBERTS): at a round table the outer pieces move in to the edge, the inner one lies an inch in', () => {
        const { onTable, placed, piece } = laid({ table: 'round 72 inch, 6 seats', laying: 'napkin: on-plate' });
        const inner = onTable.pieces.find(({ id }) => id === 'left-2')!;
        expect(inner.y - piece('left-2').length / 2).toBeCloseTo(INCH, 0);
        for (const { id, x, y } of onTable.pieces) {
            const { row, length, width } = placed.find((each) => each.id === id)!;
            if (row === 'left' || row === 'right') {
                const corner = Math.abs(x) + width / 2;
                const edge = 36 * INCH - Math.sqrt((36 * INCH) ** 2 - corner ** 2);
                expect(y - length / 2, id).toBeGreaterThanOrEqual(edge - 0.1);
            }
        }
    });
});

describe('gaps', () => {
    const beside = ({ placed }: ReturnType<typeof laid>, row: string): Placed[] =>
        placed
            .filter((each) => each.row === row && !each.brought && each.id !== 'napkin')
            .toSorted((a, b) => Math.abs(a.x) - Math.abs(b.x));

    it.each([
        ['piece-gap: 0.5 inch', 0.5, '3.21: SLIDE'],
        ['piece-gap: 1 inch', 1, '3.21: UNATT'],
    ])('`%s` from the plate outward (table-service %s %s)', (laying, inches) => {
        const cover = laid({ laying });
        for (const row of ['left', 'right']) {
            let reach = cover.piece('service-plate').length / 2;
            for (const { x, width } of beside(cover, row)) {
                expect(Math.abs(x) - width / 2 - reach).toBeCloseTo(inches * INCH, 0);
                reach = Math.abs(x) + width / 2;
            }
        }
    });

    it('table-service 3.19 (BLUE): between knife and fork there is room for the largest plate used', () => {
        // Without a service plate the dinner plate is the largest.
        const cover = laid({ laying: 'service-plate: not-used' });
        const [fork] = beside(cover, 'left');
        const [knife] = beside(cover, 'right');
        const dinnerPlate = cover.piece('dinner-plate');
        expect(knife!.x - knife!.width / 2 - (fork!.x + fork!.width / 2)).toBeGreaterThan(dinnerPlate.length);
        expect(dinnerPlate.x).toBe(0);
    });

    it('table-service 3.20 (LANS): close, and not touching, however close the house lays', () => {
        const { onTable } = laid({ laying: 'piece-gap: 1 mm', table: 'rectangle 96 inch by 48 inch, 6 seats' });
        expect(onTable.overlaps).toEqual([]);
    });

    it.each([
        ['water-glass-gap: 1 inch', INCH, '3.23: ETS, UNATT'],
        ['water-glass-gap: 2 cm', 20, '3.24: UNATT (hotel)'],
    ])('the water glass above the tip of the knife with `%s` (table-service %s %s)', (laying, gap) => {
        const { piece } = laid({ laying });
        const glass = piece('water-glass');
        expect(glass.y - glass.length / 2 - top(piece('dinner-knife'))).toBeCloseTo(gap, 0);
        expect(glass.x).toBeCloseTo(piece('dinner-knife').x, 0);
    });

    it('table-service 3.24: the dessert fork 4 cm above the plate', () => {
        const { piece } = laid({ laying: 'dessert-gap: 4 cm' });
        const fork = piece('dessert-fork');
        expect(fork.y - fork.width / 2 - top(piece('service-plate'))).toBeCloseTo(40, 0);
    });
});

describe('places', () => {
    it('table-service 5.8: the bread plate at the tips of the forks, upper left', () => {
        const { piece } = laid();
        const plate = piece('bread-plate');
        expect(bottom(plate)).toBeGreaterThan(Math.max(top(piece('dinner-fork')), top(piece('fish-fork'))) - 1);
        expect(plate.x).toBeLessThan(-plate.length / 2);
    });

    it.each([
        ['across', 90, '2.17, 2.22: parallel to the edge, handle to the right'],
        ['edge-left', 0, '2.19: upright'],
        ['diagonal', 45, '2.18'],
    ])('the spreader lies %s (table-service %s %s)', (custom, degrees) => {
        expect(laid({ laying: `butter-spreader: ${custom}` }).piece('butter-spreader').degrees).toBe(degrees);
    });

    it('table-service 5.23: dessert spoon with its bowl to the left, fork with its tines to the right; 5.24: the fork nearer', () => {
        const { piece } = laid();
        expect(piece('dessert-spoon').degrees).toBe(90);
        expect(piece('dessert-fork').degrees).toBe(270);
        expect(piece('dessert-fork').y).toBeLessThan(piece('dessert-spoon').y);
    });

    it('table-service 4.2, 4.5: glasses to the right of the water, in order of use', () => {
        const { placed } = laid();
        const glasses = placed.filter(({ row }) => row === 'glasses');
        expect(glasses.map(({ piece }) => piece)).toEqual(['water-glass', 'red-wine-glass']);
        expect(glasses[1]!.x).toBeGreaterThan(glasses[0]!.x);
    });

    it('table-service 4.2 (LOWNEY): the water glass above the plate, right of its middle', () => {
        const { piece } = laid({ laying: 'water-glass: above-plate' });
        const glass = piece('water-glass');
        expect(glass.x).toBeGreaterThan(0);
        expect(glass.x).toBeLessThan(piece('service-plate').length / 2);
        expect(glass.y).toBeGreaterThan(top(piece('service-plate')));
    });

    it('table-service 4.3 (HWL): glasses behind the forks', () => {
        const glass = laid({ laying: 'water-glass: behind-forks' }).piece('water-glass');
        expect(glass.x).toBeLessThan(0);
    });

    it.each([
        ['left', '5.1'],
        ['on-plate', '5.2'],
    ])('the napkin %s (table-service %s)', (custom) => {
        const { piece } = laid({ laying: `napkin: ${custom}` });
        const forks = Math.min(piece('fish-fork').x, piece('dinner-fork').x);
        const napkin = piece('napkin');
        if (custom === 'left') {
            expect(napkin.x + napkin.width / 2).toBeLessThan(forks);
            expect(napkin.degrees).toBe(piece('dinner-fork').degrees);
        } else {
            expect(napkin).toMatchObject({ x: 0, y: piece('service-plate').y });
        }
    });

    it.each([
        ['above-plate', '8.10: UFV-A'],
        ['on-napkin', '8.11: ALLENCB'],
        ['in-front-of-plate', '8.11: MIL'],
    ])('the place card %s (table-service %s)', (custom) => {
        const { piece } = laid({ laying: `place-card: ${custom}` });
        const card = piece('place-card');
        expect(card.length).toBeCloseTo(3 * INCH);
        expect(card.width).toBeCloseTo(2 * INCH);
        if (custom === 'on-napkin') {
            expect(card).toMatchObject({ x: piece('napkin').x, y: piece('napkin').y });
        } else {
            const isAbove = card.y > top(piece('service-plate'));
            expect(isAbove).toBe(custom === 'above-plate');
        }
    });

    it('table-service 3.2 with quantities §7.2: covers 15 inch deep leave 6 inch of 36, and not of 30', () => {
        // Water at the tip of the knife reaches about that far in: a cover without bread plate and dessert pieces.
        const menu = course('main', 'served on dinner-plate warmed to 60 °C at 62 °C');
        const { onTable, piece } = laid({ menu, table: 'rectangle 72 inch by 36 inch, 6 seats' });
        const glass = piece('water-glass');
        expect(glass.y + glass.length / 2).toBeCloseTo(15 * INCH, -1);
        expect(onTable.centre).toBeGreaterThan(6 * INCH);
        expect(laid({ menu, table: 'rectangle 72 inch by 30 inch, 6 seats' }).onTable.centre).toBeLessThan(6 * INCH);
    });
});

describe('on real tables', () => {
    it('three forks, three knives and the napkin just fit into 24 inch (table-service 3.1, 3.3)', () => {
        const menu = ['fish', 'main', 'salad']
            .map((kind) => course(kind, `served on ${kind === 'salad' ? 'salad' : 'dinner'}-plate at 8 °C`))
            .join('\n');
        const { onTable } = laid({ menu, table: 'rectangle 96 inch by 48 inch, 8 seats' });
        expect(onTable.overlaps).toEqual([]);
        expect(
            laid({ menu, table: 'rectangle 96 inch by 48 inch, 10 seats', laying: 'cover-width: 20 inch' }).onTable
                .laid,
        ).toBe('drawn-together');
    });

    it.each([
        [60, 8, true, 'table-service 3.43, 3.45'],
        [66, 8, true, 'table-service 3.44'],
        [72, 10, true, 'quantities §7.1 (RUSH)'],
        [60, 12, false, 'beyond every published number'],
    ])('%s inch round seats %s for soup and main with bread and wine: %s (%s)', (inches, seats, fits) => {
        const menu = `${course('soup', 'served in soup-plate warmed to 60 °C at 66 °C')}
            ${course('main', 'served on dinner-plate warmed to 60 °C at 62 °C  pour "Red" 100 ml into red-wine-glass at 17 °C, is full-red-wine { strength 13 % }')}
            bread from soup until main on bread-plate with butter-spreader { contains wheat }`;
        const { onTable } = laid({ menu, table: `round ${inches} inch, ${seats} seats` });
        const worst = Math.max(0, ...(onTable.overlaps as { by: number }[]).map(({ by }) => by));
        // Plates of one sort differ by half an inch (table-service 3.53).
        expect(worst <= INCH / 2).toBe(fits);
    });
});
