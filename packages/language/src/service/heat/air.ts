/** Properties of air and water vapour that the cooling of a hot liquid depends on. Sources: temperature 5.2, 6. */

/** Standard atmosphere, Pa. */
export const ATMOSPHERE = 101_325;

const GRAVITY = 9.81;
const STEFAN_BOLTZMANN = 5.670374e-8;
/** Heat capacity of air, J/kgK (temperature 6, H13). */
export const AIR_HEAT_CAPACITY = 1007;
/** Lewis number of water vapour in air (temperature 6, H13). */
const LEWIS = 0.86;

export const kelvin = (celsius: number): number => celsius + 273.15;

/**
 * Saturation pressure of water vapour over water, Pa, by the Tetens form (temperature H9).
 * @param celsius 0 … 100; within 0.5 % of IF97 to 90 °C, 0.8 % at 100 °C (temperature 6.1)
 */
export function saturationPressure(celsius: number): number {
    return 610.78 * Math.exp((17.2693882 * celsius) / (celsius + 237.3));
}

/** Latent heat of vaporisation of water, J/kg (temperature 5.2). */
export function latentHeat(celsius: number): number {
    return (2501 - 2.38 * celsius) * 1000;
}

interface Air {
    /** W/mK */
    readonly conductivity: number;
    /** m²/s */
    readonly viscosity: number;
    /** m²/s */
    readonly diffusivity: number;
    readonly prandtl: number;
}

/** Dry air at one atmosphere: ideal gas, Sutherland viscosity, linear conductivity (common engineering correlations, from memory). */
function airAt(celsius: number): Air {
    const temperature = kelvin(celsius);
    const density = ATMOSPHERE / (287.05 * temperature);
    const dynamic = (1.458e-6 * temperature ** 1.5) / (temperature + 110.4);
    const conductivity = 0.0243 + 7.0e-5 * celsius;
    const diffusivity = conductivity / (density * AIR_HEAT_CAPACITY);
    const viscosity = dynamic / density;
    return { conductivity, viscosity, diffusivity, prandtl: viscosity / diffusivity };
}

function rayleigh(air: Air, surface: number, room: number, length: number): number {
    const film = kelvin((surface + room) / 2);
    return (GRAVITY * Math.abs(surface - room) * length ** 3) / (film * air.viscosity * air.diffusivity);
}

/**
 * Heat transfer to still air from a warm face turned up, W/m²K (temperature H5; within 3 % of H6 for cups and bowls).
 * @param diameter of the face, m
 */
export function upwardTransfer(surface: number, room: number, diameter: number): number {
    const length = diameter / 4;
    const air = airAt((surface + room) / 2);
    return ((0.65 + 0.36 * rayleigh(air, surface, room, length) ** (1 / 6)) ** 2 * air.conductivity) / length;
}

/** Heat transfer to still air from a warm upright wall, W/m²K (Churchill and Chu, temperature H4). @param height wetted, m */
export function wallTransfer(surface: number, room: number, height: number): number {
    const air = airAt((surface + room) / 2);
    const spread = (1 + (0.492 / air.prandtl) ** (9 / 16)) ** (8 / 27);
    const nusselt = (0.825 + (0.387 * rayleigh(air, surface, room, height) ** (1 / 6)) / spread) ** 2;
    return (nusselt * air.conductivity) / height;
}

/** Radiation to a room at its air's temperature as a transfer coefficient, W/m²K (temperature H8). */
export function radiativeTransfer(surface: number, room: number, emissivity: number): number {
    const [hot, cold] = [kelvin(surface), kelvin(room)];
    return emissivity * STEFAN_BOLTZMANN * (hot ** 2 + cold ** 2) * (hot + cold);
}

/**
 * Heat that evaporation takes from an open water surface, W/m², before any surface factor (Lewis form with the high-flux term,
 * temperature H13). Nothing where the room holds more vapour than the surface gives.
 * @param transfer of the same surface, W/m²K
 * @param humidity of the room, 0–1
 */
export function evaporation(surface: number, room: number, humidity: number, transfer: number): number {
    const here = Math.min(saturationPressure(surface), 0.95 * ATMOSPHERE);
    const around = humidity * saturationPressure(room);
    const flux = Math.log((ATMOSPHERE - around) / (ATMOSPHERE - here));
    return Math.max(0, ((transfer * latentHeat(surface) * 0.622) / (AIR_HEAT_CAPACITY * LEWIS ** (2 / 3))) * flux);
}
