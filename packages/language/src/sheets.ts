import type { Checked } from './check.js';
import { footOf } from './output/sheets/evening.js';
import { sheetHtml } from './output/sheets/html.js';
import { paperOf, type Paper } from './output/sheets/paper.js';
import type { Sheet, SheetFoot } from './output/sheets/sheet.js';
import type { SheetName } from './output/sheets/sheet-names.js';
import { sheetsOf } from './output/sheets/sheets.js';

/** Which sheets are made, and what stands on them. */
export interface SheetOptions {
    /** All that the plan has something for, where absent. */
    readonly only?: readonly SheetName[];
    /** Guests of the list by their names instead of initials: what they need is health data. */
    readonly names?: boolean;
}

/** One sheet as a page. */
export interface SheetFile {
    /** A file's name without its ending: `captain`, `server-2`. */
    readonly name: string;
    readonly title: string;
    /** Self-contained: no script, nothing fetched. */
    readonly html: string;
    /** What stands on it, without how it looks: for whoever writes it in another form, as the command line does in PDF. */
    readonly sheet: Sheet;
    /** What stands at the foot of every page of it. */
    readonly foot: SheetFoot;
    /** What lies in the printers where the plan's local code is in force. */
    readonly paper: Paper;
}

/**
 * What people carry on the evening of a checked plan, each as one page of HTML that prints on A4 and Letter. The same plan gives
 * the same bytes.
 * @param checked of a plan with an event; of one computed again while its evening runs (`whatIf` with `underway`), only the card
 *     with the new times
 * @returns in the order in which they are handed out; a sheet that the plan has nothing for is left out
 */
export function sheets(checked: Checked, { only, names }: SheetOptions = {}): SheetFile[] {
    const foot = footOf(checked);
    return sheetsOf({ ...checked, names }, only).map((sheet) => ({
        name: sheet.name,
        title: sheet.title,
        html: sheetHtml(sheet, foot),
        sheet,
        foot,
        paper: paperOf(checked.plan),
    }));
}
