import type { Piece } from '../plan/cupboard.js';
import type { Customs } from '../plan/types.js';
import type { Cover } from '../service/types.js';

/**
 * One thing of a cover in the cover's own frame: millimetres, origin at the table's edge in front of the guest, x to the guest's
 * right, y away from the guest.
 */
export interface PlacedPiece {
    readonly name: string;
    readonly label: string;
    readonly shape: 'fork' | 'knife' | 'spoon' | 'round' | 'napkin';
    /** Middle of the piece. */
    readonly x: number;
    readonly y: number;
    /** Along the handle, or the diameter. */
    readonly length: number;
    readonly width: number;
    /** Where the handle points away from: 0 lies with its tip away from the guest, 90 with its tip to the right. */
    readonly degrees: 0 | 90 | 270;
    readonly row: 'left' | 'right' | 'above' | 'bread' | 'glasses' | 'centre';
}

/** Sizes for pieces whose cupboard entry gives none, mm (common practice, no source). */
const USUAL = {
    fork: 190,
    knife: 220,
    spoon: 180,
    width: 24,
    plate: 260,
    breadPlate: 160,
    glass: 75,
    napkin: 180,
} as const;

const middle = (piece: Piece, measure: string): number | undefined => {
    const figure = piece.measures[measure];
    return figure && (figure.low + figure.high) / 2;
};

/** Places what lies at the cover when guests sit: plate, pieces outward from it, what lies above, bread plate, glasses, napkin. */
export function placeCover(cover: Cover, customs: Customs): PlacedPiece[] {
    const edge = customs.edge.value;
    const gap = customs['piece-gap'].value;
    const plateSize = (cover.servicePlate && middle(cover.servicePlate, 'across')) ?? USUAL.plate;
    const placed: PlacedPiece[] = [];

    const plateMiddle = edge + plateSize / 2;
    if (cover.servicePlate) {
        placed.push({
            ...base(cover.servicePlate, 'round', 'centre'),
            x: 0,
            y: plateMiddle,
            length: plateSize,
            width: plateSize,
        });
    }

    /** Pieces outward from the plate; the list runs outermost first. */
    const outward = (pieces: Cover['left'], row: 'left' | 'right'): number => {
        const sign = row === 'left' ? -1 : 1;
        let x = plateSize / 2;
        for (const { piece } of pieces.toReversed()) {
            const flat = flatware(piece);
            x += gap + flat.width / 2;
            placed.push({ ...base(piece, flat.shape, row), ...flat, x: sign * x, y: edge + flat.length / 2 });
            x += flat.width / 2;
        }
        return x;
    };
    const leftEnd = outward(cover.left, 'left');
    outward(cover.right, 'right');

    let above = plateMiddle + plateSize / 2 + customs['dessert-gap'].value;
    for (const { piece } of cover.above) {
        const flat = flatware(piece);
        // The spoon's handle is to the right and the fork's to the left, so that each comes to its hand.
        const degrees = flat.shape === 'fork' ? 90 : 270;
        placed.push({ ...base(piece, flat.shape, 'above'), ...flat, degrees, x: 0, y: above + flat.width / 2 });
        above += flat.width + gap;
    }

    const tips = (row: 'left' | 'right'): number =>
        Math.max(
            edge + USUAL.fork,
            ...placed.filter((each) => each.row === row).map((each) => each.y + each.length / 2),
        );
    if (cover.bread) {
        const size = middle(cover.bread, 'across') ?? USUAL.breadPlate;
        const x = -Math.max(plateSize / 2 + gap, (plateSize / 2 + leftEnd) / 2) - size / 4;
        const y = tips('left') + gap + size / 2;
        placed.push({ ...base(cover.bread, 'round', 'bread'), x, y, length: size, width: size });
        for (const { piece } of cover.breadPlate) {
            const flat = flatware(piece);
            placed.push({ ...base(piece, flat.shape, 'bread'), ...flat, degrees: 270, x, y: y + size / 5 });
        }
    }
    placed.push(...placeGlasses(cover, placed, tips('right') + customs['water-glass-gap'].value, gap));

    const napkin = {
        name: 'napkin',
        label: 'napkin',
        shape: 'napkin',
        degrees: 0,
        length: USUAL.napkin,
        width: USUAL.napkin / 2,
        row: 'centre',
    } as const;
    if (cover.napkin === 'on-plate') {
        placed.push({ ...napkin, x: 0, y: plateMiddle });
    } else {
        placed.push({ ...napkin, x: -(leftEnd + gap + napkin.width / 2), y: edge + napkin.length / 2 });
    }
    return placed;
}

/** The first glass at the tip of the innermost piece on the right, the others outward from it in a row that falls back. */
function placeGlasses(cover: Cover, placed: readonly PlacedPiece[], from: number, gap: number): PlacedPiece[] {
    const inner = placed.filter((each) => each.row === 'right').toSorted((a, b) => a.x - b.x)[0];
    let x = inner?.x ?? USUAL.plate / 2 + gap;
    let y = from;
    return cover.glasses.map(({ piece }, index) => {
        const size = middle(piece, 'across') ?? USUAL.glass;
        x += index === 0 ? 0 : size / 2 + gap;
        y += index === 0 ? size / 2 : -gap;
        const glass = { ...base(piece, 'round', 'glasses'), x, y, length: size, width: size };
        x += size / 2;
        return glass;
    });
}

function flatware(piece: Piece): { shape: 'fork' | 'knife' | 'spoon'; length: number; width: number } {
    const shape = piece.family === 'knife' || piece.family === 'spoon' ? piece.family : 'fork';
    return { shape, length: middle(piece, 'length') ?? USUAL[shape], width: middle(piece, 'width') ?? USUAL.width };
}

function base<S extends PlacedPiece['shape'], R extends PlacedPiece['row']>(piece: Piece, shape: S, row: R) {
    return {
        name: piece.name,
        label: piece.called ?? piece.name.replaceAll('-', ' '),
        shape,
        row,
        degrees: 0 as const,
    };
}
