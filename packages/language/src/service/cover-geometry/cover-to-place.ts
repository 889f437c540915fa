import type { Piece } from '../../plan/cupboard.js';
import type { Origin } from '../../plan/origin.js';
import type { Plan } from '../../plan/types.js';
import { isInHouse } from '../facts.js';
import type { Cover, CoverGlass, CoverPiece, DishFacts, Service } from '../types.js';
import { cardSize, measured, napkinSize, saltAndPepperSize, sizeOf, USUAL_PLATE } from './piece-sizes.js';
import type { CoverToPlace, PieceToPlace } from './types.js';

type Flatware = 'left' | 'right' | 'above' | 'breadPlate' | 'saucer' | 'brought';

/** How the ids of placed pieces begin, by the list of the cover they are in. */
const LISTS = {
    left: 'left',
    right: 'right',
    above: 'above',
    breadPlate: 'on-bread-plate',
    saucer: 'saucer',
    brought: 'brought',
    glasses: 'glass',
    broughtGlasses: 'brought-glass',
} as const satisfies Record<Flatware | 'glasses' | 'broughtGlasses', string>;

/** What is to be laid at one cover: sizes from the cupboard, without a word of where it is written. */
export function coverToPlace(
    { plan, coffee }: { readonly plan: Plan; readonly coffee?: Service['coffee'] },
    cover: Cover,
    dishes: readonly DishFacts[],
): CoverToPlace {
    const { cupboard, customs, house } = plan;
    const lastCourse = plan.menu?.courses.length ?? 0;
    const all = (list: Flatware): PieceToPlace[] =>
        cover[list].map((each, index) => toPlace(`${LISTS[list]}-${index + 1}`, each.piece, each.course));
    const glasses = (list: 'glasses' | 'broughtGlasses'): PieceToPlace[] =>
        cover[list].map((each, index) => toPlace(`${LISTS[list]}-${index + 1}`, each.piece, each.course));
    const plates = [cover.servicePlate, ...dishes.flatMap(({ vessel, underliner }) => [vessel, underliner])];
    const own = (name: string): Piece | undefined => cupboard.pieces.get(name);
    const card = own('place-card');
    const set = own('salt-and-pepper');
    const saucer = coffee?.cup?.on.map((named) => own(named.name)).find((piece) => piece !== undefined);
    return {
        servicePlate: cover.servicePlate && toPlace('service-plate', cover.servicePlate, -1),
        centre: Math.max(0, ...plates.map((plate) => measured(plate, 'across') ?? 0)) || USUAL_PLATE,
        left: all('left'),
        right: all('right'),
        above: all('above'),
        breadPlate: cover.bread && toPlace('bread-plate', cover.bread, -1),
        onBreadPlate: all('breadPlate'),
        glasses: glasses('glasses'),
        napkin: {
            ...named('napkin', 'napkin', own('napkin')),
            ...napkinSize(own('napkin'), customs['napkin-fold'].value),
        },
        placeCard:
            card && isInHouse(card.name, house)
                ? { ...named('place-card', 'place card', card), ...cardSize(card) }
                : undefined,
        saltAndPepper: {
            ...named('salt-and-pepper', 'salt and pepper', set),
            ...saltAndPepperSize(set),
        },
        brought: all('brought').map((piece, index) => {
            const { side } = cover.brought[index]!;
            return { ...piece, side: side === 'bread-plate' ? 'bread' : side === 'saucer' ? 'right' : side };
        }),
        broughtGlasses: glasses('broughtGlasses'),
        cup: coffee?.cup && {
            cup: toPlace('cup', coffee.cup, lastCourse),
            saucer: saucer && toPlace('cup-saucer', saucer, lastCourse),
            spoons: all('saucer'),
        },
    };
}

/** Vessels and what they stand on, lowest first in each course. */
export function vesselsToPlace(dishes: readonly DishFacts[]): PieceToPlace[] {
    return dishes.flatMap(({ underliner, vessel, course }) => [
        ...(underliner ? [toPlace(`underliner-${course.index + 1}`, underliner, course.index)] : []),
        ...(vessel ? [toPlace(`vessel-${course.index + 1}`, vessel, course.index)] : []),
    ]);
}

function toPlace(id: string, piece: Piece, course: number): PieceToPlace {
    return { id, name: piece.name, label: labelOf(piece), course, ...sizeOf(piece) };
}

const labelOf = (piece: Piece): string => piece.called ?? piece.name.replaceAll('-', ' ');

function named(name: string, label: string, piece: Piece | undefined) {
    return { id: name, name, label: piece?.called ?? label, course: -1 };
}

/** The piece of the cover that a placed piece stands for; absent for plates, vessels, napkin, card and salt. */
export function sourceOfPiece(cover: Cover, id: string): CoverPiece | CoverGlass | undefined {
    for (const [list, word] of Object.entries(LISTS)) {
        const number = id.startsWith(`${word}-`) ? Number(id.slice(word.length + 1)) : Number.NaN;
        if (Number.isInteger(number)) {
            return cover[list as keyof typeof LISTS][number - 1];
        }
    }
    return undefined;
}

/** The words that put a placed piece on the table; absent where no words did, as for the napkin. */
export function originOfPiece(cover: Cover, dishes: readonly DishFacts[], id: string): Origin | undefined {
    const course = /^(?:vessel|underliner)-(\d+)$/.exec(id)?.[1];
    if (course) {
        const { served, head } = dishes.find((facts) => facts.course.index === Number(course) - 1)?.dish ?? {};
        return served?.origin ?? head;
    }
    return sourceOfPiece(cover, id)?.origin;
}
