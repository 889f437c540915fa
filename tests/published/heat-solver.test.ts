/**
 * The heat model's integration against a reference solver, and Newton's closed form against the same.
 * Reference values: the equations of temperature 6 and 13, written a second time in Python, solved by SciPy 1.17.1
 * `solve_ivp(method='DOP853', rtol=1e-11, atol=1e-11)`; Newton's law with rtol 1e-12. No maintained solver of ordinary
 * differential equations is published for Node, so the values are quoted.
 */
import { describe, expect, it } from 'vitest';
import {
    coolFor,
    type Liquid,
    type Surroundings,
    type Vessel,
} from '../../packages/language/src/service/heat/liquid.js';
import { approach } from '../../packages/language/src/service/heat/newton.js';
import { STILL_ROOM } from '../support/still-room.js';

const vessel = (
    grams: number,
    heatCapacity: number,
    participation: number,
    surfaceDiameter: number,
    wallResistance: number,
): Vessel => ({ grams, heatCapacity, participation, surfaceDiameter, wallResistance });

const BROTH: Liquid = { grams: 250, heatCapacity: 4.1 };
const BOWL = vessel(450, 0.9, 1, 120, 0.005);
const SHALLOW: Liquid = { grams: Math.PI * 0.0825 ** 2 * 0.0127 * 1e6, heatCapacity: 4.19 };
const PAN = vessel(500, 0.5, 0.5, 165, 0.001);
const COFFEE: Liquid = { grams: 250, heatCapacity: 4.18 };
const TUMBLER = vessel(250, 0.84, 1, 75, 0.003);
const WINE: Liquid = { grams: 120, heatCapacity: 4.1 };
const GLASS = vessel(140, 0.82, 0.8, 65, 0.003);

describe('the integration is within 0.02 °C of a reference solver, forward and back', () => {
    it.each<readonly [string, number, number, Liquid, Vessel, Partial<Surroundings>, number]>([
        ['a soup bowl, 4 min', 74, 4, BROTH, BOWL, {}, 64.1069],
        ['a soup bowl from near boiling, 10 min', 95, 10, BROTH, BOWL, {}, 60.4444],
        ['covered, 10 min', 74, 10, BROTH, BOWL, { covered: true }, 60.182],
        ['carried through the room, 2 min', 74, 2, BROTH, BOWL, { moving: 1.5 }, 66.4658],
        ['a shallow pan from boiling, 10 min', 98, 10, SHALLOW, PAN, {}, 49.4275],
        ['a shallow pan from boiling, 45 min', 98, 45, SHALLOW, PAN, {}, 25.8812],
        ['coffee, 46 min', 82.3, 46, COFFEE, TUMBLER, { celsius: 17 }, 39.3499],
        ['wine that warms, 30 min', 9, 30, WINE, GLASS, {}, 12.4672],
        ['cold soup in a warm room, 20 min', 6, 20, BROTH, BOWL, { celsius: 26 }, 10.2008],
    ])('%s', (_, start, minutes, liquid, each, room, reference) => {
        const found = coolFor(start, minutes, liquid, each, { ...STILL_ROOM, ...room });
        expect(Math.abs(found - reference)).toBeLessThan(0.02);
        const back = coolFor(reference, -minutes, liquid, each, { ...STILL_ROOM, ...room });
        expect(Math.abs(back - start)).toBeLessThan(0.2);
    });
});

it.each([
    ['a bottle in the refrigerator', 22, 4, 160, 90, 14.256091],
    ['a bottle in the freezer', 20, -18, 120, 45, 8.116993],
    ['a spoon in the room', 42, 20, 8.3, 3, 35.326704],
])('Newton’s closed form is the solver’s answer: %s', (_, start, bath, tau, minutes, reference) => {
    expect(approach(start, bath, tau, minutes)).toBeCloseTo(reference, 5);
});
