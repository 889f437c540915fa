/** When to start each drink, through the plan: temperature 11 (DS4, the defaults below it), 12 (a range, −30 % / +70 %), 5.2 (ice). */
import { describe, expect, it } from 'vitest';
import { check } from '../../packages/language/src/check.js';
import { filesInMemory } from '../../packages/language/src/plan/files.js';
import { planChilling } from '../../packages/language/src/service/chilling/chilling.js';
import type { Chilling } from '../../packages/language/src/service/chilling/types.js';
import type { Run } from '../../packages/language/src/service/run/types.js';

function chill(pour: string, laying = '', run?: Run, water = ''): readonly Chilling[] {
    const text = `house "Saltmarsh Hall" { laying { ${laying} } }
event "Supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests 40 }
room "Long gallery" 12 m by 10 m { at 20 °C }
menu { ${water} course fish "Turbot" { served on fish-plate warmed at 58 °C  cook to 63 °C  contains fish
    pour "Riesling" 120 ml into white-wine-glass ${pour} } }`;
    const { plan, service } = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    return planChilling(plan, service, service.heat.air, run);
}

const PUBLISHED = [
    ['fridge', 160],
    ['freezer', 120],
    ['ice-water', 22],
] as const;

describe('how long a bottle takes', () => {
    it.each(PUBLISHED)('in the %s: τ %d min, and a range of at least −30 % and +70 %', (way, tau) => {
        const bath = { fridge: 4, freezer: -18, 'ice-water': 0 }[way];
        const [riesling] = chill(`at 9 °C { contains sulphites  chilled in ${way} }`);
        const usual = tau * Math.log((20 - bath) / (9 - bath));
        expect(riesling!.takes!.usual).toBeCloseTo(usual, 6);
        expect(riesling!.takes!.soonest).toBeLessThanOrEqual(0.7 * usual + 1e-9);
        expect(riesling!.takes!.latest).toBeGreaterThanOrEqual(1.7 * usual - 1e-9);
        expect(riesling!.startBy).toBeCloseTo(-riesling!.takes!.latest, 6);
    });
    it('by the house’s own store and refrigerator', () => {
        const [warm] = chill('at 9 °C { contains sulphites }');
        const [cellar] = chill('at 9 °C { contains sulphites }', 'store-temperature: 12 °C');
        const [colder] = chill('at 9 °C { contains sulphites }', 'fridge-temperature: 2 °C');
        expect(cellar!.takes!.usual).toBeLessThan(warm!.takes!.usual);
        expect(colder!.takes!.usual).toBeLessThan(warm!.takes!.usual);
        expect([warm!.way, warm!.wayHow]).toEqual(['fridge', 'custom']);
    });
    it('never comes to what is colder than its bath', () => {
        const [riesling] = chill('at 3 °C { contains sulphites  chilled in fridge }');
        expect([riesling!.takes, riesling!.startBy]).toEqual([undefined, undefined]);
    });
    it('a red from a cold cellar stands in the room, whatever the custom', () => {
        const [red] = chill('at 16 °C { contains sulphites }', 'store-temperature: 11 °C');
        expect([red!.way, red!.wayHow]).toEqual(['counter', 'warmer-than-store']);
        expect(red!.takes!.usual).toBeCloseTo(100 * Math.log(9 / 4), 6);
    });
});

describe('when it has to be started', () => {
    const run = (...poured: (readonly [course: number, start: number])[]): Run =>
        ({
            courses: [{ course: 0, served: { first: 50 }, dishes: [] }],
            pouringStarts: new Map(poured),
        }) as unknown as Run;
    it('before the first glass of its course, else before its first plate, else before guests sit', () => {
        const by = (given?: Run): readonly [number, string] => {
            const [riesling] = chill('at 9 °C { contains sulphites }', '', given);
            return [riesling!.neededBy, riesling!.neededHow];
        };
        expect(by(run([0, 41], [1, 3]))).toEqual([41, 'first-pour']);
        expect(by(run())).toEqual([50, 'first-pour']);
        expect(by()).toEqual([0, 'seated']);
    });
    it('once a title, and what is offered in its place as well; the water first', () => {
        const all = chill(
            'at 9 °C { contains sulphites  instead "Cordial" 120 ml at 6 °C }',
            '',
            undefined,
            'water still 180 ml at 9 °C',
        );
        expect(all.map(({ title }) => title)).toEqual([expect.stringMatching(/water/i), 'Riesling', 'Cordial']);
        const hot = chill('at 60 °C { contains sulphites }');
        expect(hot).toEqual([]);
    });
});

it('ice that melts: the heat of the bottles over 333.6 kJ/kg (temperature 5.2, 13)', () => {
    const [riesling] = chill('at 9 °C { contains sulphites  chilled in ice-water }');
    const bottles = riesling!.bottles!.reduce((sum, { count }) => sum + count, 0);
    // 0.745 kg of wine at 4.1 kJ/kgK and half a kilogram of glass at 0.84 (temperature 12).
    expect(riesling!.iceMelted! / bottles).toBeCloseTo(((0.745 * 4.1 + 0.5 * 0.84) * 11 * 1000) / 333.6, -1);
    expect(chill('at 9 °C { contains sulphites }')[0]!.iceMelted).toBeUndefined();
});
