/** The run sheet: the evening simulated, with what its people do and what more of them would buy. */
import { lazily } from '../../plan/lazily.js';
import { remember } from '../remember.js';
import { bottleneckOf } from './bottleneck.js';
import { courseTimes, overAt } from './course-times.js';
import type { Evening } from './evening.js';
import { joined, peopleOf, pouringStarts, tasksOf } from './people.js';
import { simulate } from './simulate.js';
import { speechTimes } from './speech-times.js';
import type { Run } from './types.js';

type Computed = Omit<Run, 'assumed'>;

export const runEvening = remember((evening: Evening): Computed => {
    const simulated = simulate(evening);
    const { workforce } = simulated;
    const courses = courseTimes(simulated);
    const tasks = lazily(() => tasksOf(simulated, courses));
    const pouring = lazily(() => pouringStarts(simulated));
    const lines = lazily(() => joined(tasks()));
    const people = lazily(() => peopleOf(simulated, tasks()));
    const bottleneck = lazily(() => bottleneckOf(evening, courses, people()));
    const firstServer = evening.team.captains;
    return {
        tables: evening.tables.map(({ name, guests, fromPass }, table) => ({
            name,
            guests,
            fromPass,
            server: workforce.firstPerson[workforce.stationOf[table]!] ?? firstServer,
        })),
        courses,
        speeches: speechTimes(simulated),
        get tasks() {
            return lines();
        },
        get pouringStarts() {
            return pouring();
        },
        get people() {
            return people();
        },
        get bottleneck() {
            return bottleneck();
        },
        over: overAt(courses, evening.courses.length),
    };
});
