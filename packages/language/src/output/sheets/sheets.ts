import { barSheet } from './bar.js';
import { captainSheet } from './captain.js';
import { guideSheet } from './guide.js';
import { kitchenSheet } from './kitchen.js';
import { menuCardSheet } from './menu-card.js';
import { runningLateSheet } from './running-late.js';
import { placeCardSheet, seatListSheet } from './seat-list.js';
import { serverSheets } from './server.js';
import { SHEET_NAMES, type SheetName } from './sheet-names.js';
import type { SheetSource } from './evening.js';
import type { Block, Sheet } from './sheet.js';
import { stewardSheet } from './steward.js';

/** The sheets by the word that asks for them. */
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
} as const satisfies Record<SheetName, (source: SheetSource) => Sheet | readonly Sheet[] | undefined>;

/**
 * The sheets of an evening, without how they look. Of one that is under way only the card with the new times is made: what was
 * handed out before doors holds for all the rest.
 * @param only those asked for; all where absent
 */
export function sheetsOf(source: SheetSource, only?: readonly SheetName[]): Sheet[] {
    const wanted = only ?? (source.plan.underway ? ['running-late'] : SHEET_NAMES);
    const warning = despiteErrors(source);
    return SHEET_NAMES.filter((name) => wanted.includes(name))
        .flatMap((name) => MAKERS[name](source) ?? [])
        .map((sheet): Sheet => ({ ...sheet, blocks: [...warning, ...sheet.blocks] }));
}

/** Whoever carries a sheet of a plan with something wrong in it has to know. */
function despiteErrors({ findings }: SheetSource): Block[] {
    const errors = findings.filter(({ severity }) => severity === 'error');
    return errors.length === 0
        ? []
        : [
              {
                  sort: 'caution',
                  text: `Draft, not for service: ${errors.length === 1 ? '1 error' : `${errors.length} errors`} in the plan. The first: ${errors[0]!.message.replaceAll('`', '')}`,
              },
          ];
}
