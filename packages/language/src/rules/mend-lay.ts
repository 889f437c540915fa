import type { Named } from '../plan/origin.js';
import type { Dish, Plan } from '../plan/types.js';
import { countAgainstLimit } from '../service/cover-limit.js';
import type { CoverPiece, Service } from '../service/types.js';
import { bringForDish, sameOrigin } from './bring-with-course.js';
import type { Fix, Intention } from './fixes.js';
import { rewriteLay, SIDE_SAID, withoutNames, type LaySide } from './lay-clauses.js';
import { needOf, rankOn, sideOf, type Judged, type Need } from './lay-judgement.js';
import { listed, quoted } from './wording.js';

/** The clause with some names taken out and some pieces put in where the house lays them, in the order of use. */
export function relaid(plan: Plan, judged: Judged, out: readonly Named[], put: readonly Need[]): Intention {
    return rewriteLay(judged.clause.lay, (side, own) => {
        const kept = own
            .filter((named) => !out.includes(named))
            .map((named) => ({ name: named.name, rank: rankFor(plan, judged, side, named) }));
        for (const need of put.filter(({ piece }) => sideOf(piece) === side)) {
            const rank = rankOn(plan, side, need);
            const inner = kept.findIndex((each) => each.rank !== undefined && each.rank > rank);
            kept.splice(inner < 0 ? kept.length : inner, 0, { name: need.piece.piece.name, rank });
        }
        return kept.map(({ name }) => name);
    });
}

function rankFor(plan: Plan, judged: Judged, side: LaySide, named: Named): number | undefined {
    const need = needOf(judged, named);
    return need && rankOn(plan, side, need);
}

/** Ways to give a dish the pieces that a clause leaves it without: lay them, where the limit leaves room, or bring them. */
export function givePieces(plan: Plan, service: Service, judged: Judged, needs: readonly Need[]): readonly Fix[] {
    const { dish } = needs[0]!;
    const names = listed(needs.map(({ piece }) => quoted(piece.piece.name)));
    const lay: Fix = {
        title: `Lay ${names} for ${quoted(dish.title)}`,
        safety: 'unsafe',
        changes: [relaid(plan, judged, [], needs)],
    };
    const bring: Fix = {
        title: `Bring ${names} with ${quoted(dish.title)}`,
        safety: 'unsafe',
        changes: broughtWith(judged, dish, needs),
    };
    const [first, ...others] = hasRoom(plan, service, needs) ? [lay, bring] : [bring];
    return [{ ...first, preferred: true }, ...others];
}

/** Puts pieces that a clause names elsewhere where the house lays them; where the limit leaves no room they come with their dish. */
export function movePieces(
    plan: Plan,
    service: Service,
    judged: Judged,
    out: readonly Named[],
    needs: readonly Need[],
): Fix {
    const names = listed(needs.map(({ piece }) => quoted(piece.piece.name)));
    const places = new Set(needs.map(({ piece }) => sideOf(piece)));
    if (hasRoom(plan, service, needs, out)) {
        const where = listed([...places].map((side) => SIDE_SAID[side]));
        return {
            title: `Lay ${names} ${where}`,
            safety: 'unsafe',
            preferred: true,
            changes: [relaid(plan, judged, out, needs)],
        };
    }
    const dishes = [...new Set(needs.map(({ dish }) => dish))];
    return {
        title: `Bring ${names} with ${listed(dishes.map(({ title }) => quoted(title)))}`,
        safety: 'unsafe',
        preferred: true,
        changes: [
            withoutNames(judged.clause.lay, out),
            ...dishes.flatMap((dish) =>
                broughtWith(
                    judged,
                    dish,
                    needs.filter((need) => need.dish === dish),
                ),
            ),
        ],
    };
}

export function broughtWith(judged: Judged, dish: Dish, needs: readonly Need[]): readonly Intention[] {
    const own = (judged.needs.get(dish) ?? []).map(({ piece }) => piece);
    return bringForDish(
        dish,
        own,
        needs.map(({ piece }) => piece),
    );
}

/** True where no cover goes further past the house's limit with these pieces laid, and without the names that go. */
export function hasRoom(plan: Plan, service: Service, needs: readonly Need[], out: readonly Named[] = []): boolean {
    const over = (pieces: readonly CoverPiece[]) =>
        countAgainstLimit(plan.customs, pieces).reduce((sum, count) => sum + count.over.length, 0);
    return service.variations
        .filter(({ dishes }) => dishes.includes(needs[0]!.dish))
        .every(({ cover: { left, right } }) => {
            const now = [...left, ...right];
            const kept = now.filter((piece) => !out.some((named) => sameOrigin(named.origin, piece.origin)));
            return over([...kept, ...needs.map(({ piece }) => piece)]) <= over(now);
        });
}
