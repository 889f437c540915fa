import type { PieceUse } from '../plan/cupboard.js';
import { findCourse, isKindOf } from '../plan/names.js';
import type { Dish, Lay, Plan } from '../plan/types.js';
import { countAgainstLimit, isOysterFork } from './cover-limit.js';
import { firstInHouse, isDessert, isInHouse } from './facts.js';
import type { Cover, CoverGlass, CoverPiece, DishFacts, PourFacts, Service } from './types.js';

export interface CoverInput {
    readonly plan: Plan;
    /** One a course, in order; `undefined` where the course feeds this guest nothing. */
    readonly dishes: readonly (DishFacts | undefined)[];
    readonly pours: readonly PourFacts[];
    readonly bread?: Service['bread'];
    readonly coffee?: Service['coffee'];
}

/** Course of a piece that an explicit `lay` clause names and no course uses. */
export const NO_COURSE = -2;

/** What a guest's cover holds for one set of dishes: derived from the menu and the house's customs, or as `lay` clauses say. */
export function layCover(input: CoverInput): Cover {
    const { plan, bread } = input;
    const needed = [
        ...input.dishes.flatMap((facts, course) => (facts ? piecesOf(plan, facts, course) : [])),
        ...breadPieces(input),
        ...coffeePieces(input),
    ];
    const derived = needed.map((piece) => placed(plan, piece));
    const all = applyLayClauses(plan, input.dishes, derived);
    const kept = sendOverflow(plan, all);
    const on = (side: CoverPiece['side']): CoverPiece[] =>
        kept.filter((piece) => piece.side === side && piece.when === 'laid');
    const hasLay = layClauses(plan, input.dishes).some(({ lay }) => lay.right);
    const glasses = glassesOf(input);
    const servicePlate =
        plan.customs['service-plate'].value === 'not-used' ? undefined : plan.cupboard.pieces.get('service-plate');
    return {
        left: on('left'),
        right: hasLay ? on('right') : orderRight(plan, on('right')),
        above: on('above'),
        saucer: kept.filter((piece) => piece.side === 'saucer'),
        breadPlate: on('bread-plate'),
        glasses: glasses.filter((glass) => glass.when === 'laid'),
        brought: kept.filter((piece) => piece.when === 'brought' && piece.side !== 'saucer'),
        broughtGlasses: glasses.filter((glass) => glass.when === 'brought'),
        servicePlate: servicePlate && isInHouse(servicePlate.name, plan.house) ? servicePlate : undefined,
        bread: bread?.plate,
        napkin: napkinOf(plan),
    };
}

/** True where the first course stands there when guests sit: stated, or by the house's custom. */
export function isWaiting(plan: Plan, course: number): boolean {
    const waits = course === 0 && plan.customs['first-course'].value === 'waiting';
    return waits || plan.menu?.courses[course]?.preset !== undefined;
}

/** A napkin for the plate lies left of the forks where a first course is waiting there (table-service 5.3). */
function napkinOf(plan: Plan): Cover['napkin'] {
    const napkin = plan.customs.napkin.value;
    return napkin === 'on-plate' && (plan.menu?.courses ?? []).some((_, course) => isWaiting(plan, course))
        ? 'left'
        : napkin;
}

type Draft = Omit<CoverPiece, 'side'> & { readonly side?: CoverPiece['side'] };

