import type { CustomName, CustomSource } from '../customs.js';

/** What some sources say; the others of the same disagreement say something else. */
export interface Position {
    readonly says: string;
    readonly sources: readonly CustomSource[];
}

interface Dispute {
    /** 1–39, as in `table-service`, "Where the published sources disagree". */
    readonly number: number;
    readonly about: string;
    readonly positions: readonly Position[];
}

/** A point on which published authorities differ: a house takes its side with a custom, or no check depends on it. */
export type Disagreement =
    (Dispute & { readonly carriedBy: readonly CustomName[] }) | (Dispute & { readonly noCheck: string });
