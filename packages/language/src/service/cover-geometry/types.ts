/**
 * A cover laid on the table. Millimetres in the cover's own frame: origin at the table edge in front of the guest, x to the
 * guest's right, y away from the guest; degrees counter-clockwise as the guest sees them.
 */

/** `pair`: two round things side by side. */
export type PieceShape = 'fork' | 'knife' | 'spoon' | 'round' | 'napkin' | 'card' | 'pair';

/** Which part of the cover a piece belongs to; `middle` is what stands beyond the covers, toward the middle of the table. */
export type CoverRow = 'left' | 'right' | 'above' | 'bread' | 'glasses' | 'centre' | 'saucer' | 'middle';

export interface PlacedPiece {
    /** Leads back to the cover: see `sourceOfPiece`. `left-1` is the outermost piece of the left side. */
    readonly id: string;
    readonly name: string;
    readonly label: string;
    readonly shape: PieceShape;
    readonly row: CoverRow;
    readonly when: 'laid' | 'brought';
    /** Index of the course it is for; -1 for what is of no course; the number of courses for coffee. */
    readonly course: number;
    /** Middle of the piece. */
    readonly x: number;
    readonly y: number;
    /** Along the handle, or the diameter. */
    readonly length: number;
    readonly width: number;
    /** Where its tip points: 0 away from the guest, 90 to the left, 270 to the right. */
    readonly degrees: number;
}

// ------------------------------------------------------------------ what is to be placed: plain data, without origins
export interface PieceToPlace {
    readonly id: string;
    readonly name: string;
    readonly label: string;
    readonly shape: PieceShape;
    readonly length: number;
    readonly width: number;
    readonly course: number;
}

export interface BroughtPiece extends PieceToPlace {
    readonly side: 'left' | 'right' | 'above' | 'bread';
}

/** Lists run as in the cover: outermost first, above nearest the plate first, glasses from the knife tip outward. */
export interface CoverToPlace {
    readonly servicePlate?: PieceToPlace;
    /** Across the largest plate that stands before the guest this evening. */
    readonly centre: number;
    readonly left: readonly PieceToPlace[];
    readonly right: readonly PieceToPlace[];
    readonly above: readonly PieceToPlace[];
    readonly breadPlate?: PieceToPlace;
    readonly onBreadPlate: readonly PieceToPlace[];
    readonly glasses: readonly PieceToPlace[];
    readonly napkin?: PieceToPlace;
    readonly placeCard?: PieceToPlace;
    readonly saltAndPepper?: PieceToPlace;
    readonly brought: readonly BroughtPiece[];
    readonly broughtGlasses: readonly PieceToPlace[];
    readonly cup?: {
        readonly cup: PieceToPlace;
        readonly saucer?: PieceToPlace;
        readonly spoons: readonly PieceToPlace[];
    };
}

/** The customs that say where things lie. Lengths in mm. */
export interface LayingDistances {
    readonly edge: number;
    readonly plateEdge: number;
    readonly pieceGap: number;
    readonly dessertGap: number;
    readonly waterGlassGap: number;
    readonly cupEdge: number;
    readonly coverWidth: number;
    readonly waterGlass: 'knife-tip' | 'above-plate' | 'above-knives' | 'behind-forks';
    readonly glassShape: 'row' | 'triangle' | 'diamond' | 'fan';
    readonly napkin: 'left' | 'on-plate' | 'below-bread-plate';
    readonly butterSpreader: 'across' | 'diagonal' | 'edge-left' | 'edge-right' | 'upper-right';
    readonly placeCard: 'above-plate' | 'on-napkin' | 'in-front-of-plate' | 'none';
    readonly saltAndPepper: 'between-two' | 'each-cover';
    readonly cupPlace: 'right' | 'centre';
}

/** The table where the cover is laid, as far as the cover feels it. */
export interface CoverSurroundings {
    /** Radius of the table edge in front of the guest; absent where it is straight. */
    readonly radius?: number;
    /** How far a piece would lie on the neighbours' or over the table edge, mm, given what of each cover is placed already. */
    readonly clash?: (piece: PlacedPiece, placed: readonly PlacedPiece[]) => number;
}

// ------------------------------------------------------------------ what is found on the real table
export interface Overlap {
    /** Ids of the pieces. */
    readonly piece: string;
    readonly other: string;
    /** Seats at whose covers they lie; the same seat within one cover. */
    readonly seat: number;
    readonly otherSeat: number;
    /** How far one of them would have to move, mm. */
    readonly by: number;
}

/** One cover on one sort of table. */
export interface CoverOnTable {
    /** Whether everything lies as far apart as the house wants, or closer because the table asks for it. */
    readonly laid: 'as-the-house-lays' | 'drawn-together';
    readonly pieces: readonly PlacedPiece[];
    /** The worst of each pair of pieces, worst first. */
    readonly overlaps: readonly Overlap[];
    /** Pieces that reach over the table edge, furthest first. */
    readonly offTable: readonly { readonly piece: string; readonly seat: number; readonly by: number }[];
    /** Width left in the middle of the table between the covers, mm; negative where they meet. */
    readonly centre: number;
}
