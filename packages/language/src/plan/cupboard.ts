import type { Named, Origin } from './origin.js';
import type { Quantity } from './quantity.js';

/** Families decide the side a piece lies on and the store it is kept in; everything else about a piece is a fact. */
export type PieceFamily = 'fork' | 'knife' | 'spoon' | 'glass' | 'bowl' | 'plate' | 'cup' | 'linen' | 'gear';

/** One measured fact of a piece. `low` and `high` are in the computing unit of `dimension`; equal for a single figure. */
export interface Figure {
    readonly low: number;
    readonly high: number;
    readonly size: Quantity;
    /** Source id such as `table-service 3.62`, or `common practice`. */
    readonly source?: string;
}

export interface Piece {
    readonly name: string;
    readonly family: PieceFamily;
    readonly parent?: Named;
    readonly fresh: boolean;
    readonly called?: string;
    /** Other words for it, which nobody may write in its place. */
    readonly also: readonly string[];
    /** By the word written: `length`, `across`, `height`, `depth`, `holds`, `widest`, `width`, …, or a material (its mass): `fact-words.ts`. */
    readonly measures: Readonly<Record<string, Figure>>;
    /** Words without a figure: `stem`, `stainless`, … */
    readonly flags: readonly Named[];
    readonly tines?: { readonly low: number; readonly high: number };
    /** Kinds of dish or drink it suits, as written; a kind's descendants are suited too. */
    readonly suits: readonly Named[];
    /** What must lie under it: an underliner or the saucer. */
    readonly on: readonly Named[];
    readonly pairs: readonly Named[];
    readonly sources: readonly string[];
    readonly origin: Origin;
    readonly nameOrigin: Origin;
}

export interface PieceUse {
    readonly piece: Named;
    readonly state?: 'warmed' | 'chilled';
    readonly to?: Quantity;
    readonly brought: boolean;
    readonly laid: boolean;
    readonly origin: Origin;
}

/** Each inner list is one piece with its alternatives (`bouillon-spoon or soup-spoon`); the outer list is joined by `and`. */
export type Eaten = readonly (readonly PieceUse[])[];

export interface Contains {
    /** Empty for `contains nothing`. */
    readonly what: readonly Named[];
    readonly origin: Origin;
}

export type Band = 'hot' | 'warm' | 'cool' | 'cold' | 'frozen';

/** A kind of dish or course (`sort: 'kind'`) or of drink (`sort: 'drink'`). Values its parents state are already filled in. */
export interface Kind {
    readonly name: string;
    readonly sort: 'kind' | 'drink';
    readonly parent?: Named;
    readonly fresh: boolean;
    readonly called?: string;
    /** Other words for it, which nobody may write in its place. */
    readonly also: readonly string[];
    /** Itself first, then its parents. */
    readonly lineage: readonly string[];
    readonly eaten?: Eaten;
    readonly vessels: readonly { readonly how: 'in' | 'on'; readonly names: readonly Named[] }[];
    readonly band?: Band;
    /** Wanted in front of the guest, °C. */
    readonly range?: { readonly low: number; readonly high: number; readonly source?: string };
    readonly of: readonly Named[];
    readonly usually?: Contains;
    readonly follows: readonly Named[];
    readonly portion?: { readonly low: Quantity; readonly high: Quantity };
    readonly cookTo?: Quantity;
    readonly strength?: Quantity;
    readonly raw?: 'raw' | 'undercooked';
    readonly sources: readonly string[];
    readonly origin: Origin;
    readonly nameOrigin: Origin;
}

/** An allergen or an ingredient a diet excludes. */
export interface Substance {
    readonly name: string;
    readonly sort: 'allergen' | 'ingredient';
    readonly parents: readonly Named[];
    readonly requiredIn: readonly Named[];
    /** The duty lists its sorts by name: a sort that is not listed has none, unlike a prawn, which is a crustacean. */
    readonly eachByName: boolean;
    readonly called: readonly { readonly words: string; readonly code?: string }[];
    /** Other words for it, which nobody may write in its place. */
    readonly also: readonly string[];
    readonly fresh: boolean;
    readonly sources: readonly string[];
    readonly origin: Origin;
    readonly nameOrigin: Origin;
}

export interface Diet {
    readonly name: string;
    readonly excludes: readonly Named[];
    /** Only a dish that says `suits …` feeds this diet. */
    readonly statedOnly: boolean;
    /** schema.org RestrictedDiet member, where one exists. */
    readonly term?: string;
    readonly mark?: string;
    readonly called?: string;
    /** Other words for it, which nobody may write in its place. */
    readonly also: readonly string[];
    readonly fresh: boolean;
    readonly sources: readonly string[];
    readonly origin: Origin;
    readonly nameOrigin: Origin;
}

export interface LocalCode {
    readonly name: string;
    readonly called?: string;
    readonly zones: readonly string[];
    /** By the word written: `hot-holding`, `cold-holding`, `reheat`, `standard-drink`, … */
    readonly figures: Readonly<Record<string, Figure>>;
    readonly fresh: boolean;
    readonly sources: readonly string[];
    readonly origin: Origin;
    readonly nameOrigin: Origin;
}

/** All declarations in reach, the nearer file's first: the house's own over the standard cupboard's. */
export interface Cupboard {
    readonly pieces: ReadonlyMap<string, Piece>;
    readonly kinds: ReadonlyMap<string, Kind>;
    readonly drinks: ReadonlyMap<string, Kind>;
    readonly substances: ReadonlyMap<string, Substance>;
    readonly diets: ReadonlyMap<string, Diet>;
    readonly codes: ReadonlyMap<string, LocalCode>;
}
