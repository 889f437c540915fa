import type { Element } from 'hast';
import type { Origin } from '../../../plan/origin.js';
import type { Fill } from './lane.js';

/** A part of the drawing with its top at 0. */
export interface Section {
    readonly height: number;
    /** Lines and bars. */
    readonly ink: readonly Element[];
    readonly words: readonly Element[];
}

/** Numbers the places in the plan that parts of the drawing come from, and knows how its bars are filled. */
export class Sink {
    readonly places: Origin[] = [];
    readonly fills = new Set<Fill>();
    readonly #numbers = new Map<string, number>();

    /** Its number, as the drawing carries it; nothing where it comes from nowhere. */
    at(origin: Origin | undefined): string | undefined {
        if (!origin) {
            return undefined;
        }
        const key = `${origin.file} ${origin.start} ${origin.end}`;
        const number = this.#numbers.get(key) ?? this.places.push(origin) - 1;
        this.#numbers.set(key, number);
        return `${number}`;
    }
}
