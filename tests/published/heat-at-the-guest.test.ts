/**
 * The heat section through the plan itself: what a chef writes, with a run sheet made by hand, against temperature.md.
 * Worked examples W14 to W16 (rules S4 and S7), P4, P5 and P11, the answers of §13 and the cautions of §12.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check, type Checked } from '../../packages/language/src/check.js';
import { filesInMemory } from '../../packages/language/src/plan/files.js';
import { coolingLimits, judgeCooling } from '../../packages/language/src/service/heat/cooling.js';
import { heatOf, heatOfFacts } from '../../packages/language/src/service/heat/heat.js';
import type { DishHeat, Heat } from '../../packages/language/src/service/heat/types.js';
import { isWithinTime, offControlLimit } from '../../packages/language/src/service/heat/off-control.js';
import type { PlateRun, Run } from '../../packages/language/src/service/run/types.js';

/** Minutes on the pass and on the way, of the first and of the last guest. */
type Ways = readonly [first: readonly [number, number], last: readonly [number, number]];

function runOf(ways: Ways): Run {
    const [first, last] = ways.map(([standing, carried], index): PlateRun => {
        return {
            table: index === 0 ? 'T1' : 'T9',
            plated: 10,
            leftPass: 10 + standing,
            served: 10 + standing + carried,
        };
    });
    const dishes = [{ dish: 0, first: first!, last: last! }];
    return { courses: [{ course: 0, dishes }], tasks: [] } as unknown as Run;
}

function heatIn({ plan, service }: Pick<Checked, 'plan' | 'service'>, run?: Run): Heat {
    return heatOf(plan, service, (facts) => heatOfFacts(plan, facts, () => run));
}

function heatOfPlan(course: string, ways?: Ways, room = 'at 20 °C'): Heat {
    const text = `event "Supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests 40 }
room "Long gallery" 12 m by 10 m { ${room}  table T1 to T5: round 60 inch, 8 seats }
bowl tasting-bowl { across 140 mm  surface 120 mm  depth 60 mm  holds 400 ml  porcelain 450 g  for soup }
menu { course ${course} }`;
    const { plan, service } = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    return heatIn({ plan, service }, ways && runOf(ways));
}

const STANDING: Ways = [
    [0, 0],
    [4, 0],
];

/** The bowl of §10.1: 250 ml of clear broth in 450 g of porcelain, 12 cm wide, poured at 74 °C. */
function broth(bowl: string, more = '', ways: Ways | 'unknown' = STANDING, pass = '74 °C'): DishHeat {
    const { dishes } = heatOfPlan(
        `clear-soup "Broth" { served in tasting-bowl ${bowl} at 60 °C, portion 250 ml
            leaves the pass at ${pass}  lasts 15 min  contains celery  ${more} }`,
        ways === 'unknown' ? undefined : ways,
    );
    return dishes[0]!;
}

const last = (heat: DishHeat): number => heat.last!.temperature!.celsius!;

describe('the reference calculations of §10.1, written as a plan', () => {
    it.each([
        ['', 58.7, 53.4],
        ['warmed to 45 °C', 65.8, 58.6],
        ['warmed to 60 °C', 70.0, 61.5],
        ['warmed to 65 °C', 71.5, 62.5],
    ])('in a bowl %s: %d °C poured, %d °C after 4 min', (bowl, poured, after) => {
        const heat = broth(bowl);
        expect(Math.abs(heat.poured!.celsius! - poured)).toBeLessThan(0.1);
        expect(Math.abs(last(heat) - after)).toBeLessThan(0.15);
        expect(heat.first!.temperature!.celsius).toBeCloseTo(heat.poured!.celsius!, 6);
    });
    it('needs a bowl at 52 °C for 60 °C after 4 min, and with one at 20 °C a ladle at 86.6 °C', () => {
        const { answers } = broth('warmed to 40 °C');
        expect(Math.abs((answers!.vessel as { celsius: number }).celsius - 52)).toBeLessThan(1);
        const cold = broth('').answers!.pass as { needed?: number; celsius?: number };
        expect(Math.abs((cold.celsius ?? cold.needed!) - 86.6)).toBeLessThan(0.5);
    });
    it('takes a bowl that is called warmed as the house warms it, and one that nobody warms as the room', () => {
        expect(broth('warmed').vessel).toEqual({ celsius: 60, how: 'custom' });
        expect(broth('').vessel).toEqual({ celsius: 20, how: 'room' });
    });
});

