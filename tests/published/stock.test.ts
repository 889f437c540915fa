/**
 * Pieces, racks and supplies against quantities.md §2.6, §3, §4, §5 and the worked examples of §14.1 and §14.2, through the plan and
 * the functions it is made with. Not expressed by the product, and left out: purchase yields (Q20 but for its rounding, Q22),
 * dishers (Q23), cans of condensed soup (the second half of Q19), factors of §4 beyond what a house keeps of linen.
 */
import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { standardCupboard } from '../../packages/language/src/cupboard/standard.js';
import { racksPerHour } from '../../packages/language/src/service/stock/dish-room.js';
import { lotsOf, parOf, up } from '../../packages/language/src/service/stock/lots.js';
import { brew, packsFor } from '../../packages/language/src/service/supplies/supplies.js';

const FLUID_OUNCE = 29.5735295625;
const GALLON = 128 * FLUID_OUNCE;

interface Compiled {
    readonly service: {
        readonly pull: readonly {
            readonly piece: string;
            readonly pull: number;
            readonly racks?: { readonly rack: string; readonly each: number; readonly count: number };
        }[];
        readonly stock: {
            readonly dishRoom?: { readonly racksPerHour: number };
            readonly racks: number;
            readonly hours?: number;
            readonly linen: readonly { readonly piece: string; readonly inUse: number; readonly keep: number }[];
        };
        readonly supplies: readonly {
            readonly what: string;
            readonly amount: { readonly grams?: number; readonly millilitres?: number; readonly count?: number };
            readonly packs?: { readonly count: number; readonly each: { readonly millilitres?: number } };
        }[];
    };
}

interface Evening {
    readonly guests: string;
    readonly laying?: string;
    readonly house?: string;
    readonly menu: string;
    readonly items?: string;
}

function plan({ guests, laying = '', house = '', menu, items = '' }: Evening): Compiled['service'] {
    const text = `house "Saltmarsh Hall" { laying { ${laying} } ${house} }
event "Lantern supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests ${guests} }
${items}
menu { ${menu} }
`;
    const checked = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    const unread = checked.findings.filter(({ rule }) => /^(unreadable-text|unknown-name|missing-unit)$/.test(rule));
    expect(unread.map(({ message }) => message)).toEqual([]);
    expect(checked.broken).toEqual([]);
    return (planJson(checked) as unknown as Compiled).service;
}

const dish = (kind: string, clauses: string): string => `course ${kind} { lasts 15 min  contains nothing  ${clauses} }`;

describe('what a house keeps (quantities 4)', () => {
    it('Q1 (trade catalogue range): dozens for 100 seats by the restaurant factors', () => {
        const factors = [3.5, 2, 3.5, 1.5, 1.5, 3, 2.5, 2.5, 2, 1, 0.5];
        const dozens = factors.map((factor) => lotsOf(parOf(100, factor), 12));
        expect(dozens).toEqual([30, 17, 30, 13, 13, 25, 21, 21, 17, 9, 5]);
        expect(dozens.reduce((sum, each) => sum + each, 0)).toBe(201);
    });

    it('Q2 (PENF): 40 seats and four teaspoons a seat', () => {
        expect(parOf(40, 4)).toBe(160);
        expect(lotsOf(parOf(40, 4), 12)).toBe(14);
    });

    it('caterers’ dozens: 144 for 100 people is 12 dozen, 216 teaspoons 18', () => {
        expect([lotsOf(parOf(100, 1.44), 12), lotsOf(parOf(100, 2.16), 12)]).toEqual([12, 18]);
    });

    it('Q3 (trade catalogue range): 25 cloths a day, three par: 75 cloths; four napkins a cloth: 300', () => {
        // Ten tables turned over two and a half times are 25 cloths a day: here, 25 tables once.
        const { stock } = plan({
            guests: '100',
            laying: 'linen-par: 3',
            items: 'room "Hall" 60 m by 40 m { table T1 to T25: square 36 inch, 4 seats }',
            menu: dish('main', 'served on dinner-plate at 60 °C'),
        });
        const cloths = stock.linen.filter(({ piece }) => piece.includes('cloth'));
        expect(cloths.reduce((sum, { inUse }) => sum + inUse, 0)).toBe(25);
        expect(cloths.reduce((sum, { keep }) => sum + keep, 0)).toBe(75);
        expect(stock.linen.find(({ piece }) => piece === 'napkin')).toMatchObject({ inUse: 4 * 25, keep: 300 });
    });

    it('Q27 and Q28 (RUSH, CQN): ten pieces beside the plate; 200 guests and 5 % more places', () => {
        const { pull } = plan({
            guests: '200 set for 210',
            laying: 'dessert: above  service-plate: not-used',
            menu: `bread from appetizer until main on bread-plate with butter-spreader { contains wheat }
                ${dish('appetizer', 'served on salad-plate at 8 °C  eaten with salad-fork and salad-knife')}
                ${dish('main', 'served on dinner-plate at 60 °C  eaten with dinner-fork and dinner-knife  pour "White" 100 ml into white-wine-glass, is white-wine  pour "Red" 100 ml into red-wine-glass, is red-wine')}
                ${dish('dessert', 'served on dessert-plate at 8 °C  eaten with dessert-fork and dessert-spoon')}`,
        });
        const count = (names: RegExp): number =>
            pull.filter(({ piece }) => names.test(piece)).reduce((sum, line) => sum + line.pull, 0);
        const flatware = /^(butter-spreader|salad-(fork|knife)|dinner-(fork|knife)|dessert-(fork|spoon))$/;
        expect(pull.filter(({ piece }) => flatware.test(piece))).toHaveLength(7);
        expect(count(flatware)).toBe(1470);
        expect(count(/^bread-plate$/)).toBe(210);
        expect(count(/-wine-glass$/)).toBe(420);
        // Overset covers places, not food: no plate is cooked for.
        expect(count(/^dinner-plate$/)).toBe(200);
    });
});

