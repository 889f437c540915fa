import { describe, expect, it } from 'vitest';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';

const supper = (warmers: number, bowl: string, more = '', soup = '') => {
    const text = `
house "Saltmarsh Hall" { own ${warmers} plate-warmer { holds 60 plates } }
event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 48 }
room "Long gallery" 18 m by 11 m { at 20 °C  table T1 to T6: round 66 inch, 8 seats }
team { captain 1  servers 5  runners 3  plating-lines 2 at 12 plates per min each }
menu {
    course soup "Squash soup" {
        served in soup-bowl ${bowl} at 60 °C, portion 250 ml ${more}
        leaves the pass at 76 °C  lasts 12 min  contains nothing  ${soup}
    }
    course main "Chicken" is poultry {
        served on dinner-plate warmed to 62 °C at 60 °C
        cook to 74 °C  lasts 30 min  contains nothing
    }
}`;
    const { service, findings } = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    return { soup: service.heat.dishes[0]!, findings: findings.map(({ rule }) => rule) };
};

describe('a vessel that has to make room in the warmer', () => {
    const early = supper(1, 'warmed to 60 °C');
    const straight = supper(2, 'warmed to 60 °C');

    it('is colder when it is filled, by the cooling of an empty bowl (temperature 13)', () => {
        const { vessel, last } = early.soup;
        expect(last!.journey.outOfWarmer).toBeGreaterThan(30);
        // 5 mm of china with 10 W/m²K on both sides: ρcδ / 2h = 2400 · 900 · 0.005 / 20 s = 9 min.
        const cooledTo = 20 + 40 * Math.exp(-last!.journey.outOfWarmer / 9);
        expect(vessel).toMatchObject({ celsius: 60, how: 'stated' });
        expect(vessel!.cooledTo).toBeCloseTo(cooledTo, 6);
        // As if it had been warmed to no more than that, and came straight from the warmer.
        const as = supper(2, `warmed to ${cooledTo} °C`).soup;
        expect(last!.temperature!.celsius).toBeCloseTo(as.last!.temperature!.celsius!, 6);
        expect(early.soup.poured!.celsius).toBeCloseTo(as.poured!.celsius!, 6);
        expect(early.soup.staysFor).toBeCloseTo(as.staysFor!, 6);
        expect(early.soup.assumed).toContainEqual(expect.stringMatching(/^that a vessel 32 min out of its warmer/));
    });
    it('takes more out of a soup, and both are said', () => {
        expect(straight.soup.vessel!.cooledTo).toBeUndefined();
        expect(straight.soup.last!.temperature!.celsius! - early.soup.last!.temperature!.celsius!).toBeGreaterThan(7);
        expect(early.findings).toEqual(expect.arrayContaining(['warmer-too-small', 'cold-at-the-guest']));
        expect(straight.findings).not.toEqual(expect.arrayContaining(['warmer-too-small']));
        expect(straight.findings).not.toEqual(expect.arrayContaining(['cold-at-the-guest']));
    });
    it('is asked for a hotter pour and for no vessel that nobody may touch', () => {
        const { pass, vessel } = early.soup.answers!;
        expect(pass).toMatchObject({ celsius: expect.closeTo(81, 0) as number });
        expect(vessel).toBeUndefined();
    });
    it('stays empty longer still where it is filled at the table', () => {
        const { last, vessel } = supper(1, 'warmed to 60 °C', ', poured at table').soup;
        const carried = last!.journey.standing + last!.journey.carried;
        const as = supper(2, `warmed to ${20 + (vessel!.cooledTo! - 20) * Math.exp(-carried / 9)} °C`).soup;
        expect(last!.temperature!.celsius).toBeCloseTo(as.poured!.celsius!, 6);
    });
    it('is of no matter where it is plated ahead into what keeps it', () => {
        const { vessel, last } = supper(1, 'warmed to 60 °C', '', 'plated ahead into hot-box').soup;
        expect(vessel).toEqual({ celsius: 76, how: 'kept' });
        expect(last!.journey.outOfWarmer).toBe(0);
    });
});
