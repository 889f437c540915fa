// What a panel's page and the extension say to each other.

/** What the page brings back when the window is opened again. */
export interface PanelState {
    /** The plan's address as the editor writes it. */
    readonly uri?: string;
    readonly choices: Readonly<Record<string, string>>;
}

/** Said to the page. */
export type ToPage =
    | { readonly sort: 'content'; readonly html: string; readonly isStale: boolean; readonly state: PanelState }
    /** What the page shows may be old, for nobody is there to ask or the plan is gone. */
    | { readonly sort: 'silence'; readonly words: string }
    /** There is nothing to show. */
    | { readonly sort: 'nothing'; readonly words: string }
    /** The parts to light, by their places. */
    | { readonly sort: 'light'; readonly places: readonly number[] };

/** Said by the page. */
export type FromPage =
    | { readonly sort: 'ready' }
    | { readonly sort: 'choose'; readonly name: string; readonly value: string }
    | { readonly sort: 'go'; readonly place: number }
    | { readonly sort: 'copy' };
