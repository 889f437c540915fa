import { keepCompiled } from '../../keep-compiled.js';
import { isOfCover, momentsOf } from './moments.js';
import { seenFrom, toFrame, type Pose } from './outline.js';
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
    const sorts = new Map<number, Pieces>();
    const piecesOf = ({ sort, pieces }: LaidCover): Pieces => {
        const known = sorts.get(sort) ?? gather(pieces);
        sorts.set(sort, known);
        return known;
    };
    const note = (one: Solid, other: Solid, seat: number, otherSeat: number): void => {
        const by = overlapOf(one, other);
        const isOwn = seat === otherSeat;
        if (by > 0 && !(isOwn && belongTogether(one.piece, other.piece))) {
            const [piece, second] = [one.piece.id, other.piece.id];
            const key = `${isOwn ? 'own' : 'other'} ${[piece, second].toSorted().join(' ')}`;
            if ((found.get(key)?.by ?? 0) < by) {
                found.set(key, { piece, other: second, seat, otherSeat, by });
            }
        }
    };
    covers.forEach((cover, index) => {
        if (isNew(seen, `${cover.sort}`)) {
            within(piecesOf(cover), (one, other) => note(one, other, cover.number, cover.number));
        }
        for (const other of covers.slice(index + 1)) {
            const pose = seenFrom(cover.pose, other.pose);
            if (isNear(pose) && isNew(seen, `${cover.sort} ${other.sort} ${keyOf(pose)}`)) {
                between(piecesOf(cover), piecesOf(other), pose, (one, two) =>
                    note(one, two, cover.number, other.number),
                );
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

/** What can lie on something else at a cover, when it stands there, and a circle that holds all of it. */
interface Pieces {
    readonly solids: readonly Solid[];
    readonly moments: readonly number[];
    readonly around: Circle;
}

type Circle = Pick<Solid, 'x' | 'y' | 'reach'>;

function gather(all: readonly PlacedPiece[]): Pieces {
    const pieces = all.filter(isOfCover);
    const solids = pieces.map((piece) => keepCompiled(new Solid(piece, OWN)));
    const x = solids.reduce((sum, each) => sum + each.x, 0) / solids.length;
    const y = solids.reduce((sum, each) => sum + each.y, 0) / solids.length;
    const reach = Math.max(...solids.map((each) => Math.hypot(each.x - x, each.y - y) + each.reach));
    return { solids, moments: momentsOf(pieces), around: { x, y, reach } };
}

const meet = (one: Circle, other: Circle): boolean =>
    (one.x - other.x) ** 2 + (one.y - other.y) ** 2 < (one.reach + other.reach) ** 2;

function within({ solids, moments }: Pieces, visit: (one: Solid, other: Solid) => void): void {
    for (let index = 0; index < solids.length; index++) {
        for (let next = index + 1; next < solids.length; next++) {
            const [one, other] = [solids[index]!, solids[next]!];
            if ((moments[index]! & moments[next]!) !== 0) {
                visit(one, other);
            }
        }
    }
}

/** Pairs of pieces of two covers that stand there at one time, the far ones left out early: most are. */
function between(mine: Pieces, theirs: Pieces, pose: Pose, visit: (one: Solid, other: Solid) => void): void {
    const around = { ...toFrame(pose, theirs.around), reach: theirs.around.reach };
    if (!meet(mine.around, around)) {
        return;
    }
    const near: { solid: Solid; moments: number }[] = [];
    theirs.solids.forEach(({ piece }, index) => {
        const solid = keepCompiled(new Solid(piece, pose));
        if (meet(solid, mine.around)) {
            near.push({ solid, moments: theirs.moments[index]! });
        }
    });
    mine.solids.forEach((one, index) => {
        for (const other of meet(one, around) ? near : []) {
            if ((mine.moments[index]! & other.moments) !== 0) {
                visit(one, other.solid);
            }
        }
    });
}
