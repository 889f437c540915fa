import { SUBJECTS, type Change, type Compared } from './change.js';
import { changedDrinks } from './drinks.js';
import { changedFindings } from './findings.js';
import { changedGuests } from './guests.js';
import { changedMenu } from './menu.js';
import { changedPieces } from './pieces.js';
import { changedSupplies } from './supplies.js';
import { changedTeam } from './team.js';
import { changedTemperatures } from './temperatures.js';
import { changedTimes } from './times.js';

/**
 * What is different between two plans for the people who carry them out: not which lines of text changed, but who gets what,
 * how much is pulled, and when. Ordered by subject, then as the later plan has it.
 */
export function compare(before: Compared, after: Compared): readonly Change[] {
    const changes = [
        changedGuests,
        changedMenu,
        changedPieces,
        changedSupplies,
        changedDrinks,
        changedTimes,
        changedTemperatures,
        changedTeam,
        changedFindings,
    ].flatMap((changesOf) => changesOf(before, after));
    return SUBJECTS.flatMap((subject) => changes.filter((change) => change.subject === subject));
}