/** The pieces a dish is eaten with: as stated, else as its kind says; of alternatives the first that the house has. */
function piecesOf(plan: Plan, facts: DishFacts, course: number): Draft[] {
    const { dish, kind } = facts;
    const eaten = dish.eaten ?? kind?.eaten ?? [];
    const from = dish.eaten ? 'stated' : 'kind';
    const pieces = eaten.flatMap((group): Draft[] => {
        const name = firstInHouse(
            group.map((use) => use.piece.name),
            plan.cupboard,
            plan.house,
        )?.name;
        const use = group.find((each) => each.piece.name === name);
        const piece = use && plan.cupboard.pieces.get(use.piece.name);
        if (!use || !piece || (from === 'kind' && isLeftOutOfDessert(plan, facts, piece.family))) {
            return [];
        }
        const origin = from === 'stated' ? use.origin : dish.head;
        return [
            {
                piece,
                course,
                dish,
                purpose: 'eating',
                from,
                origin,
                ...whenOf(use, isWashedFor(plan, piece.name, course)),
                state: use.state,
                to: use.to?.value,
            },
        ];
    });
    // The custom asks for a small knife as well, which the kinds of dessert leave out (table-service 5.25).
    const knife = plan.cupboard.pieces.get('dessert-knife');
    const wantsKnife =
        from === 'kind' && isDessert(kind) && plan.customs['dessert-pieces'].value === 'knife-fork-and-spoon';
    const isMissing = pieces.length > 0 && !pieces.some(({ piece }) => piece.family === 'knife');
    return knife && wantsKnife && isMissing
        ? [...pieces, { piece: knife, course, dish, purpose: 'eating', from, origin: dish.head, when: 'laid' }]
        : pieces;
}

/** What is warmed, chilled or washed in the evening is never preset; `laid` overrides, and is judged. */
function whenOf(use: PieceUse, isWashed: boolean): Pick<CoverPiece, 'when' | 'broughtBecause'> {
    if (use.laid) {
        return { when: 'laid' };
    }
    if (use.brought) {
        return { when: 'brought', broughtBecause: 'stated' };
    }
    const because = use.state ?? (isWashed ? 'washed' : undefined);
    return because ? { when: 'brought', broughtBecause: because } : { when: 'laid' };
}

/** True where the plan has a piece of an earlier course washed for this one. */
function isWashedFor({ menu }: Plan, piece: string, course: number): boolean {
    return (menu?.washes ?? []).some(
        (wash) => wash.piece.name === piece && findCourse(menu, wash.for.name)?.index === course,
    );
}

const DESSERT_FAMILIES = {
    'fork-and-spoon': ['fork', 'spoon'],
    fork: ['fork'],
    spoon: ['spoon'],
    'knife-fork-and-spoon': ['knife', 'fork', 'spoon'],
} as const;

/** The custom `dessert-pieces` thins out what a dessert's kind asks for, but never leaves it with nothing. */
function isLeftOutOfDessert(plan: Plan, facts: DishFacts, family: string): boolean {
    if (!isDessert(facts.kind)) {
        return false;
    }
    const wanted: readonly string[] = DESSERT_FAMILIES[plan.customs['dessert-pieces'].value];
    const asked = (facts.kind?.eaten ?? []).flatMap((group) =>
        group.flatMap((use) => plan.cupboard.pieces.get(use.piece.name)?.family ?? []),
    );
    return !wanted.includes(family) && asked.some((each) => wanted.includes(each));
}

function breadPieces({ bread }: CoverInput): Draft[] {
    const { spreader, plate } = bread ?? {};
    if (!bread || !spreader) {
        return [];
    }
    const origin = bread.bread.piece?.origin ?? bread.bread.head;
    return [
        {
            piece: spreader,
            course: -1,
            purpose: 'bread',
            side: plate ? 'bread-plate' : sideOf(spreader.family),
            when: 'laid',
            from: 'stated',
            origin,
        },
    ];
}

function coffeePieces({ plan, coffee }: CoverInput): Draft[] {
    if (!coffee?.spoon) {
        return [];
    }
    const origin = coffee.coffee.piece?.origin ?? coffee.coffee.head;
    const isLaid = plan.customs['coffee-spoon'].value === 'laid' && !coffee.coffee.onRequest;
    const rest = isLaid
        ? ({ side: 'right', when: 'laid' } as const)
        : ({ side: 'saucer', when: 'brought', broughtBecause: 'custom' } as const);
    return [
        {
            piece: coffee.spoon,
            course: plan.menu?.courses.length ?? 0,
            purpose: 'coffee',
            from: 'stated',
            origin,
            ...rest,
        },
    ];
}

// ---------------------------------------------------------------- sides
function sideOf(family: string): 'left' | 'right' {
    return family === 'fork' ? 'left' : 'right';
}

