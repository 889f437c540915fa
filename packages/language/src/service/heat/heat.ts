/** The heat section of a plan: what every hot or cold thing is like in front of its first and its last guest. */
import { lazily, lazilyKept, lazilyKeptEach, whenAsked } from '../../plan/lazily.js';
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

/**
 * What is like each by itself: a dish is not asked again when another comes to its guests at another time.
 * @param run absent where nothing tells the times
 * @param warming when vessels are in the warmers; what is in none comes straight from one
 */
export function heatOfFacts(
    plan: Plan,
    facts: DishFacts,
    run: () => Run | undefined,
    warming: () => readonly WarmingLoad[] = () => [],
): DishWithPieces {
    const { course, index } = facts.dish;
    const air = lazilyKept(() => airOf(plan));
    const timed = lazilyKept(() =>
        run()
            ?.courses.find((each) => each.course === course)
            ?.dishes.find((each) => each.dish === index),
    );
    const loads = lazilyKept(() =>
        warming().filter((load) => load.course === course && load.piece === facts.vessel?.name),
    );
    const dish = lazily(() => dishHeat(plan, facts, air(), timed(), loads()));
    const pieces = lazily(() => piecesHeat(plan, facts, air(), timed()));
    return whenAsked<DishWithPieces>({ dish, pieces });
}

/**
 * Without a run, where nothing tells the times, there are no temperatures at a guest, only what follows by the minute.
 * @param heated the heat of one dish
 */
export function heatOf(
    plan: Plan,
    service: Pick<Service, 'facts' | 'pours' | 'coffee'>,
    heated: (facts: DishFacts) => DishWithPieces,
): Heat {
    const air = lazilyKept(() => airOf(plan));
    const dishes = lazilyKeptEach(() => service.facts.flatMap((facts) => heated(facts).dish ?? []), Object.is);
    const drinks = lazily(() => drinksHeat(plan, service, air()));
    const pieces = lazilyKeptEach(() => service.facts.flatMap((facts) => heated(facts).pieces), Object.is);
    return whenAsked<Heat>({ air, dishes, drinks, pieces });
}

export function heatOfDish(heat: Heat, { dish }: DishFacts): DishHeat | undefined {
    return heat.dishes.find((each) => each.course === dish.course && each.dish === dish.index);
}
