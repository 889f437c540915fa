/** The heat section of a plan: what every hot or cold thing is like in front of its first and its last guest. */
import type { Plan } from '../../plan/types.js';
import type { DishRun, Run } from '../run/types.js';
import type { DishFacts, Service } from '../types.js';
import { dishHeat } from './dish-heat.js';
import { drinksHeat } from './drink-heat.js';
import { piecesHeat } from './piece-heat.js';
import type { Air, DishHeat, Heat } from './types.js';

/** The room's own temperature, else the house's custom. */
export function airOf({ room, customs }: Pick<Plan, 'room' | 'customs'>): Air {
    return {
        celsius: room?.temperature?.value ?? customs['room-temperature'].value,
        humidity: customs.humidity.value,
    };
}

/** @param run absent where nothing tells the times: then there are no temperatures at a guest, only what follows by the minute */
export function heatOf(plan: Plan, service: Pick<Service, 'facts' | 'pours' | 'coffee'>, run: Run | undefined): Heat {
    const air = airOf(plan);
    return {
        air,
        dishes: service.facts.flatMap((facts) => dishHeat(plan, facts, air, runOf(run, facts)) ?? []),
        drinks: drinksHeat(plan, service, air),
        pieces: service.facts.flatMap((facts) => piecesHeat(plan, facts, air, runOf(run, facts))),
    };
}

function runOf(run: Run | undefined, { dish }: DishFacts): DishRun | undefined {
    return run?.courses.find((each) => each.course === dish.course)?.dishes.find((each) => each.dish === dish.index);
}

export function heatOfDish(heat: Heat, { dish }: DishFacts): DishHeat | undefined {
    return heat.dishes.find((each) => each.course === dish.course && each.dish === dish.index);
}
