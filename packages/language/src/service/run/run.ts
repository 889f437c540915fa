import type { Plan } from '../../plan/types.js';
import { lazily } from '../../plan/lazily.js';
import { sameAgain } from '../remember.js';
import { eveningOf, type ForEvening, type PlannedEvening } from './evening-of-plan.js';
import { figureOf } from './pace.js';
import { replicate, replicating, type ReplicationsAsked } from './replications.js';
import { runEvening } from './run-evening.js';
import type { Run } from './types.js';

/** The service of a plan, simulated; `undefined` where it names no guests, courses, tables or servers. */
export function runService(plan: Plan, service: ForEvening): Run | undefined {
    const planned = plannedEvening(plan, service);
    if (!planned) {
        return undefined;
    }
    const { evening, assumed } = planned;
    const asked = replicationsAsked(plan, evening);
    const replications = lazily(() => asked && replicate(asked));
    const run = {
        assumed,
        get replications() {
            return replications();
        },
    };
    // What is worked out only when asked for stays so.
    return Object.defineProperties(run as unknown as Run, Object.getOwnPropertyDescriptors(runEvening(evening)));
}

function replicationsAsked(plan: Plan, evening: PlannedEvening['evening']): ReplicationsAsked | undefined {
    const asked = plan.event?.replications;
    return asked && { evening, count: asked.count, seed: asked.seed, window: figureOf(plan.customs, 'window') };
}

/** The replications that a plan asks for, evening by evening: when all are run, the service has them. Nothing where it asks for none. */
export function replicatingService(plan: Plan, service: ForEvening): ReturnType<typeof replicating> | undefined {
    const asked = plan.event?.replications && plannedEvening(plan, service);
    return asked && replicating(replicationsAsked(plan, asked.evening)!);
}

const same = sameAgain<PlannedEvening | undefined>();
const evenings = new WeakMap<ForEvening, () => PlannedEvening | undefined>();

/** The evening of a service as the simulation takes it, for those who try it with other people or times. */
export function plannedEvening(plan: Plan, service: ForEvening): PlannedEvening | undefined {
    const evening = evenings.get(service) ?? lazily(() => same(eveningOf(plan, service)));
    evenings.set(service, evening);
    return evening();
}
