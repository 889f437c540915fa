import type { Surroundings } from '../../packages/language/src/service/heat/liquid.js';

/** The room of the published reference calculations (temperature 6.2, 10.1): 20 °C, 50 %, nothing moves. */
export const STILL_ROOM: Surroundings = {
    celsius: 20,
    humidity: 0.5,
    surfaceFactor: 0.8,
    base: 4,
    moving: 1,
    covered: false,
};
