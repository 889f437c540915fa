import type { Dimension } from '../quantity.js';

/** A row, worked setting or §section of the published facts this project rests on, or the mark of a fact without one. */
export type CustomSource =
    `table-service ${string}` | `temperature ${string}` | `quantities ${string}` | 'common practice, no source';

/** One word that a custom accepts. */
export interface CustomChoice {
    readonly value: string;
    readonly means: string;
    readonly sources: readonly CustomSource[];
}

/** The range that a custom accepts, ends included, in the computing unit of its dimension (mm, ml, g, min, °C, share 0–1). */
export interface CustomFigure {
    readonly dimension: Dimension;
    /** The word that may follow `per`, as in `limit: 3 per side`; leaving it out means the same. */
    readonly per?: string;
    readonly low: number;
    readonly high: number;
    readonly sources: readonly CustomSource[];
}

/** A custom that a house declares in `laying { name: value }`. It accepts words, a figure, or either. */
export interface CustomSpec {
    readonly name: string;
    /** What it decides, as one sentence. */
    readonly title: string;
    readonly choices?: readonly CustomChoice[];
    readonly figure?: CustomFigure;
    /** One of the choices, or a figure in the computing unit. */
    readonly default: string | number;
    /** Why that is the default. */
    readonly because: string;
    /** Numbers of the published disagreements it carries; see `disagreements.ts`. */
    readonly disagreements: readonly number[];
}