/** The side a piece lies on by family and by the house's customs. */
function placed(plan: Plan, draft: Draft): CoverPiece {
    if (draft.side) {
        return { ...draft, side: draft.side };
    }
    const { customs } = plan;
    const { piece, dish } = draft;
    if (dish && isDessert(plan.cupboard.kinds.get(dish.kind.name)) && draft.when === 'laid') {
        if (customs.dessert.value === 'above') {
            return { ...draft, side: 'above' };
        }
        // A piece the text says is laid stays laid, and is judged.
        if (customs.dessert.value === 'brought' && !isSaidLaid(draft)) {
            return { ...draft, side: sideOf(piece.family), when: 'brought', broughtBecause: 'custom' };
        }
    }
    if (isOysterFork(piece)) {
        return { ...draft, side: customs['oyster-fork'].value === 'left' ? 'left' : 'right' };
    }
    if (piece.family === 'fork' && customs['fork-without-knife'].value === 'right' && !hasKnife(plan, dish)) {
        return { ...draft, side: 'right' };
    }
    return { ...draft, side: sideOf(piece.family) };
}

function isSaidLaid(draft: Draft): boolean {
    return (
        draft.from === 'stated' &&
        draft.dish?.eaten?.some((group) => group.some((use) => use.laid && use.piece.name === draft.piece.name)) ===
            true
    );
}

function hasKnife(plan: Plan, dish: Dish | undefined): boolean {
    const eaten = dish?.eaten ?? plan.cupboard.kinds.get(dish?.kind.name ?? '')?.eaten ?? [];
    return eaten.some((group) => group.some((use) => plan.cupboard.pieces.get(use.piece.name)?.family === 'knife'));
}

/** Outermost first on the right: spoons (and the oyster fork) outside knives, each in order of use; or strictly in order of use. */
function orderRight(plan: Plan, pieces: readonly CoverPiece[]): CoverPiece[] {
    if (plan.customs.spoons.value === 'order-of-use') {
        return [...pieces];
    }
    // A fork moved to the right for want of a knife takes the knife's place; the oyster fork stays outermost with the spoons.
    const isInner = ({ piece }: CoverPiece): boolean =>
        piece.family === 'knife' || (piece.family === 'fork' && !isOysterFork(piece));
    return [...pieces.filter((piece) => !isInner(piece)), ...pieces.filter(isInner)];
}

// ---------------------------------------------------------------- explicit lay clauses
interface LayScope {
    readonly lay: Lay;
    /** Courses whose pieces the clause settles. */
    readonly courses: readonly number[];
    readonly isWholeMenu: boolean;
}

function layClauses(plan: Plan, dishes: readonly (DishFacts | undefined)[]): LayScope[] {
    const scopes: LayScope[] = [];
    if (plan.menu?.lay) {
        scopes.push({ lay: plan.menu.lay, courses: dishes.map((_, course) => course), isWholeMenu: true });
    }
    dishes.forEach((facts, course) => {
        const lay = facts && (facts.dish.lay ?? facts.course.lay);
        if (lay) {
            scopes.push({ lay, courses: [course], isWholeMenu: false });
        }
    });
    return scopes;
}

