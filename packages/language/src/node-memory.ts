import { PerformanceObserver } from 'node:perf_hooks';
import { getHeapSpaceStatistics, setFlagsFromString } from 'node:v8';

/** So much memory for what was made last, in bytes: a key's plan has room in it, and the engine's own limit is four times that. */
const YOUNG = 8 * 1024 * 1024;

/**
 * For a process that serves an editor, called once before it begins. Each key leaves a plan behind that is soon of no use.
 * Left to itself the engine lets such plans pile up to three times what the server holds before it clears them away; so it
 * clears at half above that. What was made last is cleared more often still.
 */
export function clearEarly(): void {
    setFlagsFromString('--heap-growing-percent=50');
    keepYoungSmall();
    // A process at rest is given less, and may then grow again.
    new PerformanceObserver(keepYoungSmall).observe({ entryTypes: ['gc'] });
}

/** The limit itself can be set only for a process that is still to be started; how it grows can be set at any time. */
function keepYoungSmall(): void {
    const young = getHeapSpaceStatistics().find(({ space_name }) => space_name === 'new_space')?.space_size ?? 0;
    setFlagsFromString(`--semi-space-growth-factor=${young < YOUNG ? 2 : 1}`);
}
