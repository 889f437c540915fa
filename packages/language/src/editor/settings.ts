// What a client may set. A house's own wishes are no settings: they stand in its file, where every cook sees them.

/** The name under which the client keeps the settings. */
export const SETTINGS_SECTION = 'underliner';

export interface Settings {
    /** Figures shown between the words of a plan, each kind for itself. */
    readonly hints: { readonly times: boolean; readonly counts: boolean; readonly temperatures: boolean };
    /** A line of figures above the event, the menu and each course. */
    readonly codeLens: boolean;
}

export type HintKind = keyof Settings['hints'];

export const DEFAULT_SETTINGS: Settings = {
    hints: { times: true, counts: true, temperatures: true },
    codeLens: true,
};

/** @param given what the client answered for the section; anything that is no settings means the defaults */
export function settingsOf(given: unknown): Settings {
    const { hints, codeLens } = asRecord(given);
    const { times, counts, temperatures } = asRecord(hints);
    return {
        hints: {
            times: flag(times, DEFAULT_SETTINGS.hints.times),
            counts: flag(counts, DEFAULT_SETTINGS.hints.counts),
            temperatures: flag(temperatures, DEFAULT_SETTINGS.hints.temperatures),
        },
        codeLens: flag(codeLens, DEFAULT_SETTINGS.codeLens),
    };
}

function asRecord(value: unknown): Readonly<Record<string, unknown>> {
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

function flag(value: unknown, otherwise: boolean): boolean {
    return typeof value === 'boolean' ? value : otherwise;
}
