import type { Origin } from '../plan/origin.js';
import type { Plan, Written } from '../plan/types.js';

/**
 * True where something inside is already a finding that leaves a clause unread: unreadable words, a figure without its unit,
 * a mistyped first word. What seems to be missing there may be written.
 */
export function isDoubtful(plan: Plan, block: Origin): boolean {
    const isInside = ({ origin }: { readonly origin: Origin }): boolean =>
        origin.file === block.file && origin.start >= block.start && origin.start <= block.end;
    return plan.readings.some(
        ({ syntax, unitProblems, misspelt, written }) =>
            syntax.some(isInside) ||
            unitProblems.some(isInside) ||
            misspelt.some(isInside) ||
            written.some((each) => each.suggestions.length !== 1 && isInside(each)) ||
            written.some(
                (each) => swallows(each) && each.origin.file === block.file && each.origin.start >= block.start,
            ),
    );
}

/** A text or comment that does not close takes in what is written after it. */
export function swallows({ form }: Written): boolean {
    return form === 'unclosed-text' || form === 'unclosed-comment';
}
