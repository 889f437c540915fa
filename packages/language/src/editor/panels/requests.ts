import type { Location } from 'vscode-languageserver';
import type { OfFile } from '../requests.js';

// What is said between this server and a client that shows its panels. The server works out all that a panel shows and
// writes it as HTML without script or style; a client puts it in a page, says what was chosen there, and goes to places.

/** What a panel shows. */
export type PanelKind = 'table' | 'evening' | 'pull';

/** What was chosen in a panel, by the names that its page gives (`data-choice`). */
export type PanelChoices = Readonly<Record<string, string>>;

/** `AskPanel` → `PanelPage`, or `null` where neither the file nor the one event that uses it is a plan. */
export const PANEL_REQUEST = 'underliner/panel';
/** A panel of the plan that a file is, or is part of. */
export interface AskPanel extends OfFile {
    readonly panel: PanelKind;
    readonly choices: PanelChoices;
}
/** A panel as it is to be shown. */
export interface PanelPage {
    /** The address of the plan shown. */
    readonly uri: string;
    readonly title: string;
    /**
     * The page's content. `data-at` on an element counts in `places`; `data-choice` names what a control chooses, `data-value`
     * what a button chooses; `data-copy` is on what copies the panel's list; `data-width` says for how many dots of width something
     * was drawn, which a client may choose anew as `width`.
     */
    readonly html: string;
    /** Where what is shown was written. */
    readonly places: readonly Location[];
    /** Whether the text has errors, so that what is shown is from before them or may be wrong; the page says so. */
    readonly isStale: boolean;
}

/** `AskPanel` → `PanelCopy`, or `null` where the panel has no list. */
export const PANEL_COPY_REQUEST = 'underliner/panelCopy';
/** The panel's list as text for a spreadsheet (CSV). */
export interface PanelCopy {
    readonly text: string;
    /** What is to be said when it is copied. */
    readonly said: string;
}

/** `OfFile`, told to a client that shows panels, after the findings of a plan that was looked at again, and of one that is gone. */
export const PLAN_CHANGED_NOTIFICATION = 'underliner/planChanged';
