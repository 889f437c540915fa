import type { CoverSurroundings, PlacedPiece } from './types.js';

/** How far the edge of a round table has curved away at `x` beside the guest's middle, mm; 0 at a straight one. */
export function bottomAt(radius: number | undefined, x: number): number {
    if (radius === undefined) {
        return 0;
    }
    return Math.abs(x) >= radius ? radius : radius - Math.sqrt(radius ** 2 - x ** 2);
}

/**
 * The nearest place to the guest, straight up at `x`, where a round piece keeps `gap` from all of these that lie below it.
 * Pieces other than round ones count as the rectangles around them.
 * @returns y of its middle, mm; its own radius and the gap where nothing lies below
 */
export function lowestClear(x: number, radius: number, gap: number, obstacles: readonly PlacedPiece[]): number {
    const lowest = obstacles.map((obstacle) => {
        const isRound = obstacle.shape === 'round';
        const turned = obstacle.degrees % 180 !== 0;
        const half = isRound ? 0 : (turned ? obstacle.length : obstacle.width) / 2;
        const top = isRound ? obstacle.y : obstacle.y + (turned ? obstacle.width : obstacle.length) / 2;
        const apart = radius + gap + (isRound ? obstacle.length / 2 : 0);
        const beside = Math.max(0, Math.abs(x - obstacle.x) - half);
        return beside >= apart ? 0 : top + Math.sqrt(apart ** 2 - beside ** 2);
    });
    return Math.max(radius + gap, ...lowest);
}

/**
 * The first place where a piece lies on no neighbour's; where there is none, the one where it does least.
 * @param places at least one, best first; the first is taken where nobody asks for more
 */
export function freest(
    places: Iterable<PlacedPiece>,
    placed: readonly PlacedPiece[],
    { clash }: CoverSurroundings,
    isAllowed: (place: PlacedPiece) => boolean = () => true,
): PlacedPiece {
    let best: PlacedPiece | undefined;
    let least = Infinity;
    for (const place of places) {
        if (best && !isAllowed(place)) {
            continue;
        }
        const by = clash?.(place, placed) ?? 0;
        if (by < least) {
            [best, least] = [place, by];
        }
        if (by === 0) {
            break;
        }
    }
    return best!;
}