describe('the band of §12', () => {
    it('is the larger of 1.5 °C and 35 % of the drop, with the 2 °C of the pour', () => {
        const heat = broth('warmed to 65 °C');
        const { low, celsius, high } = heat.last!.temperature!;
        const drop = heat.poured!.celsius! - celsius!;
        expect(high - celsius!).toBeCloseTo(Math.min(Math.hypot(0.35 * drop, 2), 74 - celsius!), 6);
        expect(celsius! - low).toBeCloseTo(Math.hypot(0.35 * drop, 2), 6);
    });
    it('is half of the drop where the width of the liquid is guessed, and the plan says so', () => {
        const fromRim = heatOfPlan(
            `clear-soup "Broth" { served in salad-bowl at 60 °C, portion 250 ml  leaves the pass at 74 °C  contains celery }`,
            STANDING,
        ).dishes[0]!;
        expect(fromRim.assumed.join()).toContain('width of the liquid');
        const { low, celsius } = fromRim.last!.temperature!;
        const drop = fromRim.poured!.celsius! - celsius!;
        expect(celsius! - low).toBeCloseTo(Math.hypot(0.5 * drop, 2), 6);
    });
    it('is tightened by one thermometer reading, and never widened by it', () => {
        const without = broth('warmed to 65 °C');
        const width = (heat: DishHeat): number => heat.last!.temperature!.high - heat.last!.temperature!.low;
        for (const reading of ['measured 68 °C after 3 min', 'measured 60 °C after 10 min', 'measured 70 °C']) {
            expect(width(broth('warmed to 65 °C', reading))).toBeLessThanOrEqual(width(without) + 1e-9);
        }
        expect(width(broth('warmed to 65 °C', 'measured 52 °C after 12 min'))).toBeLessThanOrEqual(3);
    });
    it('and the curve goes through the reading', () => {
        const at3 = broth('warmed to 65 °C', 'measured 68 °C after 3 min', [
            [0, 0],
            [3, 0],
        ]);
        expect(last(at3)).toBeCloseTo(68, 1);
        const at10 = broth('warmed to 65 °C', 'measured 58 °C after 10 min', [
            [0, 0],
            [10, 0],
        ]);
        expect(last(at10)).toBeCloseTo(58, 1);
    });
});

