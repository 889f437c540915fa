import { clauseToCustom } from './clause-to-custom.js';
import { convertUnit } from './convert-unit.js';
import { moveToOwnFile } from './move-to-own-file.js';
import type { Refactoring, Selected } from './refactoring.js';
import { splitDish } from './split-dish.js';

export type { Refactoring, Selected } from './refactoring.js';

/** Everything that can be done with what is selected, in the order shown. */
export function refactorings(selected: Selected): Refactoring[] {
    return [splitDish, clauseToCustom, convertUnit, moveToOwnFile].flatMap((each) => each(selected));
}