describe('coffee, water, ice (quantities 2.6)', () => {
    const coffee = (share: number) =>
        plan({
            guests: '500',
            laying: `coffee-share: ${share} %  coffee-cups-each: 1  coffee-cup-pour: 6.4 fl oz  coffee-batch: 64 fl oz`,
            menu: `${dish('dessert', 'served on dessert-plate at 8 °C')} coffee after dessert, on request { contains nothing }`,
        }).supplies.find(({ what }) => what === 'coffee')!;

    it.each([
        [60, 15],
        [20, 5],
        [10, 2.5],
    ])('Q4 (UFH): 500 attendees, %s %% of them, twenty cups a gallon: %s gallons', (share, gallons) => {
        const { packs } = coffee(share);
        expect((packs!.count * packs!.each.millilitres!) / GALLON).toBeCloseTo(gallons, 3);
    });

    it('Q4 (UFH): a quarter of 500 take a soda', () => {
        expect(up(0.25 * 500)).toBe(125);
    });

    it('Q5: 100 people, five cups of 8 oz, are 31.25 gallons', () => {
        expect(packsFor(100, 5 * 8 * FLUID_OUNCE, GALLON).amount / GALLON).toBeCloseTo(31.25, 9);
    });

    it('Q6 (KSU): 100 cups of punch at 21 a gallon are 5 gallons', () => {
        expect(brew(100, GALLON / 21, GALLON).batches).toBe(5);
    });

    it('Q29 (ICEG): 100 guests, a pound of ice each, bags of 22 lb: five bags', () => {
        const { supplies } = plan({
            guests: '100',
            laying: 'ice-per-guest: 1 lb  ice-bag: 22 lb',
            menu: dish('main', 'served on dinner-plate at 60 °C'),
        });
        expect(supplies.find(({ what }) => what === 'ice')?.packs?.count).toBe(5);
    });

    it('HIREA: 1.5 lb of ice a guest, 2.5 lb where bottles are chilled in it', () => {
        const pounds = (bath: string): number =>
            plan({
                guests: '100',
                laying: 'ice-per-guest: 1.5 lb  ice-for-bottles: 1 lb',
                menu: dish(
                    'main',
                    `served on dinner-plate at 60 °C  pour "White" 100 ml into white-wine-glass at 8 °C, is white-wine { contains nothing  chilled in ${bath} }`,
                ),
            }).supplies.find(({ what }) => what === 'ice')!.amount.grams! / 45_359.237;
        expect(pounds('fridge')).toBeCloseTo(1.5, 3);
        expect(pounds('ice-water')).toBeCloseTo(2.5, 3);
    });

    it('Q8 (CAMP): 200 beers in cases of 24 are nine cases', () => {
        // Printed as eight: 8.33 was rounded down, and eight guests would go without. Bottles in the same table are rounded up.
        expect(200 / 24).toBeCloseTo(8.33, 2);
        expect(lotsOf(50 * 4, 24)).toBe(9);
    });
});

