import { remember } from '../remember.js';
import { seenFrom, type Pose } from './outline.js';
import { belongTogether, overlapOf, solid, type Solid } from './overlap.js';
import { extent, placeCover, stands } from './place-cover.js';
import { centreLeft, edgeRadius, overEdge, poseOf, type SeatPlace, type TableTop } from './table-top.js';
import type { CoverOnTable, CoverToPlace, LayingDistances, Overlap, PlacedPiece } from './types.js';

export interface CoversToLay {
    readonly cover: CoverToPlace;
    /** As the house lays, and as close as it may. */
    readonly distances: LayingDistances;
    readonly drawnTogether: LayingDistances;
    readonly top: TableTop;
    /** Width wanted in the middle of the table, mm. */
    readonly keptFree: number;
}

/** Smaller reaches over the edge are the noise of the figures, mm. */
const NOISE = 0.5;

/**
 * The same cover at every seat of a table: as the house lays it, or drawn together where pieces would otherwise lie on each
 * other, hang over the edge or fill the middle.
 */
export const layCovers = remember((input: CoversToLay): CoverOnTable => {
    const usual = layAll(input, input.distances, 'as-the-house-lays');
    if (unfitness(usual, input) === 0) {
        return usual;
    }
    const closer = layAll(input, input.drawnTogether, 'drawn-together');
    return unfitness(closer, input) < unfitness(usual, input) ? closer : usual;
}, 128);

/** How badly covers fit: all millimetres that pieces would have to move, and a share of those missing in the middle. */
function unfitness({ overlaps, offTable, centre }: CoverOnTable, { keptFree }: CoversToLay): number {
    const tooNear = [...overlaps, ...offTable].reduce((sum, { by }) => sum + by, 0);
    return tooNear + Math.max(0, keptFree - centre) * GIVES_WAY;
}

/** What stands in the middle can give way; a piece on another or over the edge can't. */
const GIVES_WAY = 0.25;

interface LaidSeat {
    readonly seat: SeatPlace;
    readonly pieces: readonly PlacedPiece[];
    /** Seats with the same edge in front of them have the same cover. */
    readonly sort: number;
}

function layAll(
    { cover, top, keptFree }: CoversToLay,
    distances: LayingDistances,
    laid: CoverOnTable['laid'],
): CoverOnTable {
    const radii = [...new Set(top.seats.map((seat) => edgeRadius(top, seat)?.toFixed(0)))];
    const covers = radii.map((written) => {
        const radius = written === undefined ? undefined : Number(written);
        const clash = laid === 'drawn-together' ? clashOn(top, keptFree) : undefined;
        return placeCover(cover, distances, { radius, clash });
    });
    const seats = top.seats.map((seat): LaidSeat => {
        const sort = radii.indexOf(edgeRadius(top, seat)?.toFixed(0));
        return { seat, sort, pieces: covers[sort]! };
    });
    return {
        laid,
        pieces: covers[0] ?? placeCover(cover, distances),
        overlaps: overlapsOf(seats),
        offTable: offTable(top, seats),
        centre: centreLeft(
            top,
            seats.map(({ seat, pieces }) => ({
                seat,
                pieces: pieces.filter((piece) => isOfCover(piece) && piece.when === 'laid'),
            })),
        ),
    };
}

/** Cards and salt can stand anywhere; vessels stand where the plate is. */
const isOfCover = (piece: PlacedPiece): boolean =>
    piece.row !== 'middle' && piece.shape !== 'card' && !(piece.row === 'centre' && piece.when === 'brought');

// ---------------------------------------------------------------- neighbours
/** How the other covers lie as seen from each, each way once. */
function neighbourPoses({ seats }: TableTop): Pose[] {
    const poses = new Map<string, Pose>();
    for (const seat of seats) {
        for (const other of seats) {
            if (seat !== other) {
                const pose = seenFrom(poseOf(seat), poseOf(other));
                poses.set(keyOf(pose), pose);
            }
        }
    }
    return [...poses.values()];
}

const keyOf = ({ x, y, degrees }: Pose): string =>
    `${x.toFixed(1)} ${y.toFixed(1)} ${(((degrees % 360) + 360) % 360).toFixed(2)}`;

/** How far a piece would lie on a neighbour's, whose cover is laid the same way, over the edge, or in the middle of the table. */
function clashOn(top: TableTop, keptFree: number): (piece: PlacedPiece, placed: readonly PlacedPiece[]) => number {
    const poses = neighbourPoses(top);
    const known = new WeakMap<PlacedPiece, readonly Solid[]>();
    const copiesOf = (piece: PlacedPiece): readonly Solid[] => {
        const copies = known.get(piece) ?? poses.map((pose) => solid(piece, pose));
        known.set(piece, copies);
        return copies;
    };
    const deepest = (Math.min(top.width, top.depth) - keptFree) / 2;
    return (piece, placed) => {
        const own = solid(piece);
        const inMiddle = Math.max(0, piece.y + extent(piece).up / 2 - deepest) * GIVES_WAY;
        const copies = [...placed.filter(isOfCover), piece].flatMap(copiesOf);
        const onOthers = copies.reduce((sum, copy) => sum + overlapOf(own, copy), 0);
        return (
            onOthers + inMiddle + Math.max(0, ...top.seats.map((seat) => overEdge(top, piece, poseOf(seat)) - NOISE))
        );
    };
}

