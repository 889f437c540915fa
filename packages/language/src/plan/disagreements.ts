import type { Disagreement } from './disagreements/disagreement.js';
import { layingDisagreements } from './disagreements/laying.js';
import { placeDisagreements } from './disagreements/place.js';
import { serviceDisagreements } from './disagreements/service.js';

export type { Disagreement, Position } from './disagreements/disagreement.js';

/** The 39 points on which the published sources of table service disagree, in order of number. */
export const disagreements: readonly Disagreement[] = [
    ...layingDisagreements,
    ...placeDisagreements,
    ...serviceDisagreements,
].sort((a, b) => a.number - b.number);
