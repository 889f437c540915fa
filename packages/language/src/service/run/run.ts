import type { Plan } from '../../plan/types.js';
import { eveningOf, type ForEvening } from './evening-of-plan.js';
import { runEvening } from './run-evening.js';
import type { Run } from './types.js';

/** The service of a plan, simulated; `undefined` where it names no guests, courses, tables or servers. */
export function runService(plan: Plan, service: ForEvening): Run | undefined {
    const planned = eveningOf(plan, service);
    if (!planned) {
        return undefined;
    }
    const { evening, assumed } = planned;
    // What is worked out only when asked for stays so.
    return Object.defineProperties({ assumed } as Run, Object.getOwnPropertyDescriptors(runEvening(evening)));
}
