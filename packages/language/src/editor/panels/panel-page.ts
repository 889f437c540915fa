import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { toHtml } from 'hast-util-to-html';
import { counted } from '../../rules/wording.js';
import type { Client } from '../client.js';
import { eventsWith } from '../names.js';
import type { Place } from '../workspace.js';
import { press, tick } from './controls.js';
import { eveningPanel } from './evening-panel.js';
import type { Panel } from './panel.js';
import { pullPanel } from './pull-panel.js';
import type { AskPanel, PanelCopy, PanelKind, PanelPage } from './requests.js';
import { Sources, type ShownPlan, type ShownPlans } from './shown-plan.js';
import { tablePanel } from './table-panel.js';

const PANELS: Readonly<Record<PanelKind, Panel>> = {
    table: tablePanel,
    evening: eveningPanel,
    pull: pullPanel,
};

/** The plan that a file stands for: itself, or the one event that it is part of. */
export function planOf({ folder, path }: Place): Place | undefined {
    if (folder.checked(path).plan.event) {
        return { folder, path };
    }
    const events = eventsWith(folder, path);
    return events.length === 1 ? { folder, path: events[0]! } : undefined;
}

/** A panel of a plan. What is wrong in the text is marked, and what was shown before it is kept. */
export function panelPage(
    place: Place,
    { panel: kind, choices }: AskPanel,
    plans: ShownPlans,
    client: Pick<Client, 'showsVirtualTexts'>,
): PanelPage {
    const panel = PANELS[kind];
    const shown = plans.show(place, choices.anyway === 'on');
    const { checked } = shown;
    const sources = new Sources(place, client, checked.texts);
    const parts = panel.show({ checked, choices, sources });
    const event = checked.plan.event!.title;
    const content: ElementContent[] = [
        h('header', [h('h1', event), tick('stay', 'Stay with this plan', choices.stay === 'on')]),
        h(
            'div',
            { id: 'stale', class: 'stale', role: 'status' },
            staleWords(shown, choices.anyway === 'on', !('missing' in parts)),
        ),
        ...('missing' in parts ? [h('p', { class: 'missing' }, parts.missing)] : parts),
    ];
    return {
        uri: place.folder.uriOf(place.path),
        title: `${panel.title}: ${event}`,
        html: toHtml({ type: 'root', children: content }, { allowDangerousHtml: true }),
        places: sources.places,
        isStale: shown.errors > 0,
    };
}

export function panelCopy(place: Place, { panel, choices }: AskPanel, plans: ShownPlans): PanelCopy | null {
    const { checked } = plans.show(place, choices.anyway === 'on');
    return PANELS[panel].copy?.({ checked }) ?? null;
}

function staleWords({ errors, isFromBefore }: ShownPlan, anyway: boolean, isDrawn: boolean): ElementContent[] {
    if (errors === 0) {
        return [];
    }
    const stand = `${counted(errors, 'error')} ${errors === 1 ? 'stands' : 'stand'} in the text.`;
    const words = isFromBefore
        ? `Out of date: ${stand} This is the plan from before.`
        : `Not to be relied on: ${stand}${isDrawn ? ' This is drawn in spite of that.' : ''}`;
    const other = anyway
        ? press('anyway', 'anyway', { value: '', words: 'Show the plan from before' })
        : press('anyway', 'anyway', { value: 'on', words: 'Show the text as it is' });
    return [h('strong', words), ...(isFromBefore || anyway ? [other] : [])];
}
