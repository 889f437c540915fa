/** The heat section of a plan: what every hot or cold thing is like in front of its first and its last guest. */
import type { Plan } from '../../plan/types.js';
import type { WarmingLoad } from '../preparations/types.js';
import type { Run } from '../run/types.js';
import type { DishFacts, Service } from '../types.js';
import { EARTHLY_AIR } from './air.js';
import { dishHeat } from './dish-heat.js';
import { drinksHeat } from './drink-heat.js';
import { piecesHeat } from './piece-heat.js';
import type { Air, DishHeat, Heat, PieceHeat } from './types.js';

/** The room's own temperature, else the house's custom; one that no air has is taken for the nearest that it can have. */
export function airOf({ room, customs }: Pick<Plan, 'room' | 'customs'>): Air {
    const celsius = room?.temperature?.value ?? customs['room-temperature'].value;
    return {
        celsius: Math.min(EARTHLY_AIR.warmest, Math.max(EARTHLY_AIR.coldest, celsius)),
        humidity: customs.humidity.value,
    };
}

/** A dish and what it is eaten with. */
export interface DishWithPieces {
    readonly dish: DishHeat | undefined;
    readonly pieces: readonly PieceHeat[];
}

/** @param warming when vessels are in the warmers; what is in none comes straight from one */
export function heatOfFacts(
    plan: Plan,
    facts: DishFacts,
    run: Run | undefined,
    warming: readonly WarmingLoad[] = [],
): DishWithPieces {
    const air = airOf(plan);
    const { course, index } = facts.dish;
    const timed = run?.courses.find((each) => each.course === course)?.dishes.find((each) => each.dish === index);
    const loads = warming.filter((load) => load.course === course && load.piece === facts.vessel?.name);
    return { dish: dishHeat(plan, facts, air, timed, loads), pieces: piecesHeat(plan, facts, air, timed) };
}

/**
 * @param run absent where nothing tells the times: then there are no temperatures at a guest, only what follows by the minute
 * @param heated the heat of one dish, where somebody keeps it
 */
export function heatOf(
    plan: Plan,
    service: Pick<Service, 'facts' | 'pours' | 'coffee'>,
    run: Run | undefined,
    heated = (facts: DishFacts): DishWithPieces => heatOfFacts(plan, facts, run),
): Heat {
    const air = airOf(plan);
    const all = service.facts.map(heated);
    return {
        air,
        dishes: all.flatMap(({ dish }) => dish ?? []),
        drinks: drinksHeat(plan, service, air),
        pieces: all.flatMap(({ pieces }) => pieces),
    };
}

export function heatOfDish(heat: Heat, { dish }: DishFacts): DishHeat | undefined {
    return heat.dishes.find((each) => each.course === dish.course && each.dish === dish.index);
}
