/** What is said of the heat models wherever their figures are shown. */
import type { Refusal } from '../service/heat/inverse.js';
import type { HeatModel } from '../service/heat/types.js';

export const HEAT_MODELS: Readonly<Record<HeatModel, string>> = {
    liquid: 'One temperature for the liquid and the part of its vessel that touches it; steam, convection, radiation, side and base.',
    'published-drop': 'No model: what plates are known to lose between the pass and the guest, whatever the way takes.',
    reading: 'One time constant through the start and a thermometer reading.',
    'time-limit': 'A time and no temperature: frozen food, and whatever the plan gives a time.',
};

/** Printed with every plan (temperature 13). */
export const HEAT_CAUTION =
    'Planning estimates. They do not replace a calibrated probe thermometer and never decide food safety: the local code does. Where a reading and the plan disagree, the reading wins.';

/** Why an answer to an inverse question may not be given. */
export const REFUSED: Readonly<Record<Refusal, string>> = {
    'touch-limit': 'no vessel so warm stands before a guest',
    boiling: 'nothing so hot leaves the kitchen',
    freezing: 'nothing is made so cold',
    scalds: 'the first guest would be scalded',
    holding: 'the local code does not let it be kept so',
};
