import { placeGlasses } from './place-glasses.js';
import { bottomAt, freest, lowestClear } from './room-at-the-cover.js';
import type { CoverRow, CoverSurroundings, CoverToPlace, LayingDistances, PieceToPlace, PlacedPiece } from './types.js';

/** Turns of a piece that lies across: its handle to the guest's right, or to the left. */
const HANDLE_RIGHT = 90;
const HANDLE_LEFT = 270;

/**
 * Where every piece of a cover lies, in the order in which it is laid: plate, pieces outward from it, dessert pieces above, the
 * first glass, bread plate, the other glasses, napkin and card; then what is brought, where it goes when it comes.
 * On a round table the pieces lie straight, and an outer one moves in where the edge curves away beneath it (table-service 3.18).
 */
export function placeCover(
    cover: CoverToPlace,
    distances: LayingDistances,
    surroundings: CoverSurroundings = {},
): PlacedPiece[] {
    const { edge, plateEdge, pieceGap: gap } = distances;
    const { radius } = surroundings;
    const placed: PlacedPiece[] = [];
    const lay = (piece: PieceToPlace, row: CoverRow, x: number, y: number, degrees = 0): PlacedPiece => {
        const { id, name, label, shape, length, width, course } = piece;
        const laid = { id, name, label, shape, row, when: 'laid', course, x, y, length, width, degrees } as const;
        placed.push(laid);
        return laid;
    };
    const plate = { radius: cover.centre / 2, y: plateEdge + cover.centre / 2 };

    if (cover.servicePlate) {
        lay(cover.servicePlate, 'centre', 0, plate.y);
    }

    /** Pieces outward from `start`; the list runs outermost first. Returns how far the last one reaches. */
    const outward = (pieces: readonly PieceToPlace[], side: 'left' | 'right', start: number): number => {
        let reach = start;
        for (const piece of pieces.toReversed()) {
            const outer = reach + gap + piece.width;
            const y = Math.max(edge, bottomAt(radius, outer)) + piece.length / 2;
            lay(piece, side, (side === 'left' ? -1 : 1) * (outer - piece.width / 2), y);
            reach = outer;
        }
        return reach;
    };
    const leftReach = outward(cover.left, 'left', plate.radius);
    outward(cover.right, 'right', plate.radius);

    let above = plate.y + plate.radius + distances.dessertGap;
    for (const piece of cover.above) {
        // Bowl or blade to the left, tines to the right: each handle comes to its own hand (table-service 5.23).
        lay(piece, 'above', 0, above + piece.width / 2, piece.shape === 'fork' ? HANDLE_LEFT : HANDLE_RIGHT);
        above += piece.width + gap;
    }

    placeGlasses(cover.glasses.slice(0, 1), placed, { distances, plate, surroundings, lay });
    placeBread(cover, placed, { distances, plate, leftReach, surroundings, lay });
    placeGlasses(cover.glasses.slice(1), placed, { distances, plate, surroundings, lay });
    placeNapkinAndCard(cover, { distances, plate, leftReach, above, radius, lay });
    if (cover.saltAndPepper) {
        // Beyond what each guest reaches for; between two covers it stands at the right of every other one.
        const deepest = Math.max(...placed.map((piece) => piece.y + extent(piece).up / 2), above);
        const x = distances.saltAndPepper === 'each-cover' ? 0 : distances.coverWidth / 2;
        lay(cover.saltAndPepper, 'middle', x, deepest + gap + cover.saltAndPepper.width / 2, HANDLE_RIGHT);
    }
    return [...placed, ...placeBrought(cover, placed, distances, plate, surroundings)];
}

export type Laying = (piece: PieceToPlace, row: CoverRow, x: number, y: number, degrees?: number) => PlacedPiece;

interface BreadSetting {
    readonly distances: LayingDistances;
    readonly plate: { readonly radius: number; readonly y: number };
    readonly leftReach: number;
    readonly surroundings: CoverSurroundings;
    readonly lay: Laying;
}

/** How far the bread plate is moved at a time in search of a place that no neighbour has, mm. */
const STEP = 10;

