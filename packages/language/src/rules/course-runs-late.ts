import type { Origin } from '../plan/origin.js';
import type { Plan } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import type { Service } from '../service/types.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { sayTeam, serviceMisses, teamFix, teamWanted } from './service-misses.js';
import { quoted } from './wording.js';

const plan = (starts: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

room "Boathouse" 12 m by 9 m {
    table A to C: round 60 inch, 8 seats
}

team { captain 1   servers 3   runners 1   plating-lines 1 at 12 plates per min }

menu {
    course soup "Leek and potato" {
        served in soup-bowl warmed to 60 °C at 66 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        ${starts}
        contains nothing
    }
}
`;

export default defineRule({
    id: 'course-runs-late',
    group: 'service',
    since: '0.2.0',
    title: 'A course starts later than the plan says',
    why: 'The kitchen cooks for the hour it was told, and speakers, musicians and the car at the door keep to it.',
    source: ['table-service 10.17', 'quantities 6.2', 'common practice, no source'],
    fix: 'sometimes',
    customs: ['window'],
    scope: 'event',
    examples: {
        wrong: [{ title: 'Ten minutes for a soup of fifteen', text: plan('<|starts at 19:10|>') }],
        right: [{ text: plan('starts at 19:25') }],
    },
    check({ plan, service, report }) {
        const found = serviceMisses(plan, service);
        const clock = eveningClock(plan);
        for (const { sort, course: index, minutes, limit } of found?.misses ?? []) {
            const course = plan.menu?.courses[index];
            if (sort !== 'late' || !found || !course?.startsAt || !clock) {
                continue;
            }
            const run = found.run.courses.find((each) => each.course === index)!;
            const at = clock.face(Math.floor(run.served.first));
            const wanted = teamWanted(found, true);
            const people = wanted && teamFix(plan, wanted);
            report({
                at: course.startsAt.origin,
                message: `The first plate of ${quoted(course.title)} is set down at ${at}, ${Math.floor(minutes)} min after the ${quoted(course.startsAt.time.written)} of the plan; the house allows ${limit} min.`,
                hint: `${whyLate(plan, service, index)} Let it start at ${at}, or make what comes before it shorter${wanted && people ? `; ${sayTeam(wanted)} would be in time` : ''}.`,
                fixes: [startAt(at, course.startsAt.time.origin), ...(people ? [people] : [])],
            });
        }
    },
});

function startAt(time: string, at: Origin): Fix {
    return {
        title: `Start it at ${time}`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at, words: time }],
    };
}

/** What it waits for: the course before it, being eaten until then. */
function whyLate(plan: Plan, { run }: Service, index: number): string {
    const before = run?.courses.findLast((course) => course.course < index);
    const title = before && plan.menu?.courses[before.course]?.title;
    const clock = eveningClock(plan);
    return before && title && clock
        ? `The first table has eaten ${quoted(title)} at ${clock.face(Math.floor(before.finished.first))}, the last at ${clock.face(Math.floor(before.finished.last))}.`
        : 'Guests sit at the hour that the event says.';
}
