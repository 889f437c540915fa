import { freest, lowestClear } from './room-at-the-cover.js';
import type { CoverRow, CoverSurroundings, LayingDistances, PieceToPlace, PlacedPiece } from './types.js';

export interface GlassSetting {
    readonly distances: LayingDistances;
    readonly plate: { readonly radius: number; readonly y: number };
    readonly surroundings: CoverSurroundings;
    readonly lay: (piece: PieceToPlace, row: CoverRow, x: number, y: number) => PlacedPiece;
}

/** The knife whose tip a place has none of: its tip from the table edge and half its width, mm (common practice, no source). */
const USUAL_KNIFE = { tip: 245, half: 11 };

/**
 * From the first glass outward, by the custom `glass-shape`: where the next stands, in degrees counter-clockwise from the
 * guest's right, and seen from which glass (1 is the one before).
 */
const SHAPES: Record<LayingDistances['glassShape'], readonly (readonly [degrees: number, from: number])[]> = {
    row: [[0, 1]],
    triangle: [
        [0, 1],
        [120, 1],
    ],
    diamond: [
        [-30, 1],
        [30, 2],
        [-30, 1],
    ],
    fan: [[-30, 1]],
};

/** Where else a glass may stand beside an earlier one when its own place is taken, nearest the guest's hand first. */
const OTHER_PLACES = [0, -15, -30, -45, -60, 15, 30, 45, 60, 75, 90, 105, 120];

/**
 * In order of use: the first at the tip of the knife or where the house wants it, the others outward from it.
 * @param laid what stands there already, other glasses among it
 */
export function placeGlasses(
    glasses: readonly PieceToPlace[],
    laid: readonly PlacedPiece[],
    setting: GlassSetting,
): void {
    const others = [...laid];
    for (const glass of glasses) {
        const earlier = others.filter((piece) => piece.row === 'glasses');
        const places = earlier.length === 0 ? firstPlaces(glass, others, setting) : nextPlaces(glass, earlier, setting);
        const place = freest(places, others, setting.surroundings, (each) => isClear(each, others, setting.distances));
        others.push(setting.lay(glass, 'glasses', place.x, place.y));
    }
}

const NOISE = 1e-6;

/** A glass keeps its gap from the other glasses, from the dessert pieces, and from flatware and plate below it. */
function isClear(place: PlacedPiece, others: readonly PlacedPiece[], { pieceGap: gap }: LayingDistances): boolean {
    const below = others.filter((piece) => piece.row === 'right' || piece.row === 'centre');
    const above = others.filter((piece) => piece.row === 'above' && piece.shape !== 'card');
    const beside = Math.max(0, ...above.map((piece) => piece.length / 2 + gap)) + place.length / 2;
    const apart = (each: PlacedPiece): number =>
        Math.hypot(each.x - place.x, each.y - place.y) - (each.length + place.length) / 2;
    return (
        place.x >= beside - NOISE &&
        lowestClear(place.x, place.length / 2, gap, below) <= place.y + NOISE &&
        others.every((each) => each.row !== 'glasses' || apart(each) >= gap - NOISE)
    );
}

const asGlass = (glass: PieceToPlace, x: number, y: number): PlacedPiece => ({
    ...glass,
    row: 'glasses',
    when: 'laid',
    degrees: 0,
    x,
    y,
});

/** Best first: by the shape the house wants, then round the earlier glasses, the last one first. */
function* nextPlaces(
    glass: PieceToPlace,
    earlier: readonly PlacedPiece[],
    { distances: { pieceGap: gap, glassShape } }: GlassSetting,
): Generator<PlacedPiece> {
    const beside = (from: PlacedPiece, degrees: number): PlacedPiece => {
        const apart = (from.length + glass.length) / 2 + gap;
        const turn = (degrees * Math.PI) / 180;
        return asGlass(glass, from.x + apart * Math.cos(turn), from.y + apart * Math.sin(turn));
    };
    const shape = SHAPES[glassShape];
    const [degrees, back] = shape[(earlier.length - 1) % shape.length]!;
    yield beside(earlier.at(-Math.min(back, earlier.length))!, degrees);
    for (const from of earlier.toReversed()) {
        for (const each of OTHER_PLACES) {
            yield beside(from, each);
        }
    }
}

/** Best first: where the house wants the first glass, and then nearer the plate. */
function firstPlaces(
    glass: PieceToPlace,
    laid: readonly PlacedPiece[],
    { distances, plate }: GlassSetting,
): PlacedPiece[] {
    const { pieceGap: gap, waterGlass, waterGlassGap } = distances;
    const radius = glass.length / 2;
    const inRow = (row: CoverRow): PlacedPiece[] =>
        laid
            .filter((piece) => piece.row === row && piece.shape !== 'napkin')
            .toSorted((a, b) => Math.abs(a.x) - Math.abs(b.x));
    const aboveReach = Math.max(0, ...inRow('above').map((piece) => piece.length / 2 + gap));
    const clear = (x: number, ...rows: readonly CoverRow[]): number =>
        lowestClear(
            x,
            radius,
            gap,
            laid.filter((piece) => rows.includes(piece.row)),
        );
    if (waterGlass === 'above-plate') {
        return [asGlass(glass, radius, clear(radius, 'centre', 'above'))];
    }
    const isLeft = waterGlass === 'behind-forks';
    const side = isLeft ? -1 : 1;
    const pieces = inRow(isLeft ? 'left' : 'right');
    const knives = pieces.filter((piece) => piece.shape === 'knife');
    const longest = knives.toSorted((a, b) => b.length - a.length)[0];
    const aside = waterGlass === 'above-knives' ? radius / 2 : 0;
    const tips = [longest, pieces[0]].flatMap((piece) =>
        piece ? [{ x: Math.abs(piece.x), y: piece.y + piece.length / 2 }] : [],
    );
    const usual = { x: plate.radius + gap + USUAL_KNIFE.half, y: USUAL_KNIFE.tip };
    return [...tips, ...(tips.length === 0 ? [usual] : [])].map((tip) => {
        const x = side * Math.max(tip.x + aside, aboveReach + radius);
        return asGlass(
            glass,
            x,
            Math.max(tip.y + waterGlassGap + radius, clear(x, isLeft ? 'left' : 'right', 'centre')),
        );
    });
}
