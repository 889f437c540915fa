import { readText } from '../plan/read-text.js';
import { LIKELY_UNITS } from '../plan/read-scribe.js';
import type { Dimension } from '../plan/quantity.js';
import type { Cursor } from './cursor.js';

/** Stands for the figure that is not typed yet. */
const STAND_IN = '1';

/** What the figure at the cursor is to be: `served.temperature`, `heldAt.temperature`, `lasts.time`. */
export interface WantedFigure {
    readonly dimension: Exclude<Dimension, 'count'>;
    /** The members of the plan that lead to it, joined by dots, without numbers. */
    readonly path: string;
    /** The drink of the pour that it stands in, by the name of its kind. */
    readonly drink?: string;
}

/**
 * Which figure is wanted at the cursor: one is put there, and the language itself says how it reads it. Nothing where no unit
 * follows.
 */
export function wantedFigureAt({ near, openBlocks }: Cursor): WantedFigure | undefined {
    const before = near === '' || /\s$/.test(near) ? near : `${near} `;
    const close = ' }'.repeat(openBlocks);
    const bare = readText('near.cover', `${before}${STAND_IN}${close}`);
    const wanted = bare.unitProblems.find(({ origin }) => origin.start === before.length)?.wanted?.[0];
    if (wanted === undefined || wanted === 'count') {
        return undefined;
    }
    const reading = readText('near.cover', `${before}${STAND_IN} ${LIKELY_UNITS[wanted][0]!}${close}`);
    const path = pathTo([reading.menus, reading.houses, reading.rooms, reading.kinds], before.length);
    const pour = reading.menus
        .flatMap(({ courses }) => courses)
        .flatMap(({ pours, dishes }) => [...pours, ...dishes.flatMap((dish) => dish.pours)])
        .flatMap((each) => [each, ...each.instead])
        .findLast(({ origin }) => origin.start <= before.length && before.length < origin.end);
    return (
        path && {
            dimension: wanted,
            path: path.filter((key) => !/^\d+$/.test(key)).join('.'),
            ...(pour?.kind ? { drink: pour.kind.name } : {}),
        }
    );
}

/** The members that lead to the figure written at an offset. */
function pathTo(value: unknown, offset: number): string[] | undefined {
    if (typeof value !== 'object' || value === null) {
        return undefined;
    }
    if ('dimension' in value && 'origin' in value && (value.origin as { start?: number }).start === offset) {
        return [];
    }
    for (const [key, inside] of Object.entries(value)) {
        const path = pathTo(inside, offset);
        if (path) {
            return [key, ...path];
        }
    }
    return undefined;
}
