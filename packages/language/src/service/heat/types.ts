/** What the heat section says of a plan. Plain values: temperatures in °C, times in min, dishes by their place in the menu. */
import type { Band } from './band.js';
import type { Answer } from './inverse.js';
import type { SolidStart } from './solid.js';

/** Air of the room, and how much of it is stated. */
export interface Air {
    readonly celsius: number;
    /** Relative humidity, 0–1. */
    readonly humidity: number;
}

export interface Heat {
    readonly air: Air;
    /** Dishes whose temperature, or time, at the guest follows from something the plan states; in the menu's order. */
    readonly dishes: readonly DishHeat[];
    /** Pours and coffee that say how warm they are wanted; in the order of `service.pours`, coffee last. */
    readonly drinks: readonly DrinkHeat[];
    /** Warmed or chilled pieces that come with a course. */
    readonly pieces: readonly PieceHeat[];
}

/** How the temperature at the guest is found. */
export type HeatModel =
    /** Cooling of a liquid in its vessel (temperature 13). */
    | 'liquid'
    /** Published drops between the pass and the guest (temperature 8): solid food on plates. */
    | 'published-drop'
    /** Solid food from its start and one thermometer reading, by one time constant (temperature W9, W10). */
    | 'reading'
    /** Frozen food, and whatever states `within`: a time and nothing else. */
    | 'time-limit';

/** The time of one plate from plating to the guest who may begin on it. */
export interface Journey {
    readonly table: string;
    /** Its vessel, empty and out of the warmer, before the plate is plated. */
    readonly outOfWarmer: number;
    /** On the pass. */
    readonly standing: number;
    readonly carried: number;
    /** Before its guest is seated, where the course is preset. */
    readonly waiting: number;
}

/** One guest's plate. */
export interface AtGuest {
    readonly journey: Journey;
    readonly minutes: number;
    /** Absent for `time-limit` and `published-drop`, which know no minutes. */
    readonly temperature?: Band;
}

export interface DishHeat {
    readonly course: number;
    readonly dish: number;
    readonly side: 'hot' | 'cold' | 'frozen';
    readonly model: HeatModel;
    readonly wanted?: number;
    /** What it starts from, and what says so. */
    readonly start?: { readonly celsius: number; readonly how: 'leaves-the-pass' | 'held' | 'reading' };
    /** What it is served in, as it is warmed or chilled. */
    readonly vessel?: {
        readonly celsius: number;
        readonly how: 'stated' | 'custom' | 'room' | 'kept';
        /** What the last guest's has cooled to, empty, before it is filled; absent where it comes straight from the warmer. */
        readonly cooledTo?: number;
    };
    readonly liquid?: { readonly grams: number; readonly surfaceDiameter: number };
    readonly covered: boolean;
    readonly pouredAtTable: boolean;
    /** In the vessel, just after the pour. */
    readonly poured?: Band;
    /** At any guest, whatever the way took: for `published-drop`. */
    readonly published?: Band;
    readonly first?: AtGuest;
    readonly last?: AtGuest;
    /** The longest time it may take, where the plan says so. */
    readonly within?: number;
    /** Standing in the room from the pour on, by the minute from 0: for liquids whose start is known. */
    readonly byMinute: readonly number[];
    /** Minutes from the pour until it is no longer as wanted, standing in the room. */
    readonly staysFor?: number;
    readonly answers?: Answers;
    /** What is not stated and was taken as usual, in words for the reader. */
    readonly assumed: readonly string[];
}

/** The inverse questions, for the last guest; where no run sheet tells the way, for the moment of the pour. */
export interface Answers {
    /** How warm (or cold) the vessel has to be. */
    readonly vessel?: Answer;
    /** How hot (or cold) it has to leave the pass. */
    readonly pass?: Answer;
    /** Where a warmer vessel alone will not do: the vessel as warm as it may be, and how hot it has to leave the pass then. */
    readonly together?: { readonly vessel: number; readonly pass: Answer };
    /** At the last guest were it carried covered, °C, where it is carried open and arrives too cool. */
    readonly covered?: number;
    /** The hottest it may leave the pass for the first guest not to be scalded, °C, where that one is. */
    readonly hottest?: number;
    /** For solids: where it has to start, by the least and the most of the published drops. */
    readonly range?: { readonly from: SolidStart; readonly low: number; readonly high: number };
}

export interface DrinkHeat {
    /** Index in `service.pours`; -1 for coffee. */
    readonly pour: number;
    readonly title: string;
    readonly wanted: number;
    /** In the glass or cup just after the pour, from a bottle at what is wanted or a pot at what it is held at. */
    readonly poured: Band;
    readonly from: { readonly celsius: number; readonly how: 'bottle' | 'pot' };
    /** In the glass straight from where the pour says it is chilled: no bottle is colder than that. */
    readonly coldest?: { readonly bath: number; readonly celsius: number };
    /** How cold the bottle, or hot the pot, has to be to have it as wanted. */
    readonly needed: Answer;
    /** Minutes in the glass from what is wanted until it leaves its kind's range; 120 at most. */
    readonly staysFor?: number;
    readonly assumed: readonly string[];
}

export interface PieceHeat {
    readonly course: number;
    readonly dish: number;
    readonly piece: string;
    readonly from: number;
    readonly first?: Band;
    readonly last?: Band;
    /** Skin at the first touch of the first guest's piece, °C (temperature 4.2). */
    readonly touch?: number;
}
