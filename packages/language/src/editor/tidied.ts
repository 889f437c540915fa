/** Of the engine's ways to tidy up the one that goes through all there is: Node's `perf_hooks.constants.NODE_PERFORMANCE_GC_MAJOR`. */
const MAJOR = 4;

/** What is used of the `PerformanceObserver` that Node and browsers have, and of which each knows other kinds of entries. */
interface EngineObserver {
    new (told: (list: { getEntries(): readonly { readonly detail?: { readonly kind?: number } }[] }) => void): {
        observe(what: { readonly entryTypes: readonly string[] }): void;
    };
    readonly supportedEntryTypes: readonly string[];
}

/** Calls whenever the engine has gone through all its memory and thrown away what it thinks is not used. A browser does not say. */
export function whenTidied(act: () => void): void {
    const { PerformanceObserver: Observer } = globalThis as unknown as { PerformanceObserver?: EngineObserver };
    if (Observer?.supportedEntryTypes.includes('gc')) {
        const observer = new Observer((list) => {
            if (list.getEntries().some(({ detail }) => detail?.kind === MAJOR)) {
                act();
            }
        });
        observer.observe({ entryTypes: ['gc'] });
    }
}