describe('the way to the guest', () => {
    it('P11: carried covered, the loss of the way is 0.62 of the open one', () => {
        const way: Ways = [
            [0, 0.05],
            [0, 0.05],
        ];
        const fall = (more: string): number => {
            const heat = broth('warmed to 65 °C', more, way);
            return heat.poured!.celsius! - last(heat);
        };
        expect(fall('carried covered') / fall('')).toBeCloseTo(0.62, 2);
    });
    it('is colder the longer it stands, the longer it is carried, and the wider the bowl', () => {
        const wait = (standing: number, carried: number): number =>
            last(broth('warmed to 65 °C', '', [STANDING[0], [standing, carried]]));
        expect(wait(5, 1)).toBeLessThan(wait(4, 1));
        expect(wait(4, 2)).toBeLessThan(wait(4, 1));
        // Carried through the room it loses more than it does standing.
        expect(wait(0, 4)).toBeLessThan(wait(4, 0));
    });
    it('waits before its guest where it is preset', () => {
        const plate = { table: 'T1', plated: -8, leftPass: -7, served: -6 };
        const run = {
            courses: [{ course: 0, dishes: [{ dish: 0, first: plate, last: plate }] }],
            tasks: [],
        } as unknown as Run;
        const text = `event "Lunch" { date 2027-07-03  zone America/New_York  seated 12:30  guests 8 }
menu { course cold-soup "Cucumber" { served in soup-bowl chilled to 5 °C at 8 °C, portion 200 ml
    leaves the pass at 4 °C  preset 6 min before seating  contains milk } }`;
        const { plan, service } = check('lunch.cover', filesInMemory({ 'lunch.cover': text }));
        const [heat] = heatIn({ plan, service }, run).dishes;
        expect(heat!.first!.journey.waiting).toBe(6);
        expect(heat!.first!.minutes).toBe(8);
        expect(last(heat!)).toBeGreaterThan(heat!.poured!.celsius!);
    });
    it('poured at table it is at the guest as it is poured, into a bowl that has cooled on its way', () => {
        const heat = broth('warmed to 65 °C', '', [
            [0, 0],
            [2, 2],
        ]);
        const atTable = heatOfPlan(
            `clear-soup "Broth" { served in tasting-bowl warmed to 65 °C at 60 °C, portion 250 ml, poured at table from soup-tureen
                leaves the pass at 74 °C  lasts 15 min  contains celery }`,
            [
                [0, 0],
                [2, 2],
            ],
        ).dishes[0]!;
        expect(last(atTable)).toBeGreaterThan(last(heat));
        expect(last(atTable)).toBeLessThan(atTable.first!.temperature!.celsius!);
        expect(atTable.assumed.join()).toContain('jug');
    });
    it('plated ahead into a hot box it starts as the box has it, and only the way cools it', () => {
        const way: Ways = [
            [20, 1],
            [40, 1],
        ];
        const kept = broth('warmed to 65 °C', 'plated ahead into hot-box', way);
        expect(kept.poured!.celsius).toBeCloseTo(74, 6);
        expect(kept.last!.minutes).toBe(1);
        const shelf = broth('warmed to 65 °C', 'plated ahead into pass-shelf', way);
        expect(last(shelf)).toBeLessThan(last(kept) - 20);
    });
    it('without a run sheet there is no temperature at a guest, only a table by the minute', () => {
        const heat = broth('warmed to 65 °C', '', 'unknown');
        expect([heat.first, heat.last]).toEqual([undefined, undefined]);
        expect(heat.byMinute).toHaveLength(13);
        expect(Math.abs(heat.byMinute[4]! - 62.5)).toBeLessThan(0.15);
        expect(heat.staysFor! > 5 && heat.staysFor! < 7).toBe(true);
    });
});

