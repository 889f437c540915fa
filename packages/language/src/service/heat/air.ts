/** Properties of air and water vapour that the cooling of a hot liquid depends on. Sources: temperature 5.2, 6. */

/** Standard atmosphere, Pa. */
export const ATMOSPHERE = 101_325;

/**
 * Air in which guests sit, °C: a supper in the snow and a marquee in a heatwave. Beyond it a figure is a slip. Common practice, no
 * source.
 */
export const ROOM_AIR = { coldest: -10, warmest: 45 } as const;

/** No air on earth is colder or hotter, °C, and what is computed here holds for none: a room counts as no more than that. From memory. */
export const EARTHLY_AIR = { coldest: -60, warmest: 60 } as const;

const GRAVITY = 9.81;
const STEFAN_BOLTZMANN = 5.670374e-8;
/** Heat capacity of air, J/kgK (temperature 6, H13). */
export const AIR_HEAT_CAPACITY = 1007;
/** Lewis number of water vapour in air (temperature 6, H13). */
const LEWIS = 0.86;
/** What turns a heat transfer into a mass transfer, per J/kg: Mw/Ma over c·Le^⅔ (temperature 6, H13). */
const MASS_PER_HEAT = 0.622 / (AIR_HEAT_CAPACITY * LEWIS ** (2 / 3));

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

/** Air beside a warm surface, at the mean of its temperature and the room's, as free convection needs it. */
export interface Film {
    /** W/mK */
    readonly conductivity: number;
    /** Rayleigh number of a length of 1 m; grows with its cube. */
    readonly rayleigh: number;
    readonly prandtl: number;
}

/** Dry air at one atmosphere: ideal gas, Sutherland viscosity, linear conductivity (common engineering correlations, from memory). */
export function filmBetween(surface: number, room: number): Film {
    const celsius = (surface + room) / 2;
    const temperature = kelvin(celsius);
    const density = ATMOSPHERE / (287.05 * temperature);
    const viscosity = (1.458e-6 * temperature * Math.sqrt(temperature)) / (temperature + 110.4) / density;
    const conductivity = 0.0243 + 7.0e-5 * celsius;
    const diffusivity = conductivity / (density * AIR_HEAT_CAPACITY);
    const rayleigh = (GRAVITY * Math.abs(surface - room)) / (temperature * viscosity * diffusivity);
    return { conductivity, rayleigh, prandtl: viscosity / diffusivity };
}

const sixthRoot = (value: number): number => Math.sqrt(Math.cbrt(value));

/**
 * Heat transfer to still air from a warm face turned up, W/m²K (temperature H5; within 3 % of H6 for cups and bowls).
 * @param diameter of the face, m
 */
export function upwardTransfer({ conductivity, rayleigh }: Film, diameter: number): number {
    const length = diameter / 4;
    return ((0.65 + 0.36 * sixthRoot(rayleigh * length ** 3)) ** 2 * conductivity) / length;
}

/** Heat transfer to still air from a warm upright wall, W/m²K (Churchill and Chu, temperature H4). @param height wetted, m */
export function wallTransfer({ conductivity, rayleigh, prandtl }: Film, height: number): number {
    const spread = (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27);
    const nusselt = (0.825 + (0.387 * sixthRoot(rayleigh * height ** 3)) / spread) ** 2;
    return (nusselt * conductivity) / height;
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
    return Math.max(0, transfer * latentHeat(surface) * MASS_PER_HEAT * flux);
}
