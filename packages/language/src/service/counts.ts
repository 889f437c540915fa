import type { Plan } from '../plan/types.js';
import { flatwareOf } from './cover.js';
import type { DishFacts, PieceCount, Service, Variation } from './types.js';

interface Counted {
    readonly plan: Plan;
    readonly variations: readonly Variation[];
    readonly facts: readonly DishFacts[];
    readonly coffee?: Service['coffee'];
}

/**
 * How many of each piece the evening needs, without spares and without washing between courses: what every cover holds, what is
 * brought to it, what every dish is served in.
 */
export function countPieces({ plan, variations, facts, coffee }: Counted): PieceCount[] {
    const byPiece = new Map<string, Map<string, { course: number; purpose: string; count: number }>>();
    const add = (piece: string, course: number, purpose: string, count: number): void => {
        if (count === 0) {
            return;
        }
        const uses = byPiece.get(piece) ?? new Map<string, { course: number; purpose: string; count: number }>();
        const key = `${course} ${purpose}`;
        const use = uses.get(key) ?? { course, purpose, count: 0 };
        use.count += count;
        byPiece.set(piece, uses.set(key, use));
    };
    for (const { cover, count, dishes } of variations) {
        for (const piece of flatwareOf(cover)) {
            add(piece.piece.name, piece.course, piece.purpose, count);
        }
        for (const glass of [...cover.glasses, ...cover.broughtGlasses]) {
            add(glass.piece.name, glass.course, 'drinking', count);
        }
        if (cover.servicePlate) {
            add(cover.servicePlate.name, -1, 'service plate', count);
        }
        if (cover.bread) {
            add(cover.bread.name, -1, 'bread', count);
        }
        for (const each of facts.filter(({ dish }) => dishes.includes(dish))) {
            if (each.vessel) {
                add(each.vessel.name, each.course.index, 'serving', count);
            }
            if (each.underliner) {
                add(each.underliner.name, each.course.index, 'underliner', count);
            }
        }
        if (coffee?.cup) {
            const after = plan.menu?.courses.length ?? 0;
            add(coffee.cup.name, after, 'coffee', count);
            for (const saucer of coffee.cup.on.slice(0, 1)) {
                add(saucer.name, after, 'coffee', count);
            }
        }
        add('napkin', -1, 'napkin', count);
    }
    return [...byPiece]
        .map(([piece, uses]) => ({
            piece,
            needed: [...uses.values()].reduce((sum, use) => sum + use.count, 0),
            by: [...uses.values()],
        }))
        .toSorted((a, b) => (a.piece < b.piece ? -1 : 1));
}
