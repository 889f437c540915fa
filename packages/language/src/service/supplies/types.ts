/** What is ordered by the guest. */
import type { CustomName } from '../../plan/customs.js';

export interface Supply {
    readonly what: 'ice' | 'water' | 'bread' | 'butter' | 'coffee' | 'ground-coffee' | 'dish';
    /** The bread or dish by its name. */
    readonly title?: string;
    /** Guests it is reckoned for. */
    readonly guests: number;
    /** `count` for rolls and cups, else g or ml. */
    readonly dimension: 'count' | 'mass' | 'volume';
    /** Of one guest. */
    readonly each: number;
    /** What is needed. */
    readonly amount: number;
    /** What is ordered or made: whole bags and batches. */
    readonly packs?: { readonly called: 'bags' | 'batches'; readonly count: number; readonly size: number };
    /** The house's figures it rests on; none where the plan states them. */
    readonly customs: readonly CustomName[];
}

export type Supplies = readonly Supply[];