/** Lays exactly what a `lay` clause names for the sides it names; each piece is for the first course that still wants it. */
function applyLayClauses(
    plan: Plan,
    dishes: readonly (DishFacts | undefined)[],
    derived: readonly CoverPiece[],
): CoverPiece[] {
    let pieces = [...derived];
    for (const { lay, courses, isWholeMenu } of layClauses(plan, dishes)) {
        const inScope = (piece: CoverPiece): boolean =>
            courses.includes(piece.course) || (isWholeMenu && piece.purpose !== 'eating');
        // A butter spreader or a coffee spoon that the clause names is the one that bread or coffee asks for.
        const wanting = pieces.filter(inScope);
        const settled: CoverPiece[] = [];
        const SIDES = [
            ['left', lay.left],
            ['right', lay.right],
            ['above', lay.above],
            ['saucer', lay.saucer],
            ['bread-plate', lay.breadPlate],
        ] as const;
        for (const [side, named] of SIDES) {
            for (const each of named ?? []) {
                const piece = plan.cupboard.pieces.get(each.name);
                if (!piece) {
                    continue;
                }
                const place = wanting.findIndex((want) => want.piece.name === each.name);
                const [want] = place >= 0 ? wanting.splice(place, 1) : [];
                const course = want?.course ?? (isWholeMenu ? NO_COURSE : courses[0]!);
                settled.push({
                    piece,
                    course,
                    dish: want?.dish,
                    purpose: want?.purpose ?? 'eating',
                    side,
                    when: want?.purpose === 'coffee' ? want.when : 'laid',
                    state: want?.state,
                    to: want?.to,
                    from: 'lay',
                    origin: each.origin,
                });
            }
        }
        // What the clause does not name is not laid, unless it comes with its course.
        pieces = [
            ...pieces.filter(
                (piece) =>
                    !inScope(piece) ||
                    (wanting.includes(piece) && (piece.purpose !== 'eating' || piece.when === 'brought')),
            ),
            ...settled,
        ];
    }
    const order = new Map(pieces.map((piece, index) => [piece, index]));
    // A menu's clause is in its own order; courses' clauses and derived pieces run in course order.
    return plan.menu?.lay ? pieces : pieces.sort((a, b) => a.course - b.course || order.get(a)! - order.get(b)!);
}

/** With the custom `overflow: brought`, what is past the limit comes with its course: the last used first. */
function sendOverflow(plan: Plan, pieces: readonly CoverPiece[]): CoverPiece[] {
    if (plan.customs.overflow.value !== 'brought') {
        return [...pieces];
    }
    const over = new Set(countAgainstLimit(plan.customs, pieces).flatMap((count) => count.over));
    return pieces.map((piece) =>
        over.has(piece) && piece.from !== 'lay' ? { ...piece, when: 'brought', broughtBecause: 'limit' } : piece,
    );
}

// ---------------------------------------------------------------- glasses
/** One glass for each drink, and one for water; in order of use from the knife tip outward, water first or where its use falls. */
function glassesOf({ plan, pours }: CoverInput): CoverGlass[] {
    const { menu, cupboard, customs } = plan;
    const waterPiece = cupboard.pieces.get(menu?.water?.pour.glass?.name ?? 'water-glass');
    const water: CoverGlass[] =
        menu && waterPiece
            ? [
                  {
                      piece: waterPiece,
                      water: menu.water,
                      course: -1,
                      when: 'laid',
                      origin: menu.water?.pour.glass?.origin ?? menu.water?.origin ?? menu.origin,
                  },
              ]
            : [];
    const seen = new Set<string>();
    const drinks = pours.flatMap(({ pour, glass, course }): CoverGlass[] => {
        if (!glass || seen.has(pour.title)) {
            return [];
        }
        seen.add(pour.title);
        return [
            {
                piece: glass,
                pour,
                course,
                when: pour.brought || isWashedFor(plan, glass.name, course) ? 'brought' : 'laid',
                origin: pour.glass?.origin ?? pour.titleOrigin,
            },
        ];
    });
    if (customs['glass-order'].value === 'white-before-red') {
        const kinds = new Map(pours.map(({ pour, kind }) => [pour, kind]));
        const isRed = (glass: CoverGlass): boolean => isKindOf(glass.pour && kinds.get(glass.pour), 'red-wine');
        drinks.splice(0, drinks.length, ...drinks.filter((glass) => !isRed(glass)), ...drinks.filter(isRed));
    }
    return customs['first-glass'].value === 'first-used'
        ? [...drinks.slice(0, 1), ...water, ...drinks.slice(1)]
        : [...water, ...drinks];
}

/** The last course a glass is wanted in: its own, or the one its drink is topped up until. */
export function lastCourseOf(plan: Plan, glass: CoverGlass): number {
    const until = glass.pour?.toppedUpUntil ?? glass.water?.pour.toppedUpUntil;
    const course = until && findCourse(plan.menu, until.name);
    return course?.index ?? glass.course;
}

/** Every piece of a cover, laid or brought; glasses and plates apart. */
export function flatwareOf(cover: Cover): CoverPiece[] {
    return [...cover.left, ...cover.right, ...cover.above, ...cover.breadPlate, ...cover.brought, ...cover.saucer];
}
