import type { Piece } from '../../plan/cupboard.js';
import type { PieceShape } from './types.js';

/** Sizes of pieces whose cupboard entry gives none, mm (common practice, no source). */
const USUAL = {
    fork: { length: 190, width: 24 },
    knife: { length: 220, width: 22 },
    spoon: { length: 180, width: 36 },
    plate: 260,
    bowl: 150,
    glass: 75,
    cup: 85,
    card: { length: 76, width: 50 },
    /** A pair standing side by side. */
    saltAndPepper: { length: 90, width: 45 },
    napkin: 560,
} as const;

/** The share of the open napkin that lies on the table, by custom `napkin-fold`: along and across. */
const FOLDED = { thirds: [3, 6], quarters: [2, 4], eighths: [2, 8] } as const;

interface Size {
    readonly shape: PieceShape;
    readonly length: number;
    readonly width: number;
}

/** The middle of what the cupboard says, mm; absent where it says nothing. */
export function measured(piece: Piece | undefined, measure: string): number | undefined {
    const figure = piece?.measures[measure];
    return figure?.size.dimension === 'length' ? (figure.low + figure.high) / 2 : undefined;
}

/** A piece as it lies on the table. `width` is its widest part. */
export function sizeOf(piece: Piece): Size {
    switch (piece.family) {
        case 'fork':
        case 'knife':
        case 'spoon':
            return flat(piece, piece.family);
        case 'glass':
            return round(measured(piece, 'across') ?? USUAL.glass);
        case 'bowl':
            return round(measured(piece, 'across') ?? USUAL.bowl);
        case 'cup':
            return round(measured(piece, 'across') ?? USUAL.cup);
        case 'plate':
            return round(measured(piece, 'across') ?? USUAL.plate);
        default:
            // Tongs, crackers and other gear that is eaten with lie as a fork does.
            return flat(piece, 'fork');
    }
}

function flat(piece: Piece, shape: 'fork' | 'knife' | 'spoon'): Size {
    const usual = USUAL[shape];
    return {
        shape,
        length: measured(piece, 'length') ?? usual.length,
        width: measured(piece, 'width') ?? usual.width,
    };
}

const round = (across: number): Size => ({ shape: 'round', length: across, width: across });

export function napkinSize(napkin: Piece | undefined, fold: keyof typeof FOLDED): Size {
    const open = measured(napkin, 'length') ?? USUAL.napkin;
    const [along, across] = FOLDED[fold];
    return { shape: 'napkin', length: open / along, width: (measured(napkin, 'width') ?? open) / across };
}

/** Its long side lies along the table edge. */
export function cardSize(card: Piece | undefined): Size {
    return {
        shape: 'card',
        length: measured(card, 'length') ?? USUAL.card.length,
        width: measured(card, 'width') ?? USUAL.card.width,
    };
}

export function saltAndPepperSize(set: Piece | undefined): Size {
    return {
        shape: 'pair',
        length: measured(set, 'length') ?? USUAL.saltAndPepper.length,
        width: measured(set, 'width') ?? USUAL.saltAndPepper.width,
    };
}

export const USUAL_PLATE = USUAL.plate;
