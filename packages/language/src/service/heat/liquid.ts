/**
 * A hot or cold liquid in a vessel: poured, standing, covered, carried (temperature 13).
 * One temperature for the liquid and the part of the vessel that touches it; radiation, convection and evaporation from the
 * top, convection and radiation from the side, conduction into the table.
 * Ignored: stratification, skins, draughts, solids and garnish, foam, heat lamps, altitude. A thermometer decides.
 */
import { evaporation, filmBetween, radiativeTransfer, upwardTransfer, wallTransfer } from './air.js';

export interface Liquid {
    readonly grams: number;
    /** J/gK: water 4.186, clear broth 4.1, cream soup 3.8 (temperature 5.2). */
    readonly heatCapacity: number;
}

export interface Vessel {
    readonly grams: number;
    /** J/gK: porcelain 0.9 ± 15 % (temperature 5.1). */
    readonly heatCapacity: number;
    /** Part of the vessel that takes part, 0–1: 1 for a bowl or thin glass, 0.6–1 for a heavy mug (temperature 13). */
    readonly participation: number;
    /** Of the liquid's surface, mm. */
    readonly surfaceDiameter: number;
    /** Wall thickness over conductivity, m²K/W: 0.002–0.005 (temperature 13). */
    readonly wallResistance: number;
}

export interface Surroundings {
    readonly celsius: number;
    /** Relative humidity, 0–1; of small effect when the liquid is hot. */
    readonly humidity: number;
    /** Share of the ideal evaporation that leaves the surface: 0.8 brim-full and still, 1 in a draught, 0.4–0.5 well below the rim. */
    readonly surfaceFactor: number;
    /** Conduction into what it stands on, W/m²K: 4 on a table, 0 on an insulator. */
    readonly base: number;
    /** Air moving past while carried: 1 standing, 1.3–2 on a tray walk. Multiplies the loss from the top. */
    readonly moving: number;
    readonly covered: boolean;
}

/** Loss of a covered vessel against the same open one (temperature P11: one mug, band 0.4–0.8). */
export const COVERED_SHARE = 0.62;

const LIQUID_EMISSIVITY = 0.96;
const WALL_EMISSIVITY = 0.9;

/** J/K of the liquid and the part of the vessel that follows it. */
export function heatContent(liquid: Liquid, vessel: Vessel): number {
    return liquid.grams * liquid.heatCapacity + vessel.participation * vessel.grams * vessel.heatCapacity;
}

/** Bodies brought together without loss, °C (temperature H2). @param parts heat content in J/K and temperature in °C of each */
export function mix(parts: readonly { readonly heat: number; readonly celsius: number }[]): number {
    const heat = parts.reduce((sum, part) => sum + part.heat, 0);
    return parts.reduce((sum, part) => sum + part.heat * part.celsius, 0) / heat;
}

/** Liquid and vessel just after the pour, °C. Error ± 2 °C: participation and heat capacity are uncertain (temperature 12). */
export function pourInto(liquid: Liquid, liquidCelsius: number, vessel: Vessel, vesselCelsius: number): number {
    const total = heatContent(liquid, vessel);
    const own = liquid.grams * liquid.heatCapacity;
    return mix([
        { heat: own, celsius: liquidCelsius },
        { heat: total - own, celsius: vesselCelsius },
    ]);
}

/** How hot a liquid has to be as it is poured, °C, to be at `inVessel` just after: the pour turned round. */
export function pourFor(inVessel: number, liquid: Liquid, vessel: Vessel, vesselCelsius: number): number {
    const total = heatContent(liquid, vessel);
    const own = liquid.grams * liquid.heatCapacity;
    return (inVessel * total - vesselCelsius * (total - own)) / own;
}

/** How warm a vessel has to be before it is filled, °C, to be at `inVessel` just after: the pour turned round. */
export function vesselFor(inVessel: number, liquid: Liquid, liquidCelsius: number, vessel: Vessel): number {
    const total = heatContent(liquid, vessel);
    const own = liquid.grams * liquid.heatCapacity;
    return (inVessel * total - liquidCelsius * own) / (total - own);
}

export interface Losses {
    readonly evaporation: number;
    readonly convection: number;
    readonly radiation: number;
    readonly side: number;
    readonly base: number;
}

/** What leaves the liquid, W; negative where the room is the warmer. */
export function losses(celsius: number, liquid: Liquid, vessel: Vessel, room: Surroundings): Losses {
    const diameter = vessel.surfaceDiameter / 1000;
    const area = (Math.PI * diameter ** 2) / 4;
    const difference = celsius - room.celsius;
    // A gram of a watery liquid is a millilitre; the side is wetted to the height that gives the volume.
    const height = (liquid.grams * 1e-6) / area;
    const film = filmBetween(celsius, room.celsius);
    const convective = upwardTransfer(film, diameter);
    const top = area * room.moving;
    const outside = wallTransfer(film, height) + radiativeTransfer(celsius, room.celsius, WALL_EMISSIVITY);
    return {
        evaporation: top * room.surfaceFactor * evaporation(celsius, room.celsius, room.humidity, convective),
        convection: top * convective * difference,
        radiation: top * radiativeTransfer(celsius, room.celsius, LIQUID_EMISSIVITY) * difference,
        side: (Math.PI * diameter * height * difference) / (1 / outside + vessel.wallResistance),
        base: room.base * area * difference,
    };
}

function totalLoss(celsius: number, liquid: Liquid, vessel: Vessel, room: Surroundings): number {
    const { evaporation: steam, convection, radiation, side, base } = losses(celsius, liquid, vessel, room);
    const open = steam + convection + radiation + side + base;
    return room.covered ? open * COVERED_SHARE : open;
}

/** Longest step of the integration, min, and the most that a step may fall, K: steep near boiling, where steam carries most away. */
const LONGEST_STEP = 4;
const MOST_IN_A_STEP = 6;
/** Nothing is looked at longer than this, min: it has the temperature of the room by then. */
const LONGEST = 12 * 60;
/** A thimbleful on a table top is as warm as the room long before so many steps are done. */
const MOST_STEPS = 1000;
/** Backwards in time every difference grows without end: no further than this, °C, which no liquid has. */
const [COLDEST, HOTTEST] = [-40, 150];

/**
 * The liquid after it has stood, °C. Classical Runge–Kutta steps, within 0.02 °C of a reference solver
 * (tests/published/heat-solver.test.ts).
 * @param start °C, 0 … 100
 * @param minutes negative: what it was so long before it was at `start`, as far as from -40 to 150
 * @param scale multiplies the loss: found from a thermometer reading, else 1
 * @returns between `start` and the room, save for what evaporation takes
 */
export function coolFor(
    start: number,
    minutes: number,
    liquid: Liquid,
    vessel: Vessel,
    room: Surroundings,
    scale = 1,
): number {
    const perMinute = (-60 * scale * Math.sign(minutes)) / heatContent(liquid, vessel);
    const slope = (celsius: number): number => perMinute * totalLoss(celsius, liquid, vessel, room);
    let celsius = start;
    let left = Math.min(Math.abs(minutes), LONGEST);
    for (let steps = 0; left > 0 && steps < MOST_STEPS && celsius > COLDEST && celsius < HOTTEST; steps++) {
        const first = slope(celsius);
        const step = Math.min(left, LONGEST_STEP, MOST_IN_A_STEP / Math.abs(first));
        const second = slope(celsius + (step / 2) * first);
        const third = slope(celsius + (step / 2) * second);
        const fourth = slope(celsius + step * third);
        celsius += (step / 6) * (first + 2 * second + 2 * third + fourth);
        left -= step;
    }
    return celsius;
}