describe('portions (quantities 3)', () => {
    it('Q19 (AFRS-P): 100 portions of 8 oz of soup are 6.25 gallons', () => {
        const { supplies } = plan({
            guests: '100',
            menu: dish('soup', 'served in soup-bowl at 64 °C, portion 8 fl oz'),
        });
        expect(supplies.find(({ what }) => what === 'dish')!.amount.millilitres! / GALLON).toBeCloseTo(6.25, 3);
    });

    it.each([
        [8, 30],
        [6, 40],
        [4, 60],
        [2, 120],
    ])(
        'Q24 (trade catalogue range): a pan of 240 oz holds portions of %s oz for %s, and no more',
        (portion, guests) => {
            expect(lotsOf(guests * portion, 240)).toBe(1);
            expect(lotsOf((guests + 1) * portion, 240)).toBe(2);
        },
    );

    it('ALM and TOH: two rolls a guest or 1.44; butter 3 lb for a hundred', () => {
        const bread = (laying: string) =>
            plan({
                guests: '100',
                laying,
                menu: `bread from main { contains wheat  butter { contains milk } } ${dish('main', 'served on dinner-plate at 60 °C')}`,
            }).supplies;
        const rolls = (laying: string) => bread(laying).find(({ what }) => what === 'bread')?.amount.count;
        expect([rolls('bread-each: 2'), rolls('bread-each: 1.44')]).toEqual([200, 144]);
        const butter = bread('butter-each: 0.48 oz').find(({ what }) => what === 'butter')?.amount.grams;
        expect(butter! / 453.59237).toBeCloseTo(3, 2);
    });

    it('purchases round up (FBG): 3.28 lb to 3.5 lb by halves (Q20), 27.6 cans to 28 (Q21)', () => {
        expect(lotsOf(2 / 0.61, 0.5) * 0.5).toBe(3.5);
        expect(lotsOf(3 * 4.6 * 2, 1)).toBe(28);
    });
});

describe('warewashing (quantities 5)', () => {
    it('R1 (FES): a cycle of two minutes is 24 racks an hour, with 30 s to load and unload, and not 30', () => {
        expect(racksPerHour(120)).toBe(24);
        const { stock } = plan({
            guests: '10',
            house: 'washing { cycle 2 min }',
            menu: dish('main', 'served on dinner-plate at 60 °C'),
        });
        expect(stock.dishRoom?.racksPerHour).toBe(24);
    });

    it.each([
        [45, 48],
        [60, 40],
        [90, 30],
        [180, 17.1],
    ])('R2 (FES): %s s are %s racks an hour', (cycle, racks) => {
        expect(racksPerHour(cycle)).toBeCloseTo(racks, 1);
    });

    it('R3: 200 guests, twelve pieces each, twenty a rack: 120 racks, three hours at 40 an hour', () => {
        const plates = Array.from({ length: 12 }, (_, index) => `plate-${index + 1}`);
        const { pull, stock } = plan({
            guests: '200',
            house: 'washing { 40 racks per hour }',
            items: plates.map((name) => `plate ${name} is dinner-plate`).join('\n'),
            menu: plates
                .map(
                    (name) => `course main "On ${name}" { lasts 15 min  contains nothing  served on ${name} at 60 °C }`,
                )
                .join('\n'),
        });
        const racks = pull.filter(({ piece }) => plates.includes(piece)).map((line) => line.racks);
        expect(racks.every((rack) => rack?.rack === 'plate-rack' && rack.each === 20)).toBe(true);
        const total = racks.reduce((sum, rack) => sum + rack!.count, 0);
        expect(total).toBe(120);
        expect(total / 40).toBe(3);
        // The plan's hours are those of everything pulled.
        expect(stock.hours).toBeCloseTo(stock.racks / 40, 2);
    });

    it('compartments take no glass wider than 500 mm by their number allows (hard bound)', () => {
        const divisions: Record<string, number> = { 9: 3, 16: 4, 20: 5, 25: 5, 36: 6, 49: 7 };
        for (const [compartments, across] of Object.entries(divisions)) {
            const rack = standardCupboard().pieces.get(`glass-rack-${compartments}`)!;
            expect(rack.measures.compartments!.low).toBe(Number(compartments));
            expect(rack.measures.across!.high).toBeLessThan(500 / across);
        }
    });

    it('a glass of 3.25 inch fits a rack of 25 and not one of 36 (STEM, §8)', () => {
        const { pull } = plan({
            guests: '50',
            items: 'glass stem-glass is red-wine-glass { across 3.25 inch }',
            menu: dish('main', 'served on dinner-plate at 60 °C  pour "Red" 100 ml into stem-glass, is red-wine'),
        });
        expect(pull.find(({ piece }) => piece === 'stem-glass')?.racks).toMatchObject({
            rack: 'glass-rack-25',
            count: 2,
        });
    });
});