/** At the tips of the forks, upper left (table-service 5.8); nearer the middle where a neighbour's glass is in the way. */
function placeBread(
    cover: CoverToPlace,
    placed: readonly PlacedPiece[],
    { distances, plate, leftReach, surroundings, lay }: BreadSetting,
): void {
    const { breadPlate } = cover;
    if (!breadPlate) {
        return;
    }
    const { pieceGap: gap } = distances;
    const radius = breadPlate.length / 2;
    const obstacles = placed.filter((piece) => piece.row === 'left' || piece.id === 'service-plate');
    const aboveReach = Math.max(0, ...cover.above.map((piece) => piece.length / 2 + gap));
    const innermost = -radius - aboveReach;
    const at = (x: number): PlacedPiece => ({
        ...asPlaced(breadPlate, 'bread'),
        x,
        y: lowestClear(x, radius, gap, obstacles),
    });
    const usual = Math.min(innermost, -(plate.radius + leftReach) / 2);
    const steps = Math.ceil((innermost - usual) / STEP);
    const places = Array.from({ length: steps + 1 }, (_, step) => at(Math.min(innermost, usual + step * STEP)));
    const place = freest(places, placed, surroundings);
    const { x, y } = place;
    lay(breadPlate, 'bread', x, y);
    for (const piece of cover.onBreadPlate) {
        const { dx, dy, degrees } = SPREADER[distances.butterSpreader];
        lay(piece, 'bread', x + dx * radius, y + dy * radius, degrees);
    }
}

/** How the butter spreader lies on its plate: away from the plate's middle in radii, and its turn (table-service 2.17–2.22). */
const SPREADER = {
    across: { dx: 0, dy: 0.4, degrees: HANDLE_RIGHT },
    diagonal: { dx: 0, dy: 0, degrees: 45 },
    'edge-left': { dx: 0.4, dy: 0, degrees: 0 },
    'edge-right': { dx: 0.4, dy: 0, degrees: 0 },
    'upper-right': { dx: 0.45, dy: 0.45, degrees: 45 },
} as const;

interface NapkinSetting {
    readonly distances: LayingDistances;
    readonly plate: { readonly radius: number; readonly y: number };
    readonly leftReach: number;
    readonly above: number;
    readonly radius: number | undefined;
    readonly lay: Laying;
}

function placeNapkinAndCard(
    { napkin, placeCard }: CoverToPlace,
    { distances, plate, leftReach, above, radius, lay }: NapkinSetting,
): void {
    const { edge, pieceGap: gap } = distances;
    const outer = leftReach + gap + (napkin?.width ?? 0);
    const isOnPlate = distances.napkin === 'on-plate';
    const place = isOnPlate
        ? { x: 0, y: plate.y }
        : {
              x: -(outer - (napkin?.width ?? 0) / 2),
              y: Math.max(edge, bottomAt(radius, outer)) + (napkin?.length ?? 0) / 2,
          };
    if (napkin) {
        lay(napkin, isOnPlate ? 'centre' : 'left', place.x, place.y);
    }
    if (!placeCard || distances.placeCard === 'none') {
        return;
    }
    const y = {
        'above-plate': above + placeCard.width / 2,
        'on-napkin': place.y,
        'in-front-of-plate': plate.y + plate.radius - placeCard.width / 2,
    }[distances.placeCard];
    lay(
        placeCard,
        distances.placeCard === 'above-plate' ? 'above' : 'centre',
        distances.placeCard === 'on-napkin' ? place.x : 0,
        y,
        HANDLE_RIGHT,
    );
}

/**
 * A placed cover with the vessels of its courses, which come where the service plate stood. Nothing else lies elsewhere for them but
 * for the largest, which the cover is placed around.
 */
export function withVessels(
    placed: readonly PlacedPiece[],
    vessels: readonly PieceToPlace[],
    { centre }: Pick<CoverToPlace, 'centre'>,
    { plateEdge }: LayingDistances,
): PlacedPiece[] {
    const y = plateEdge + centre / 2;
    return [
        ...placed.filter(({ when }) => when === 'laid'),
        ...vessels.map((piece): PlacedPiece => ({ ...asPlaced(piece, 'centre'), when: 'brought', y })),
        ...placed.filter(({ when }) => when === 'brought'),
    ];
}

