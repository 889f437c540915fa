import { isOfCover, momentsOf } from './moments.js';
import { seenFrom, type Pose } from './outline.js';
import { belongTogether, overlapOf, OWN, Solid } from './overlap.js';
import type { Overlap, PlacedPiece } from './types.js';

/** A cover where it lies on a table. */
export interface LaidCover {
    /** Of the seat. */
    readonly number: number;
    readonly pose: Pose;
    readonly pieces: readonly PlacedPiece[];
    /** Covers of one sort have the same pieces in the same places. */
    readonly sort: number;
}

/** Pieces that lie on each other, within each cover and from one to another; of each pair of pieces the worst, worst first. */
export function overlapsAmong(covers: readonly LaidCover[]): Overlap[] {
    const found = new Map<string, Overlap>();
    const seen = new Set<string>();
    const note = (overlap: Overlap): void => {
        const isOwn = overlap.seat === overlap.otherSeat;
        const key = `${isOwn ? 'own' : 'other'} ${[overlap.piece, overlap.other].toSorted().join(' ')}`;
        if ((found.get(key)?.by ?? 0) < overlap.by) {
            found.set(key, overlap);
        }
    };
    covers.forEach((cover, index) => {
        if (isNew(seen, `${cover.sort}`)) {
            compare(cover, cover, OWN, note);
        }
        for (const other of covers.slice(index + 1)) {
            const pose = seenFrom(cover.pose, other.pose);
            if (isNear(pose) && isNew(seen, `${cover.sort} ${other.sort} ${keyOf(pose)}`)) {
                compare(cover, other, pose, note);
            }
        }
    });
    return [...found.values()].toSorted((a, b) => b.by - a.by);
}

/** How other covers that are near enough to matter lie as seen from each, each way once. */
export function waysBetween(covers: readonly Pose[]): Pose[] {
    const ways = new Map<string, Pose>();
    for (const cover of covers) {
        for (const other of covers) {
            const pose = seenFrom(cover, other);
            if (cover !== other && isNear(pose)) {
                ways.set(keyOf(pose), pose);
            }
        }
    }
    return [...ways.values()];
}

/** No cover reaches further than half of this from its place at the edge, mm. */
const FAR = 1600;

const isNear = ({ x, y }: Pose): boolean => Math.hypot(x, y) < FAR;

const keyOf = ({ x, y, degrees }: Pose): string =>
    `${x.toFixed(1)} ${y.toFixed(1)} ${(((degrees % 360) + 360) % 360).toFixed(2)}`;

function isNew(seen: Set<string>, key: string): boolean {
    const isFirst = !seen.has(key);
    seen.add(key);
    return isFirst;
}

/** Each pair of pieces that stand there at one time. */
function compare(cover: LaidCover, other: LaidCover, pose: Pose, note: (overlap: Overlap) => void): void {
    const isOwn = cover === other;
    const pieces = cover.pieces.filter(isOfCover);
    const theirs = isOwn ? pieces : other.pieces.filter(isOfCover);
    const moments = momentsOf(pieces);
    const theirMoments = isOwn ? moments : momentsOf(theirs);
    const solids = pieces.map((piece) => new Solid(piece, OWN));
    const others = isOwn ? solids : theirs.map((piece) => new Solid(piece, pose));
    const around = circleAround(others);
    solids.forEach((one, index) => {
        if (!isOwn && Math.hypot(one.x - around.x, one.y - around.y) >= one.reach + around.reach) {
            return;
        }
        for (let next = isOwn ? index + 1 : 0; next < others.length; next++) {
            const two = others[next]!;
            const areTogether = (moments[index]! & theirMoments[next]!) !== 0;
            const by = areTogether && !(isOwn && belongTogether(one.piece, two.piece)) ? overlapOf(one, two) : 0;
            if (by > 0) {
                note({
                    piece: one.piece.id,
                    other: two.piece.id,
                    seat: cover.number,
                    otherSeat: other.number,
                    by,
                });
            }
        }
    });
}

/** A circle that holds all of them: what lies outside it meets none. */
function circleAround(solids: readonly Solid[]): Pick<Solid, 'x' | 'y' | 'reach'> {
    const x = solids.reduce((sum, each) => sum + each.x, 0) / solids.length;
    const y = solids.reduce((sum, each) => sum + each.y, 0) / solids.length;
    return { x, y, reach: Math.max(...solids.map((each) => Math.hypot(each.x - x, each.y - y) + each.reach)) };
}
