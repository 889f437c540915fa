import { barSheet } from './bar.js';
import { captainSheet } from './captain.js';
import { guideSheet } from './guide.js';
import { kitchenSheet } from './kitchen.js';
import { menuCardSheet } from './menu-card.js';
import { runningLateSheet } from './running-late.js';
import { placeCardSheet, seatListSheet } from './seat-list.js';
import { serverSheets } from './server.js';
import type { SheetSource } from './evening.js';
import type { Sheet } from './sheet.js';
import { stewardSheet } from './steward.js';

/** The sheets by the word that asks for them, in the order in which they are handed out. */
const MAKERS = {
    captain: captainSheet,
    server: serverSheets,
    kitchen: kitchenSheet,
    steward: stewardSheet,
    bar: barSheet,
    guide: guideSheet,
    'menu-card': menuCardSheet,
    'seat-list': seatListSheet,
    'place-cards': placeCardSheet,
    'running-late': runningLateSheet,
} as const satisfies Record<string, (source: SheetSource) => Sheet | readonly Sheet[] | undefined>;

export type SheetName = keyof typeof MAKERS;

export const SHEET_NAMES = Object.keys(MAKERS) as readonly SheetName[];

/**
 * The sheets of an evening, without how they look. Of one that is under way only the card with the new times is made: what was
 * handed out before doors holds for all the rest.
 * @param only those asked for; all where absent
 */
export function sheetsOf(source: SheetSource, only?: readonly SheetName[]): Sheet[] {
    const wanted = only ?? (source.plan.underway ? ['running-late'] : SHEET_NAMES);
    return SHEET_NAMES.filter((name) => wanted.includes(name)).flatMap((name) => MAKERS[name](source) ?? []);
}
