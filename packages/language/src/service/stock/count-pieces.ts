import { keepCompiled } from '../../keep-compiled.js';
import type { Plan } from '../../plan/types.js';
import { flatwareOf } from '../cover.js';
import { broughtForOffers } from '../drinks/glasses.js';
import type { Cover, CoverPiece, DishFacts, PourNeed, Service, Variation } from '../types.js';
import { up } from './lots.js';
import type { PieceCount, PieceUse } from './types.js';

interface Counted {
    readonly plan: Plan;
    readonly variations: readonly Variation[];
    readonly facts: readonly DishFacts[];
    readonly coffee?: Service['coffee'];
    /** Covers laid beyond the guests expected, as the most frequent one. */
    readonly oversetCovers: number;
    /** What is drunk: a drink offered in another's place may come in a glass of its own. */
    readonly drinks: readonly PourNeed[];
    /** What the servers carry, and what stands between the covers. */
    readonly gear: readonly PieceCount[];
}

/** Pieces of one variation, before they are added up. */
type Use = Omit<PieceUse, 'count' | 'overset'> & { readonly piece: string };

/**
 * How many of each piece the evening needs, without spares and without washing between courses: what every cover holds, what is
 * brought to it, what every dish is served in, and what the servers work with. In the order of the alphabet.
 */
export function countPieces({ plan, variations, facts, coffee, oversetCovers, drinks, gear }: Counted): PieceCount[] {
    const tally = keepCompiled(new Tally());
    const after = plan.menu?.courses.length ?? 0;
    // Coffee on request is counted by the house's share of all guests, rounded up once.
    const share = coffee?.coffee.onRequest ? plan.customs['coffee-share'].value : 1;
    const coffeePieces = new Map<string, number>();
    variations.forEach((variation, index) => {
        const { count, cover, dishes } = variation;
        // An overset cover is laid, not served.
        const overset = index === 0 && count > 0 ? oversetCovers : 0;
        for (const use of [...coverUses(cover), ...servingUses(facts.filter(({ dish }) => dishes.includes(dish)))]) {
            tally.add(use, count, use.when === 'laid' ? overset : 0);
        }
        for (const { piece } of flatwareOf(cover).filter((each) => isServedCoffee(each))) {
            coffeePieces.set(piece.name, (coffeePieces.get(piece.name) ?? 0) + count);
        }
        for (const name of coffeeVessels(coffee)) {
            coffeePieces.set(name, (coffeePieces.get(name) ?? 0) + count);
        }
    });
    for (const [piece, count] of coffeePieces) {
        const use = { piece, course: after, purpose: 'coffee', when: 'brought', isFixed: false } as const;
        tally.add(use, up(share * count), 0);
    }
    for (const { piece, course, count } of broughtForOffers(drinks)) {
        tally.add({ piece, course, purpose: 'drinking', when: 'brought', isFixed: false }, count, 0);
    }
    for (const { piece, by } of gear) {
        for (const use of by) {
            tally.add({ ...use, piece }, use.count, use.overset);
        }
    }
    return tally.counts();
}

class Tally {
    private readonly byPiece = new Map<string, Map<string, PieceUse>>();

    add({ piece, ...use }: Use, count: number, overset: number): void {
        if (count === 0 && overset === 0) {
            return;
        }
        const uses = this.byPiece.get(piece) ?? new Map<string, PieceUse>();
        this.byPiece.set(piece, uses);
        const { course, purpose, when, state, isFixed } = use;
        const key = `${course} ${purpose} ${when} ${state ?? ''} ${isFixed}`;
        const known = uses.get(key);
        uses.set(key, {
            course,
            purpose,
            count: count + (known?.count ?? 0),
            overset: overset + (known?.overset ?? 0),
            when,
            state,
            isFixed,
        });
    }

    counts(): PieceCount[] {
        return [...this.byPiece]
            .map(([piece, uses]) => {
                const by = [...uses.values()];
                return { piece, needed: by.reduce((sum, use) => sum + use.count, 0), by };
            })
            .toSorted((a, b) => (a.piece < b.piece ? -1 : 1));
    }
}

/** What lies at one cover or is brought to it, coffee apart. */
function coverUses(cover: Cover): Use[] {
    const single = (piece: string, purpose: string): Use => ({
        piece,
        course: -1,
        purpose,
        when: 'laid',
        isFixed: true,
    });
    return [
        ...flatwareOf(cover)
            .filter((each) => !isServedCoffee(each))
            .map((each): Use => {
                const { piece, course, purpose, when, state } = each;
                return { piece: piece.name, course, purpose, when, state, isFixed: isFixed(each) };
            }),
        ...[...cover.glasses, ...cover.broughtGlasses].map((glass): Use => ({
            piece: glass.piece.name,
            course: glass.course,
            purpose: 'drinking',
            when: glass.when,
            isFixed: glass.pour === undefined,
        })),
        ...(cover.servicePlate ? [single(cover.servicePlate.name, 'service plate')] : []),
        ...(cover.bread ? [single(cover.bread.name, 'bread')] : []),
        single('napkin', 'napkin'),
    ];
}

function isServedCoffee(piece: CoverPiece): boolean {
    return piece.purpose === 'coffee' && piece.when === 'brought';
}

/** True where a `lay` clause or the word `laid` has it lie there when guests sit, and for bread, which stands beside the courses. */
function isFixed({ from, purpose, piece, dish }: CoverPiece): boolean {
    return (
        from === 'lay' ||
        purpose === 'bread' ||
        dish?.eaten?.some((group) => group.some((use) => use.laid && use.piece.name === piece.name)) === true
    );
}

function servingUses(facts: readonly DishFacts[]): Use[] {
    return facts.flatMap(({ dish, course, vessel, underliner }) => {
        const served = { course: course.index, when: 'brought', isFixed: false } as const;
        return [
            ...(vessel
                ? [{ ...served, piece: vessel.name, purpose: 'serving', state: dish.served.vessel?.state }]
                : []),
            ...(underliner
                ? [{ ...served, piece: underliner.name, purpose: 'underliner', state: dish.served.under?.state }]
                : []),
        ];
    });
}

function coffeeVessels(coffee: Service['coffee']): string[] {
    return coffee?.cup ? [coffee.cup.name, ...coffee.cup.on.slice(0, 1).map((saucer) => saucer.name)] : [];
}
