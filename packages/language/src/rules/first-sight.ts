import type { Origin } from '../plan/origin.js';

/**
 * True the first time a place is seen. What a course says for all its dishes is read once for each of them, and is
 * still one mistake.
 */
export function firstSight(): (at: Origin) => boolean {
    const seen = new Set<string>();
    return ({ file, start, end }) => {
        const place = `${file}:${start}:${end}`;
        return !seen.has(place) && seen.add(place) !== undefined;
    };
}