describe('the inverse questions', () => {
    const arbitrary = fc.record({
        bowl: fc.integer({ min: 25, max: 64 }),
        pass: fc.integer({ min: 66, max: 94 }),
        standing: fc.integer({ min: 0, max: 6 }),
        carried: fc.integer({ min: 0, max: 4 }),
    });
    it('answer so that the plan, changed as they say, gives what is wanted', () => {
        fc.assert(
            fc.property(arbitrary, ({ bowl, pass, standing, carried }) => {
                const ways: Ways = [
                    [0, 0.5],
                    [standing, carried],
                ];
                const { answers } = broth(`warmed to ${bowl} °C`, '', ways, `${pass} °C`);
                if ('celsius' in answers!.pass! && answers!.pass.celsius > 60) {
                    const changed = broth(`warmed to ${bowl} °C`, '', ways, `${answers!.pass.celsius.toFixed(6)} °C`);
                    expect(Math.abs(last(changed) - 60)).toBeLessThan(0.05);
                }
                if ('celsius' in answers!.vessel! && answers!.vessel.celsius > 20) {
                    const changed = broth(`warmed to ${answers!.vessel.celsius.toFixed(6)} °C`, '', ways, `${pass} °C`);
                    expect(Math.abs(last(changed) - 60)).toBeLessThan(0.05);
                }
            }),
            { seed: 7, numRuns: 40 },
        );
    });
    it('are refused past the touch limit, 95 °C, what scalds and what the code lets be kept, each by its name', () => {
        const refusal = (heat: DishHeat): unknown[] =>
            [heat.answers!.vessel, heat.answers!.pass].map((each) => each && 'refused' in each && each.refused);
        const far: Ways = [
            [0, 0.3],
            [6, 4],
        ];
        expect(refusal(broth('warmed to 60 °C', '', far))).toEqual(['touch-limit', 'boiling']);
        // A long way for the last and none for the first: what keeps it hot there scalds here.
        const uneven: Ways = [
            [0, 0],
            [6, 1],
        ];
        expect(refusal(broth('warmed to 60 °C', '', uneven))).toContain('scalds');
        // Wanted at 60 °C from a warm bowl at once: 55 °C would do, and the code keeps it at 57 °C.
        const atOnce: Ways = [
            [0, 0],
            [0, 0],
        ];
        const { answers } = heatOfPlan(
            `clear-soup "Broth" { served in tasting-bowl warmed to 65 °C at 58 °C, portion 250 ml
                leaves the pass at 74 °C  contains celery }`,
            atOnce,
        ).dishes[0]!;
        expect(answers!.pass).toMatchObject({ refused: 'holding' });
    });
});

describe('what is not computed', () => {
    it('P4 and P5: solid food on plates has the published drops and nothing else', () => {
        const lamb = (clauses: string): DishHeat =>
            heatOfPlan(`main "Lamb" { served on dinner-plate warmed at 60 °C  ${clauses}  contains lamb }`, STANDING)
                .dishes[0]!;
        expect(lamb('leaves the pass at 70 °C').published).toMatchObject({ low: 59, high: 67 });
        expect(lamb('held at 75 °C').published).toMatchObject({ low: 45, high: 61 });
        expect(lamb('leaves the pass at 70 °C').last!.temperature).toBeUndefined();
        expect(lamb('').answers!.range).toEqual({ from: 'leaves-the-pass', low: 63, high: 71 });
        const read = lamb('leaves the pass at 70 °C  measured 64 °C after 4 min');
        expect(read.model).toBe('reading');
        expect(last(read)).toBeCloseTo(64, 6);
    });
    it('a cold plate has no figure unless somebody measures it', () => {
        const { dishes } = heatOfPlan('salad "Leaves" { served on salad-plate at 7 °C  contains nothing }', STANDING);
        expect(dishes).toEqual([]);
    });
    it('frozen food has a time and no temperature', () => {
        const [ice] = heatOfPlan(
            'intermezzo "Quince sorbet" { served in sorbet-coupe chilled at -10 °C, portion 50 ml, within 5 min  contains nothing }',
            [
                [1, 1],
                [4, 2],
            ],
        ).dishes;
        expect(ice).toMatchObject({ model: 'time-limit', side: 'frozen', within: 5, last: { minutes: 6 } });
        expect(ice!.last!.temperature).toBeUndefined();
    });
});

