import type { Plan, Speech } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import { figureOf } from '../service/run/pace.js';
import { freeTimeFor, whatGoesOn } from '../service/run/speech-times.js';
import type { Run } from '../service/run/types.js';
import type { Fix } from './fixes.js';
import type { Report } from './rule.js';
import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (speech: string): string => `event "Harbour supper" {
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
        contains nothing
    }
    ${speech}
}
`;

export default defineRule({
    id: 'speech-collides-with-course',
    group: 'service',
    since: '0.2.0',
    title: 'A speech at a time when plates are carried',
    why: 'Nobody listens while plates are set down, and plates that wait for a speaker go cold.',
    source: ['table-service 11.13', 'table-service 11.14', 'common practice, no source'],
    fix: 'sometimes',
    customs: ['window'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'In the middle of serving the soup',
                text: plan('speech "The harbour master" at <|19:02|>, lasts 4 min'),
            },
            {
                title: 'After the soup, at an hour when it is still eaten',
                text: plan('speech "The harbour master" after soup, at <|19:06|>, lasts 4 min'),
            },
        ],
        right: [
            { text: plan('speech "The harbour master" after soup, at 19:20, lasts 4 min') },
            { title: 'While guests eat', text: plan('speech "The harbour master" at 19:08, lasts 4 min') },
        ],
    },
    check({ plan, service: { run }, report }) {
        for (const held of run?.speeches ?? []) {
            const speech = plan.menu?.speeches[held.speech];
            if (run && speech && held.at !== undefined) {
                const finding = speech.when
                    ? waitsForCourse(plan, speech, held.at, held.start)
                    : overlaps(plan, run, speech, held.at, held.end);
                if (finding) {
                    report(finding);
                }
            }
        }
    },
});

const nameOf = ({ sort, title }: Speech): string =>
    title === undefined ? `The ${sort}` : `The ${sort} ${quoted(title)}`;

/** It follows a course that is not cleared by then. */
function waitsForCourse(plan: Plan, speech: Speech, at: number, start: number): Report | undefined {
    const clock = eveningClock(plan);
    const limit = figureOf(plan.customs, 'window');
    const late = start - at;
    if (!clock || !speech.at || late <= limit) {
        return undefined;
    }
    const to = clock.face(Math.floor(start));
    const { when, course } = speech.when!;
    return {
        at: speech.at.origin,
        message: `${nameOf(speech)} is to begin at ${quoted(speech.at.written)}, but the tables are not ready for it before ${to}: it comes ${when} ${quoted(course.name)}. It would begin ${Math.floor(late)} min late; the house allows ${limit} min.`,
        hint: `Let it begin at ${to}, or shorten what comes before it.`,
        fixes: [beginAt(to, speech)],
    };
}

/** It follows no course, and something goes on while it is held. */
function overlaps(plan: Plan, run: Run, speech: Speech, at: number, end: number): Report | undefined {
    const clock = eveningClock(plan);
    const [first] = whatGoesOn(run, at, end);
    // A toast before its glasses are poured is a finding of its own.
    const poured = run.speeches.find((each) => plan.menu?.speeches[each.speech] === speech)?.poured ?? -Infinity;
    if (!clock || !speech.at || !first || poured > at + figureOf(plan.customs, 'longest-wine-wait')) {
        return undefined;
    }
    const title = quoted(plan.menu?.courses[first.course]?.title ?? 'coffee');
    const free = freeTimeFor(run, at, end - at, Math.max(0, poured));
    const to = clock.face(free);
    return {
        at: speech.at.origin,
        message: `${nameOf(speech)} at ${quoted(speech.at.written)} falls into the ${first.work} of ${title}, from ${clock.face(first.from)} to ${clock.face(first.to)}.`,
        hint: `Nothing is carried for ${Math.ceil(end - at)} min from ${to} on.`,
        fixes: [beginAt(to, speech)],
    };
}

function beginAt(time: string, speech: Speech): Fix {
    return {
        title: `Let it begin at ${time}`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at: speech.at!.origin, words: time }],
    };
}
