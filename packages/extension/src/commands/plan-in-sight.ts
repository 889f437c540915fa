import { TabInputText, window, type Uri } from 'vscode';

/** The plan that a command is about where none is named: the file in sight, else the one plan that is open behind another page. */
export function planInSight(): Uri | undefined {
    const tabs = window.tabGroups.all.flatMap((group) => group.tabs);
    const plans = tabs.flatMap(({ input }) =>
        input instanceof TabInputText && input.uri.path.endsWith('.cover') ? [input.uri] : [],
    );
    const isOne = new Set(plans.map(String)).size === 1;
    return window.activeTextEditor?.document.uri ?? (isOne ? plans[0] : undefined);
}