describe('cooling and time as the control, by the model code', () => {
    const { plan } = check('supper.cover', filesInMemory({ 'supper.cover': 'event "Supper" { date 2026-10-17 }' }));
    const code = plan.cupboard.codes.get('us-model')!;
    it('W14: 57 to 21 °C in 1 h 50, to 5 °C at 5 h 55: within 2 h and 6 h', () => {
        const stages = [
            { celsius: 21, minutes: 110 },
            { celsius: 5, minutes: 245 },
        ];
        expect(judgeCooling(stages, coolingLimits(code)!)).toBeUndefined();
    });
    it('W15: the same, but 21 °C only after 2 h 10', () => {
        const stages = [
            { celsius: 21, minutes: 130 },
            { celsius: 5, minutes: 225 },
        ];
        expect(judgeCooling(stages, coolingLimits(code)!)).toMatchObject({ fault: 'first-late', minutes: 130 });
    });
    it('W16: a cold canapé at 22 °C has lost the six hours, at 19 °C it has them', () => {
        const canape = (warmest: number, hours: number): boolean => {
            const off = { side: 'cold', warmest, minutes: hours * 60 } as const;
            return isWithinTime(offControlLimit(code, off)!, off);
        };
        expect(canape(19, 3.5)).toBe(true);
        expect(canape(22, 4.5)).toBe(false);
        expect(canape(20, 4.5)).toBe(true);
        expect(canape(20, 6.1)).toBe(false);
        expect(canape(22, 3.9)).toBe(true);
    });
    it.each([
        ['uk', 'hot', 2],
        ['uk', 'cold', 4],
        ['au-nz', 'hot', 4],
        ['new-york-city', 'hot', 4],
    ] as const)('2.3: %s, %s food, %d h', (name, side, hours) => {
        const limit = offControlLimit(plan.cupboard.codes.get(name)!, { side, warmest: 25, minutes: 0 });
        expect(limit!.figure.high).toBe(hours * 60);
    });
});

describe('drinks in their glasses', () => {
    it('DS5: a thin glass warms a beer by about 1 °C, a heavy one by 2 to 3.5', () => {
        const warmed = (glass: string, grams: number): number => {
            const text = `event "Supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests 8 }
room "Tap room" 8 m by 6 m { at 21 °C }
glass trial-glass { across 80 mm  surface 75 mm  holds 600 ml  glass ${grams} g  for beer }
menu { course cheese "Cheese" { served on cheese-plate at 16 °C  contains milk
    pour "Ale" 473 ml into ${glass} at 5 °C, is lager { contains barley } } }`;
            const { plan, service } = check('beer.cover', filesInMemory({ 'beer.cover': text }));
            return heatIn({ plan, service }).drinks[0]!.poured.celsius! - 5;
        };
        const [thin, heavy] = [warmed('trial-glass', 200), warmed('trial-glass', 650)];
        // Published: about 2 °F, and 4 to 6 °F.
        expect(thin * 1.8).toBeGreaterThan(1.2);
        expect(thin * 1.8).toBeLessThan(2.8);
        expect(heavy * 1.8).toBeGreaterThan(4);
        expect(heavy * 1.8).toBeLessThan(6.5);
    });
    it('coffee from a pot at 82 °C into a cold cup is about where guests like it (D1, D4)', () => {
        const text = `event "Supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests 8 }
menu { course cheese "Cheese" { served on cheese-plate at 16 °C  contains milk } coffee after cheese in coffee-cup at 65 °C }`;
        const { plan, service } = check('coffee.cover', filesInMemory({ 'coffee.cover': text }));
        const [coffee] = heatIn({ plan, service }).drinks;
        expect(coffee!.poured.celsius).toBeGreaterThan(60);
        expect(coffee!.poured.celsius).toBeLessThan(72);
        // And a pot hot enough for it is within the holding standard of D5.
        const needed = coffee!.needed as { celsius: number };
        expect(needed.celsius).toBeGreaterThan(72);
        expect(needed.celsius).toBeLessThan(85);
    });
});

it('a spoon warmed to 42 °C is still warm to the hand at the last guest, and never hurts it (§4.2)', () => {
    const { pieces } = heatOfPlan(
        `soup "Broth" { served in tasting-bowl warmed at 60 °C  eaten with soup-spoon warmed to 42 °C, brought with the course  contains celery }`,
        [
            [1, 0.5],
            [2, 2],
        ],
    );
    expect(pieces[0]!.last!.celsius).toBeGreaterThan(35);
    expect(pieces[0]!.last!.celsius).toBeLessThan(42);
    expect(pieces[0]!.touch).toBeLessThan(44);
});
