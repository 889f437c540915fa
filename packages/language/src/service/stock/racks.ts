/** Which rack a piece goes into, and how many racks all of them fill. */
import type { Piece } from '../../plan/cupboard.js';
import type { Plan } from '../../plan/types.js';
import { lotsOf } from './lots.js';
import { ownedOf } from './pull.js';
import type { RackLine } from './types.js';

/** Standard racks for glasses and cups, most compartments first. */
const COMPARTMENT_RACKS = [49, 36, 25, 20, 16, 9].map((compartments) => `glass-rack-${compartments}`);

/** What the handle of a cup adds to its width, mm. Common practice, no source. */
const HANDLE = 25;

/** The rack of a piece and how many it takes; `undefined` for what is not washed in racks, or fits none. */
export function rackFor(plan: Plan, piece: Piece): Omit<RackLine, 'piece' | 'racks'> | undefined {
    switch (piece.family) {
        case 'fork':
        case 'knife':
        case 'spoon':
            return openRack(plan, 'flatware-rack');
        case 'plate':
        case 'bowl':
            return piece.flags.some(({ name }) => name === 'stem')
                ? compartmentRack(plan, piece, 0)
                : openRack(plan, 'plate-rack');
        case 'glass':
            return compartmentRack(plan, piece, 0);
        case 'cup':
            return compartmentRack(plan, piece, HANDLE);
        default:
            return undefined;
    }
}

/** Racks of a number of pieces. @param count pieces, 0 or more */
export function racksOf(plan: Plan, name: string, count: number): RackLine | undefined {
    const piece = plan.cupboard.pieces.get(name);
    const rack = piece && rackFor(plan, piece);
    return rack && { piece: name, ...rack, racks: lotsOf(count, rack.each) };
}

function openRack(plan: Plan, name: string): Omit<RackLine, 'piece' | 'racks'> | undefined {
    const each = plan.cupboard.pieces.get(name)?.measures.pieces?.low;
    return each && each > 0 ? { rack: name, each, because: `${each} in a ${name}` } : undefined;
}

/** The most compartments that its widest point fits: of the racks the house owns, else of the standard ones. */
function compartmentRack(plan: Plan, piece: Piece, handle: number): Omit<RackLine, 'piece' | 'racks'> | undefined {
    const widest = piece.measures.across?.high;
    if (widest === undefined) {
        return undefined;
    }
    const fitting = racksInHouse(plan)
        .flatMap((name) => plan.cupboard.pieces.get(name) ?? [])
        .map((rack) => ({
            rack: rack.name,
            each: rack.measures.compartments?.low ?? 0,
            across: rack.measures.across?.low ?? 0,
        }))
        .filter(({ each, across }) => each > 0 && across >= widest + handle)
        .toSorted((a, b) => b.each - a.each);
    const [best] = fitting;
    const withHandle = handle > 0 ? ` with ${handle} mm for the handle` : '';
    return (
        best && {
            rack: best.rack,
            each: best.each,
            because: `${Math.round(widest)} mm across${withHandle}, a compartment of \`${best.rack}\` takes ${Math.round(best.across)} mm`,
        }
    );
}

/** Racks with compartments that the house lists, and the standard ones where it lists none. */
function racksInHouse({ house, cupboard }: Plan): readonly string[] {
    const owned = house.stock
        .map((stock) => stock.piece.name)
        .filter((name) => (ownedOf(house, name) ?? 0) > 0 && cupboard.pieces.get(name)?.measures.compartments);
    return owned.length > 0 ? owned : COMPARTMENT_RACKS;
}

/** Carts that the racks fill: as the house's own say (`holds 8 racks`), else as the cupboard does. */
export function cartsOf({ house, cupboard }: Plan, racks: number): number | undefined {
    const stated = house.stock.flatMap((stock) => stock.holds).find((hold) => /^racks?$/.test(hold.what))?.count;
    const each = stated ?? cupboard.pieces.get('rack-cart')?.measures.racks?.low;
    return each && each > 0 ? lotsOf(racks, each) : undefined;
}
