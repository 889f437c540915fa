import { customSpecs, type CustomName } from '../../plan/customs.js';
import type { CustomSpec } from '../../plan/customs.js';
import type { Customs } from '../../plan/types.js';
import type { Cover } from '../types.js';
import type { LayingDistances } from './types.js';

/** The distances that the customs in force give. */
export function layingDistances(customs: Customs, napkin: Cover['napkin']): LayingDistances {
    const edge = customs.edge.value;
    const plateEdge = customs['plate-edge'].value;
    return {
        edge,
        plateEdge: plateEdge === 'with-pieces' ? edge : plateEdge,
        pieceGap: customs['piece-gap'].value,
        dessertGap: customs['dessert-gap'].value,
        waterGlassGap: customs['water-glass-gap'].value,
        cupEdge: customs['cup-edge'].value,
        coverWidth: customs['cover-width'].value,
        waterGlass: customs['water-glass'].value,
        glassShape: customs['glass-shape'].value,
        napkin,
        butterSpreader: customs['butter-spreader'].value,
        placeCard: customs['place-card'].value,
        saltAndPepper: customs['salt-and-pepper'].value,
        cupPlace: customs['cup-place'].value,
    };
}

/**
 * The same where a table is crowded: a gap the house does not state takes its least published figure, and the napkin goes on
 * the plate (table-service 5.2: where space demands it). What the house states stays as stated.
 * @param isPlateTaken a first course waits on the plate when guests sit
 */
export function drawnTogether(customs: Customs, distances: LayingDistances, isPlateTaken: boolean): LayingDistances {
    const least = (name: 'piece-gap' | 'dessert-gap' | 'water-glass-gap', stated: number): number =>
        customs[name].origin ? stated : leastOf(name);
    return {
        ...distances,
        pieceGap: least('piece-gap', distances.pieceGap),
        dessertGap: least('dessert-gap', distances.dessertGap),
        waterGlassGap: least('water-glass-gap', distances.waterGlassGap),
        napkin: customs.napkin.origin || isPlateTaken ? distances.napkin : 'on-plate',
    };
}

function leastOf(name: CustomName): number {
    const spec: CustomSpec = customSpecs.find((each) => each.name === name)!;
    return spec.figure!.low;
}
