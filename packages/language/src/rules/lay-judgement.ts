import type { Named } from '../plan/origin.js';
import type { Dish, Plan } from '../plan/types.js';
import { layCover } from '../service/cover.js';
import { isOysterFork } from '../service/cover-limit.js';
import type { Cover, CoverPiece, Service, Variation } from '../service/types.js';
import { allPieces } from './bring-with-course.js';
import { isDoubtful } from './doubt.js';
import { laidNames, layClauses, type LaidName, type LayClause, type LaySide } from './lay-clauses.js';

/** A piece that a dish is eaten with, and where the house would have it were there no `lay` clause. */
export interface Need {
    readonly dish: Dish;
    readonly piece: CoverPiece;
    /** The names that would do: the piece and its alternatives. */
    readonly names: readonly string[];
    /** True where it lies on the table when guests sit; false where it comes with its course. */
    readonly isLaid: boolean;
    /** True where the dish is eaten with a knife as well. */
    readonly hasKnife: boolean;
}

/** A name of a clause and what it is for. */
export interface Match extends LaidName {
    readonly need: Need;
}

/** One `lay` clause beside what its dishes need. */
export interface Judged {
    readonly clause: LayClause;
    /** For each set of dishes a guest can have, what each name is for. */
    readonly matches: readonly (readonly Match[])[];
    /** Names that no set of dishes has a use for. */
    readonly unused: readonly LaidName[];
    /** Pieces that a dish needs laid and no name gives, each dish's once. */
    readonly missing: readonly Need[];
    /** What the dishes need of flatware, by dish. */
    readonly needs: ReadonlyMap<Dish, readonly Need[]>;
}

/** Every `lay` clause of the menu, judged; not one with a name that nobody declares, which is a finding of its own. */
export function judgeLayClauses(plan: Plan, service: Service): readonly Judged[] {
    const clauses = layClauses(plan).filter(
        ({ lay }) =>
            !isDoubtful(plan, lay.origin) && laidNames(lay).every(({ named }) => plan.cupboard.pieces.has(named.name)),
    );
    if (clauses.length === 0) {
        return [];
    }
    const needs = needsByDish(plan, service);
    return clauses.map((clause) => {
        const sets = clause.isWholeMenu
            ? service.variations.map((variation) => variation.dishes.filter((dish) => dish !== undefined))
            : clause.dishes.map((dish) => [dish]);
        const matches: Match[][] = [];
        const missing = new Set<Need>();
        for (const dishes of sets) {
            const open = [...laidNames(clause.lay)];
            const found: Match[] = [];
            for (const need of dishes.flatMap((dish) => needs.get(dish) ?? [])) {
                const at = open.findIndex(({ named }) => need.names.includes(named.name));
                if (at >= 0) {
                    found.push({ ...open.splice(at, 1)[0]!, need });
                } else if (need.isLaid && !isDoubtful(plan, need.dish.origin)) {
                    missing.add(need);
                }
            }
            matches.push(found);
        }
        // The spreader and the coffee spoon are no course's: naming them in a clause only says where they are.
        const beside = [service.bread?.spreader?.name, service.coffee?.spoon?.name];
        const used = new Set(matches.flat().map(({ named }) => named));
        const unused = laidNames(clause.lay).filter(({ named }) => {
            const place = beside.indexOf(named.name);
            return !used.has(named) && (place < 0 || beside.splice(place, 1).length === 0);
        });
        return { clause, matches, unused: service.variations.length > 0 ? unused : [], missing: [...missing], needs };
    });
}

/** A name that stands where another piece is wanted: the teaspoon in the place of the soup spoon. */
export interface Mistaken {
    readonly laid: LaidName;
    readonly need: Need;
}

/** Idle names paired with what is missing of the same family on the same side; each pair is one mistake. */
export function mistaken(plan: Plan, { clause, unused, missing }: Judged): readonly Mistaken[] {
    const names = laidNames(clause.lay).map(({ named }) => named.name);
    const open = missing.filter((need) => !need.names.some((name) => names.includes(name)));
    return unused.flatMap((laid): Mistaken[] => {
        const family = plan.cupboard.pieces.get(laid.named.name)?.family;
        const at = open.findIndex(({ piece }) => piece.piece.family === family && sideOf(piece) === laid.side);
        return at < 0 ? [] : [{ laid, need: open.splice(at, 1)[0]! }];
    });
}

/** A piece that one course's clause lays though only a later course, whose own clause leaves it out, is eaten with it. */
export interface LaidTooSoon {
    readonly clause: LayClause;
    readonly laid: LaidName;
    readonly later: LayClause;
    readonly need: Need;
}

