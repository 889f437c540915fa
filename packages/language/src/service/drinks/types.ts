/** What is drunk, what it is bought in, and what that comes to for a guest. Volumes in ml, for the guests expected. */
import type { Origin } from '../../plan/origin.js';
import type { Coffee } from '../../plan/types.js';
import type { Conflict, GuestGroup, PourFacts, Step, Variation } from '../types.js';

/** Bottles of one size, ml. */
export interface Bottles {
    readonly size: number;
    readonly count: number;
}

/** Bottles as a merchant counts them. */
export interface Cases {
    readonly size: number;
    /** Bottles of one case. */
    readonly each: number;
    readonly full: number;
    /** Bottles beyond the full cases. */
    readonly loose: number;
    /** Cases that hold them all. */
    readonly toOrder: number;
}

/** One pour of the menu, or a drink offered in its place, and the guests who take it. */
export interface PourUse {
    readonly facts: PourFacts;
    /** The pour it is offered in place of. */
    readonly insteadOf?: PourFacts;
    /** Whose guests it is for and may have it. */
    readonly groups: readonly GuestGroup[];
    readonly drinkers: number;
    /** Of the drinkers, those who may not have what it takes the place of. */
    readonly keptFrom: number;
    readonly rounds: Rounds;
    /** ml of one full pour: its own, else that of the pour it takes the place of. */
    readonly measure: number;
    readonly millilitres: number;
}

/** How often one drinker's glass is poured. */
export interface Rounds {
    /** The first pour and its refills. */
    readonly full: number;
    /** Further courses it is topped up through, a topping-up each. */
    readonly toppedUp: number;
    /** Toasts drunk from a glass that is not poured in the course before them. */
    readonly toasts: readonly { readonly title: string; readonly origin: Origin }[];
    /** Full pours that all of it comes to: each topping-up counts as the house's share of one. */
    readonly pours: number;
}

/** What one drink, by its title, needs over the whole evening. */
export interface PourNeed {
    readonly title: string;
    /** Of its first pour. */
    readonly facts: PourFacts;
    /** In the order poured. */
    readonly uses: readonly PourUse[];
    /** Guests who have it in the course in which most do. */
    readonly drinkers: number;
    /** Full pours of one drinker over the evening: all of its uses in courses, of each course's dishes one. */
    readonly poursEach: number;
    readonly millilitres: number;
    /** What the host tastes, ml, beside it. */
    readonly tasted: number;
    /** The sizes it is bought in; one that the plan doesn't state is a guess. */
    readonly sizes: readonly number[];
    readonly isSizeStated: boolean;
    readonly bottles: readonly Bottles[];
    /** Of the sizes that come by the case. */
    readonly cases: readonly Cases[];
    /** In the bottles beyond what is poured and tasted, ml. */
    readonly leftOver: number;
    /** Grams of ethanol of one drinker over the evening; absent where the strength is not known. */
    readonly ethanolEach?: number;
    /** Standard drinks of one drinker by the local code; absent where strength or code don't say. */
    readonly drinksEach?: number;
    readonly glass?: GlassUse;
}

/** The glass of a drink at the covers that have it. */
export interface GlassUse {
    readonly piece: string;
    /** Guests at whose cover it stands. */
    readonly count: number;
    readonly comes: 'laid' | 'with-its-course';
    /** The step in which it leaves. */
    readonly leaves: Step;
}

/** One of the waters offered. */
export interface WaterNeed {
    readonly choice: 'still' | 'sparkling';
    readonly drinkers: number;
    readonly rounds: Rounds;
    /** ml of one full glass, and whether the plan says so or the glass and the house's fill do. */
    readonly measure: number;
    readonly isMeasureStated: boolean;
    readonly millilitres: number;
    readonly from: 'jugs' | 'bottles';
    /** Bottles to buy, or how often a jug is filled. */
    readonly count: number;
    /** ml that one bottle holds, or that a jug is filled with. */
    readonly size: number;
    readonly leftOver: number;
}

/** What a guest with these dishes has who takes every pour of alcohol: a line for caution, not an amount to reach. */
export interface AlcoholEach {
    readonly variation: Variation;
    /** g of ethanol. */
    readonly grams: number;
    /** Absent where the code in force states no standard drink. */
    readonly drinks?: number;
    readonly by: readonly { readonly use: PourUse; readonly grams: number; readonly drinks?: number }[];
}

/** Guests who may have none of the drinks that they are offered. */
export interface RefusedPour {
    /** The pour itself, whether it is left off for them or not. */
    readonly facts: PourFacts;
    readonly group: GuestGroup;
    readonly count: number;
    /** The pour unless it is left off for them, then what is in its place and is not; at least one, each with a conflict. */
    readonly offered: readonly { readonly drink: PourFacts; readonly conflicts: readonly Conflict[] }[];
}

/** Guests who may not have the coffee as it goes round, or what comes beside it. */
export interface RefusedCoffee {
    readonly coffee: Coffee;
    readonly group: GuestGroup;
    readonly count: number;
    readonly conflicts: readonly Conflict[];
}