// ---------------------------------------------------------------- overlaps
/** What stands at a cover at one time: when guests sit, and when something is brought. */
function momentsOf(pieces: readonly PlacedPiece[]): PlacedPiece[][] {
    const ofCover = pieces.filter(isOfCover);
    const laid = ofCover.filter((piece) => piece.when === 'laid');
    const brought = ofCover.filter((piece) => piece.when === 'brought');
    const courses = [...new Set(brought.map((piece) => piece.course))];
    const hasCup = (course: number): boolean =>
        brought.some((piece) => piece.row === 'saucer' && piece.course === course);
    return [
        laid,
        ...courses.map((course) => [
            ...laid.filter((piece) => isStillThere(piece, course, hasCup(course))),
            ...brought.filter((piece) => piece.course === course || (piece.row === 'glasses' && piece.course < course)),
        ]),
    ];
}

/** Glasses stay; the plate before the guest is the course's own, the napkin is on the lap, and bread is gone when the cup comes. */
function isStillThere(piece: PlacedPiece, course: number, hasCup: boolean): boolean {
    switch (piece.row) {
        case 'glasses':
            return true;
        case 'bread':
            return !hasCup;
        default:
            return piece.shape !== 'napkin' && piece.row !== 'centre' && stands(piece, course);
    }
}

function overlapsOf(seats: readonly LaidSeat[]): Overlap[] {
    const found = new Map<string, Overlap>();
    const note = (overlap: Overlap): void => {
        const isOwn = overlap.seat === overlap.otherSeat;
        const pair = [overlap.piece, overlap.other].toSorted().join(' ');
        const key = `${isOwn ? 'own' : 'neighbour'} ${pair}`;
        if ((found.get(key)?.by ?? 0) < overlap.by) {
            found.set(key, overlap);
        }
    };
    const seen = new Set<string>();
    seats.forEach(({ seat, pieces, sort }, index) => {
        if (!seen.has(`${sort}`)) {
            seen.add(`${sort}`);
            withinCover(pieces, seat.number, note);
        }
        for (const other of seats.slice(index + 1)) {
            const pose = seenFrom(poseOf(seat), poseOf(other.seat));
            const key = `${sort} ${other.sort} ${keyOf(pose)}`;
            // Covers further apart than two arms' length never meet.
            if (Math.hypot(pose.x, pose.y) < FAR && !seen.has(key)) {
                seen.add(key);
                betweenCovers({ seat, pieces, sort }, other, pose, note);
            }
        }
    });
    return [...found.values()].toSorted((a, b) => b.by - a.by);
}

/** No cover reaches further than half of this, mm. */
const FAR = 2000;

function withinCover(pieces: readonly PlacedPiece[], seat: number, note: (overlap: Overlap) => void): void {
    for (const moment of momentsOf(pieces)) {
        const solids = moment.map((piece) => solid(piece));
        solids.forEach((one, index) => {
            for (const other of solids.slice(index + 1)) {
                const by = belongTogether(one.piece, other.piece) ? 0 : overlapOf(one, other);
                if (by > 0) {
                    note({ piece: one.piece.id, other: other.piece.id, seat, otherSeat: seat, by });
                }
            }
        });
    }
}

function betweenCovers(mine: LaidSeat, theirs: LaidSeat, pose: Pose, note: (overlap: Overlap) => void): void {
    const moments = momentsOf(theirs.pieces);
    momentsOf(mine.pieces).forEach((moment, index) => {
        const others = (moments[index] ?? []).map((piece) => solid(piece, pose));
        for (const one of moment.map((piece) => solid(piece))) {
            for (const other of others) {
                const by = overlapOf(one, other);
                if (by > 0) {
                    const [seat, otherSeat] = [mine.seat.number, theirs.seat.number];
                    note({ piece: one.piece.id, other: other.piece.id, seat, otherSeat, by });
                }
            }
        }
    });
}

function offTable(top: TableTop, seats: readonly LaidSeat[]): CoverOnTable['offTable'] {
    const worst = new Map<string, CoverOnTable['offTable'][number]>();
    for (const { seat, pieces } of seats) {
        for (const piece of pieces.filter(isOfCover)) {
            const by = overEdge(top, piece, poseOf(seat));
            if (by > NOISE && by > (worst.get(piece.id)?.by ?? 0)) {
                worst.set(piece.id, { piece: piece.id, seat: seat.number, by });
            }
        }
    }
    return [...worst.values()].toSorted((a, b) => b.by - a.by);
}
