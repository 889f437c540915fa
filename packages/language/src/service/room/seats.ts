import type { PlacedSeat, PlacedTable } from './types.js';

/** The long side of a rectangle or an oval is its width. */
export interface TableShape {
    readonly shape: PlacedTable['shape'];
    readonly width: number;
    readonly depth: number;
}

/** Length of the edge of a table, mm. */
export function edgeLength({ shape, width, depth }: TableShape): number {
    switch (shape) {
        case 'round':
            return Math.PI * width;
        case 'oval':
            return ellipseLength(width / 2, depth / 2);
        default:
            return 2 * (width + depth);
    }
}

/** Ramanujan's second formula: for any table shape closer than a thousandth of a millimetre a metre. */
function ellipseLength(a: number, b: number): number {
    const h = ((a - b) / (a + b)) ** 2;
    return Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
}

/**
 * Guests that a table seats at a given width each, mm: by its edge, or by its long sides and an end where a guest fits
 * (quantities §7.1).
 */
export function seatsThatFit(table: TableShape, coverWidth: number): number {
    const { shape, width } = table;
    const along = (side: number): number => Math.floor(side / coverWidth + NOISE);
    switch (shape) {
        case 'round':
        case 'oval':
            return along(edgeLength(table));
        case 'square':
            return 4 * along(width);
        case 'rectangle':
            return 2 * along(width);
    }
}

const NOISE = 1e-9;

/**
 * The shortest table with straight sides for guests along two of them and one at each end, mm. A cover at an end takes `end` of
 * the length from those along the sides (quantities R12: 25 inch a place and 29 inch for both ends).
 */
export function leastLength(guests: number, coverWidth: number, end: number): number {
    return 2 * end + coverWidth * Math.ceil((guests - 2) / 2);
}

/** How the guests of a table with straight sides are shared out: near side, right end, far side, left end. */
type Sides = readonly [near: number, right: number, far: number, left: number];

/**
 * Guests go along the long sides at the width the house aims at, then one to each end that is wide enough; those still left
 * make the long sides closer.
 */
export function shareOut(
    { shape, width, depth }: TableShape,
    guests: number,
    coverWidth: number,
    leastWidth: number,
): Sides {
    if (shape === 'square') {
        // Opposite sides first, so that two guests face each other.
        const [near, far, right, left] = [0, 1, 2, 3].map((place) => Math.floor((guests + 3 - place) / 4));
        return [near!, right!, far!, left!];
    }
    const roomy = 2 * Math.max(1, Math.floor(width / coverWidth + NOISE));
    const ends = Math.min(Math.max(0, guests - roomy), depth + NOISE >= leastWidth ? 2 : 0);
    const along = guests - ends;
    return [Math.ceil(along / 2), Math.ceil(ends / 2), Math.floor(along / 2), Math.floor(ends / 2)];
}

/**
 * Seats round a table, numbered to the guests' right as service goes round (table-service 8.13, 8.14), the first at the near
 * side. Guests at a round or oval table share its edge evenly; those along a straight side share that side.
 */
export function placeSeats(
    table: TableShape,
    guests: number,
    accessible: number,
    { coverWidth, leastWidth }: { readonly coverWidth: number; readonly leastWidth: number },
): PlacedSeat[] {
    const places =
        table.shape === 'round' || table.shape === 'oval'
            ? roundSeats(table, guests)
            : sideSeats(table, shareOut(table, guests, coverWidth, leastWidth));
    return places.map((place, index) => ({ number: index + 1, ...place, accessible: index < accessible }));
}

type Place = Omit<PlacedSeat, 'number' | 'accessible'>;

function sideSeats({ width, depth }: TableShape, [near, right, far, left]: Sides): Place[] {
    const along = (count: number, length: number, place: (from: number) => Omit<Place, 'pitch'>): Place[] =>
        Array.from({ length: count }, (_, index) => ({
            ...place(((index + 0.5) / count - 0.5) * length),
            pitch: length / count,
        }));
    return [
        ...along(near, width, (x) => ({ x, y: -depth / 2, degrees: 90 })),
        ...along(right, depth, (y) => ({ x: width / 2, y, degrees: 180 })),
        ...along(far, width, (x) => ({ x: -x, y: depth / 2, degrees: 270 })),
        ...along(left, depth, (y) => ({ x: -width / 2, y: -y, degrees: 0 })),
    ];
}

function roundSeats(table: TableShape, guests: number): Place[] {
    const { shape, width, depth } = table;
    const [a, b] = [width / 2, shape === 'round' ? width / 2 : depth / 2];
    const pitch = edgeLength(table) / guests;
    const angles = shape === 'round' ? evenAngles(guests) : anglesAlongEllipse(a, b, guests);
    return angles.map((angle) => {
        const [x, y] = [a * Math.cos(angle), b * Math.sin(angle)];
        // The guest looks square across the edge: against the direction in which it faces outward.
        const outward = Math.atan2(y / b ** 2, x / a ** 2);
        return {
            x: tidy(x),
            y: tidy(y),
            degrees: tidy(((((outward * 180) / Math.PI + 180) % 360) + 360) % 360),
            pitch,
        };
    });
}

const START = -Math.PI / 2;

const evenAngles = (count: number): number[] =>
    Array.from({ length: count }, (_, index) => START + (2 * Math.PI * index) / count);

/** Steps in which the edge of an oval is measured. */
const STEPS = 1440;

/** The parameters at which an ellipse is divided into arcs of one length, from the near side counter-clockwise. */
function anglesAlongEllipse(a: number, b: number, count: number): number[] {
    const at = (step: number): number => START + (2 * Math.PI * step) / STEPS;
    const lengths = [0];
    for (let step = 1; step <= STEPS; step++) {
        const middle = (at(step) + at(step - 1)) / 2;
        const piece = Math.hypot(a * Math.sin(middle), b * Math.cos(middle)) * ((2 * Math.PI) / STEPS);
        lengths.push(lengths[step - 1]! + piece);
    }
    const whole = lengths[STEPS]!;
    let step = 0;
    return Array.from({ length: count }, (_, index) => {
        const wanted = (whole * index) / count;
        while (lengths[step + 1]! < wanted) {
            step++;
        }
        const within = (wanted - lengths[step]!) / (lengths[step + 1]! - lengths[step]!);
        return at(step) + within * (at(1) - at(0));
    });
}

/** A figure in mm or degrees without the noise of binary fractions. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
