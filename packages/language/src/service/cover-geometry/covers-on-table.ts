import { keepCompiled } from '../../keep-compiled.js';
import { lazily } from '../../plan/lazily.js';
import { remember } from '../remember.js';
import { isOfCover } from './moments.js';
import { overlapOf, OWN, Solid } from './overlap.js';
import { overlapsAmong, waysBetween } from './overlaps-among-covers.js';
import { extent, placeCover } from './place-cover.js';
import {
    centreLeft,
    differentSeats,
    edgeRadius,
    overEdge,
    poseOf,
    type SeatPlace,
    type TableTop,
} from './table-top.js';
import type { CoverOnTable, CoverSurroundings, CoverToPlace, LayingDistances, PlacedPiece } from './types.js';

export interface CoverToLay {
    readonly cover: CoverToPlace;
    /** As the house lays, and as close as it may. */
    readonly distances: LayingDistances;
    readonly drawnTogether: LayingDistances;
    /** Width wanted in the middle of the table, mm. */
    readonly keptFree: number;
}

interface CoversToLay extends CoverToLay {
    readonly top: TableTop;
}

/** Smaller reaches over the edge are the noise of the figures, mm. */
const NOISE = 0.5;

/**
 * The same cover at every seat of whichever table: as the house lays it, or drawn together where pieces would otherwise lie
 * on each other, hang over the edge or fill the middle.
 */
export const layCovers = remember(
    (cover: CoverToLay) => remember((top: TableTop): CoverOnTable => layOn({ ...cover, top }), 32),
    128,
);

function layOn(input: CoversToLay): CoverOnTable {
    const usual = layAll(input, input.distances, 'as-the-house-lays');
    if (isFit(usual, input)) {
        return usual;
    }
    const closer = layAll(input, input.drawnTogether, 'drawn-together');
    return isFit(closer, input) || unfitness(closer, input) < unfitness(usual, input) ? closer : usual;
}

/** How badly covers fit: all millimetres that pieces would have to move, and a share of those missing in the middle. */
function unfitness({ overlaps, offTable, centre }: CoverOnTable, { keptFree }: CoversToLay): number {
    const tooNear = [...overlaps, ...offTable].reduce((sum, { by }) => sum + by, 0);
    return tooNear + Math.max(0, keptFree - centre) * GIVES_WAY;
}

/** Whether covers lie as they should. What is quick to know is asked first. */
function isFit(covers: CoverOnTable, { keptFree }: CoversToLay): boolean {
    return covers.offTable.length === 0 && covers.centre >= keptFree && covers.overlaps.length === 0;
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
    const different = seats.filter(({ seat }) => differentSeats(top).includes(seat));
    const overlaps = lazily(() =>
        overlapsAmong(
            seats.map(({ seat, pieces, sort }) => ({ number: seat.number, pose: poseOf(seat), pieces, sort })),
        ),
    );
    return {
        laid,
        pieces: covers[0] ?? placeCover(cover, distances),
        // Worked out last: a cover over the edge is laid another way before anybody asks.
        get overlaps() {
            return overlaps();
        },
        offTable: offTable(top, different),
        centre: centreLeft(
            top,
            different.map(({ seat, pieces }) => ({
                seat,
                pieces: pieces.filter((piece) => isOfCover(piece) && piece.when === 'laid'),
            })),
        ),
    };
}

// ---------------------------------------------------------------- neighbours
/** How far a piece would lie on a neighbour's, whose cover is laid the same way, over the edge, or in the middle of the table. */
function clashOn(top: TableTop, keptFree: number): NonNullable<CoverSurroundings['clash']> {
    const seats = top.seats.map(poseOf);
    const neighbours = waysBetween(seats);
    const known = new WeakMap<PlacedPiece, readonly Solid[]>();
    const copiesOf = (piece: PlacedPiece): readonly Solid[] => {
        const copies = known.get(piece) ?? neighbours.map((pose) => new Solid(piece, pose));
        known.set(piece, copies);
        return copies;
    };
    const places = differentSeats(top).map(poseOf);
    const deepest = (Math.min(top.width, top.depth) - keptFree) / 2;
    return (piece, placed) => {
        const own = keepCompiled(new Solid(piece, OWN));
        let by = Math.max(0, piece.y + extent(piece).up / 2 - deepest) * GIVES_WAY;
        for (const each of [...placed.filter(isOfCover), piece]) {
            for (const copy of copiesOf(each)) {
                by += overlapOf(own, copy);
            }
        }
        return by + Math.max(0, ...places.map((pose) => overEdge(top, piece, pose) - NOISE));
    };
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