export function laidTooSoon(judged: readonly Judged[]): readonly LaidTooSoon[] {
    const byCourse = judged.filter(({ clause }) => !clause.isWholeMenu);
    return byCourse.flatMap(({ clause, unused }) =>
        unused.flatMap((laid): LaidTooSoon[] => {
            const after = byCourse.filter(
                (other) => (other.clause.dishes[0]?.course ?? 0) > (clause.dishes[0]?.course ?? 0),
            );
            const found = after.flatMap((other) => other.missing.map((need) => ({ later: other.clause, need })));
            const first = found.find(({ need }) => need.names.includes(laid.named.name));
            return first ? [{ clause, laid, ...first }] : [];
        }),
    );
}

/** The first set of dishes that uses a name says what it is for. */
export function needOf({ matches }: Judged, named: Named): Need | undefined {
    return matches.flat().find((match) => match.named === named)?.need;
}

/** What sorts the pieces of one side from the outside in: the order of use; spoons outside knives where that is the custom. */
export function rankOn(plan: Plan, side: LaySide, { piece }: Need): number {
    const { family } = piece.piece;
    const isInner =
        side === 'right' &&
        plan.customs.spoons.value === 'outside-knives' &&
        (family === 'knife' || (family === 'fork' && !isOysterFork(piece.piece)));
    return piece.course + (isInner ? (plan.menu?.courses.length ?? 0) : 0);
}

/** True where the name stands under the side on which the house would lay the piece, or under one that its customs accept. */
export function isWellPlaced(plan: Plan, { side, need }: Match): boolean {
    const { piece } = need;
    const isForkAlone = piece.piece.family === 'fork' && !isOysterFork(piece.piece) && !need.hasKnife;
    const isEither = isForkAlone && plan.customs['fork-without-knife'].value === 'either';
    return side === sideOf(piece) || (isEither && side === 'right');
}

/** The side of a `lay` clause for a piece of the derived cover. */
export function sideOf(piece: CoverPiece): LaySide {
    return piece.side === 'bread-plate' ? 'breadPlate' : piece.side;
}

// ------------------------------------------------------------------ what is needed
function needsByDish(plan: Plan, service: Service): ReadonlyMap<Dish, readonly Need[]> {
    const needs = new Map<Dish, readonly Need[]>();
    for (const variation of service.variations) {
        const pieces = allPieces(coverWithoutLay(plan, service, variation)).filter(
            (piece) => piece.purpose === 'eating',
        );
        for (const dish of variation.dishes) {
            if (dish && !needs.has(dish)) {
                needs.set(
                    dish,
                    pieces
                        .filter((piece) => piece.dish === dish)
                        .map((piece) => ({
                            dish,
                            piece,
                            names: alternativesOf(plan, dish, piece.piece.name),
                            isLaid: piece.when === 'laid',
                            hasKnife: pieces.some((each) => each.dish === dish && each.piece.family === 'knife'),
                        })),
                );
            }
        }
    }
    return needs;
}

/** A guest's cover as it would be with no `lay` clause at all. */
export function coverWithoutLay(plan: Plan, service: Service, variation: Variation): Cover {
    const dishes = variation.dishes.map((dish) => {
        const facts = service.facts.find((each) => each.dish === dish);
        return (
            facts && { ...facts, dish: { ...facts.dish, lay: undefined }, course: { ...facts.course, lay: undefined } }
        );
    });
    const bare: Plan = {
        ...plan,
        menu: plan.menu && { ...plan.menu, lay: undefined },
        customs: { ...plan.customs, overflow: { value: 'reported' } },
    };
    const cover = layCover({ plan: bare, dishes, pours: [], bread: service.bread, coffee: service.coffee });
    const own = (pieces: readonly CoverPiece[]) =>
        pieces.map((piece) => ({ ...piece, dish: piece.dish && variation.dishes[piece.course] }));
    return {
        ...cover,
        left: own(cover.left),
        right: own(cover.right),
        above: own(cover.above),
        saucer: own(cover.saucer),
        breadPlate: own(cover.breadPlate),
        brought: own(cover.brought),
    };
}

function alternativesOf(plan: Plan, dish: Dish, name: string): readonly string[] {
    const eaten = dish.eaten ?? plan.cupboard.kinds.get(dish.kind.name)?.eaten ?? [];
    const group = eaten.find((alternatives) => alternatives.some((use) => use.piece.name === name));
    return group?.map((use) => use.piece.name) ?? [name];
}
