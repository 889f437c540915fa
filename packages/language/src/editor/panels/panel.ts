import type { ElementContent } from 'hast';
import type { Checked } from '../../check.js';
import type { PanelChoices, PanelCopy } from './requests.js';
import type { Sources } from './shown-plan.js';

/** What a panel is made from. */
export interface PanelInput {
    readonly checked: Checked;
    readonly choices: PanelChoices;
    readonly sources: Sources;
}

/** A kind of panel: its name, what it shows of a plan, and its list as text where it has one. */
export interface Panel {
    readonly title: string;
    /** @returns words in place of parts where the plan does not say enough yet */
    show(input: PanelInput): readonly ElementContent[] | { readonly missing: string };
    copy?(input: Pick<PanelInput, 'checked'>): PanelCopy | undefined;
}
