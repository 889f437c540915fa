import { changedAllergens } from './allergens.js';
import { SUBJECTS, type Change, type Compared } from './change.js';
import { changedDay } from './day.js';
import { changedDrinks } from './drinks.js';
import { changedElsewhere } from './elsewhere.js';
import { changedFindings } from './findings.js';
import { changedGuests } from './guests.js';
import { changedHouse } from './house.js';
import { changedMenu } from './menu.js';
import { changedPieces } from './pieces.js';
import { changedPlanWords } from './plan-words.js';
import { changedPreparations } from './preparations.js';
import { changedRecipes } from './recipes.js';
import { changedRoom } from './room.js';
import { changedSupplies } from './supplies.js';
import { changedTeam } from './team.js';
import { changedTemperatures } from './temperatures.js';
import { changedTimes } from './times.js';

/**
 * What is different between two plans for the people who carry them out: not which lines of text changed, but what is in what,
 * who gets what, how much is pulled, and when. Ordered by subject, allergens and diets first, then as the later plan has it.
 * Empty only where the plans say the same.
 */
export function compare(before: Compared, after: Compared): readonly Change[] {
    const told = [
        changedAllergens,
        changedGuests,
        changedDay,
        changedMenu,
        changedRecipes,
        changedPieces,
        changedSupplies,
        changedDrinks,
        changedTimes,
        changedTemperatures,
        changedRoom,
        changedTeam,
        changedPreparations,
        changedHouse,
        changedFindings,
        changedPlanWords,
    ].flatMap((changesOf) => changesOf(before, after));
    const changes = told.length > 0 ? told : changedElsewhere(before, after);
    return SUBJECTS.flatMap((subject) => onlyOnce(changes.filter((change) => change.subject === subject)));
}

/** What a course says for all its dishes is read once for each of them. */
function onlyOnce(changes: readonly Change[]): Change[] {
    return [...new Map(changes.map((change) => [change.text, change])).values()];
}
