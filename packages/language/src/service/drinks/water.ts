/** Water at table: who takes which, how often it is poured, and in how many bottles or jugs. */
import type { Plan } from '../../plan/types.js';
import { poursPerBottle } from './bottles.js';
import { roundsOf } from './rounds.js';
import type { WaterNeed } from './types.js';

/** 75 % of 84 is 63, not 63.00000000000001. */
const NOISE = 1e-9;

/**
 * The waters of the menu, still first; none where the menu states no `water`. Where both are offered, the house's share takes
 * sparkling (`sparkling-water-share`). A glass whose measure isn't stated is filled as the house fills it (`water-fill`).
 */
export function waterNeeds(plan: Plan, guests: number): WaterNeed[] {
    const { menu, customs, cupboard } = plan;
    const water = menu?.water;
    const holds = cupboard.pieces.get(water?.pour.glass?.name ?? 'water-glass')?.measures.holds;
    const measure = water?.pour.amount?.value ?? (holds ? holds.low * customs['water-fill'].value : 0);
    if (!water || measure <= 0) {
        return [];
    }
    const rounds = roundsOf(plan, water.pour, -1, customs['water-top-up'].value, []);
    const takers = upTo(customs['water-share'].value * guests);
    const isOffered = (choice: 'still' | 'sparkling'): boolean => water.choices.includes(choice);
    const sparkling = isOffered('sparkling')
        ? isOffered('still')
            ? upTo(customs['sparkling-water-share'].value * takers)
            : takers
        : 0;
    const counts = { still: takers - sparkling, sparkling };
    const offered = (['still', 'sparkling'] as const).filter(
        (choice) => isOffered(choice) || (choice === 'still' && water.choices.length === 0),
    );
    return offered.map((choice) => {
        const from = choice === 'still' ? customs['still-water-from'].value : customs['sparkling-water-from'].value;
        const jug = cupboard.pieces.get('water-jug')?.measures.holds?.low;
        const size = from === 'jugs' && jug ? jug * customs['jug-fill'].value : customs['water-bottle'].value;
        const pours = counts[choice] * rounds.pours;
        const each = poursPerBottle(size, measure);
        const millilitres = pours * measure;
        // A glass larger than the bottle is filled from two.
        const count = each > 0 ? upTo(pours / each) : upTo(millilitres / size);
        return {
            choice,
            drinkers: counts[choice],
            rounds,
            measure,
            isMeasureStated: water.pour.amount !== undefined,
            millilitres,
            from: jug ? from : 'bottles',
            count,
            size,
            leftOver: count * size - millilitres,
        };
    });
}

const upTo = (value: number): number => Math.max(0, Math.ceil(value - NOISE));