/** What comes with its course goes outside what then still lies there. */
function placeBrought(
    cover: CoverToPlace,
    laid: readonly PlacedPiece[],
    distances: LayingDistances,
    plate: { readonly radius: number; readonly y: number },
    surroundings: CoverSurroundings,
): PlacedPiece[] {
    const { edge, pieceGap: gap } = distances;
    const placed: PlacedPiece[] = [];
    const bring = (piece: PieceToPlace, row: CoverRow, x: number, y: number, degrees = 0): PlacedPiece => {
        const brought: PlacedPiece = { ...asPlaced(piece, row), when: 'brought', x, y, degrees };
        placed.push(brought);
        return brought;
    };
    /** How far the pieces of a side reach that are not used up when a course comes. */
    const reach = (side: 'left' | 'right', course: number): number =>
        Math.max(
            plate.radius,
            ...[...laid, ...placed]
                .filter((each) => each.row === side && each.shape !== 'napkin' && stands(each, course))
                .map((each) => Math.abs(each.x) + each.width / 2),
        );

    const inner = cover.brought.toReversed();
    for (const piece of inner) {
        const { side, course } = piece;
        if (side === 'left' || side === 'right') {
            const outer = reach(side, course) + gap + piece.width;
            const y = Math.max(edge, bottomAt(surroundings.radius, outer)) + piece.length / 2;
            bring(piece, side, (side === 'left' ? -1 : 1) * (outer - piece.width / 2), y);
        } else if (side === 'above') {
            const tops = [...laid, ...placed]
                .filter((each) => each.row === 'above')
                .map((each) => each.y + each.width / 2);
            const from = Math.max(plate.y + plate.radius + distances.dessertGap, ...tops.map((top) => top + gap));
            bring(piece, 'above', 0, from + piece.width / 2, piece.shape === 'fork' ? HANDLE_LEFT : HANDLE_RIGHT);
        } else {
            const bread = laid.find((each) => each.id === 'bread-plate');
            bring(piece, 'bread', bread?.x ?? -plate.radius, bread?.y ?? plate.y + plate.radius, HANDLE_RIGHT);
        }
    }
    placeGlasses(cover.broughtGlasses, laid, { distances, plate, surroundings, lay: bring });
    if (cover.cup) {
        const { cup, saucer, spoons } = cover.cup;
        const across = saucer?.length ?? cup.length;
        const usual = distances.cupPlace === 'centre' ? 0 : reach('right', cup.course) + gap + across / 2;
        const glasses = [...laid, ...placed].filter((each) => each.row === 'glasses');
        // The place is bare when coffee comes: the cup moves in where a glass is in its way.
        const places = Array.from({ length: Math.floor(usual / STEP) + 1 }, (_, step): PlacedPiece => {
            const x = usual - step * STEP;
            const y = Math.max(distances.cupEdge, bottomAt(surroundings.radius, x + across / 2)) + across / 2;
            return { ...asPlaced(saucer ?? cup, 'saucer'), x, y };
        });
        const isApart = (place: PlacedPiece): boolean =>
            glasses.every((each) => Math.hypot(each.x - place.x, each.y - place.y) >= (each.length + across) / 2);
        const { x, y } = freest(places.filter(isApart).concat(places[0]!), laid, surroundings);
        if (saucer) {
            bring(saucer, 'saucer', x, y);
        }
        bring(cup, 'saucer', x, y);
        for (const spoon of spoons) {
            bring(spoon, 'saucer', x, y + across * 0.34, HANDLE_RIGHT);
        }
    }
    return placed;
}

/** True where a piece still lies there when a course comes: it is for that course or a later one, or for none. */
export function stands(piece: PlacedPiece, course: number): boolean {
    return piece.course < 0 || piece.course >= course;
}

function asPlaced(piece: PieceToPlace, row: CoverRow): PlacedPiece {
    const { id, name, label, shape, length, width, course } = piece;
    return { id, name, label, shape, row, when: 'laid', course, x: 0, y: 0, length, width, degrees: 0 };
}

/** How much room a piece takes along the table edge and away from it. */
export function extent({ length, width, degrees }: PlacedPiece): { readonly across: number; readonly up: number } {
    const turn = (degrees * Math.PI) / 180;
    const [sine, cosine] = [Math.abs(Math.sin(turn)), Math.abs(Math.cos(turn))];
    return { across: width * cosine + length * sine, up: length * cosine + width * sine };
}
