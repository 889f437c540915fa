/** An evening, run once: what happens before guests sit and after, each as the scheduler times it. */
import { beforeSeating, type BeforeSeating } from './before-seating.js';
import { AS_PLANNED, type Draws } from './draws.js';
import { schedule, type Schedule } from './engine.js';
import type { Evening } from './evening.js';
import { serviceNetwork, type ServiceNetwork } from './service-network.js';
import { workforceOf, type Workforce } from './workforce.js';

export interface SimulatedEvening {
    readonly evening: Evening;
    readonly workforce: Workforce;
    readonly before: BeforeSeating;
    readonly service: ServiceNetwork;
    readonly times: Schedule;
}

export function simulate(evening: Evening, draws: Draws = AS_PLANNED): SimulatedEvening {
    const workforce = workforceOf(evening);
    const before = beforeSeating(evening, workforce, draws);
    const service = serviceNetwork(evening, workforce, draws, evening.underway?.at ?? before.over);
    return { evening, workforce, before, service, times: schedule(service.network, service.network.order) };
}
