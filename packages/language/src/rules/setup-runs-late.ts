import { fromTo } from '../plan/origin.js';
import { show } from '../plan/quantity.js';
import type { Plan } from '../plan/types.js';
import { eveningClock, type EveningClock } from '../service/clock/evening.js';
import { fewestOf, startsTooEarly, strikesTooLate } from '../service/preparations/late.js';
import { preparationsInput } from '../service/preparations/preparations.js';
import type { Preparations } from '../service/preparations/types.js';
import { clausesOf } from '../service/run/team-of-plan.js';
import type { Service } from '../service/types.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report } from './rule.js';
import { counted, listed, quoted } from './wording.js';

const plan = (times: string, laying: string, tasks = ''): string => `house "Saltmarsh Hall" {
    laying { ${laying} }
}

event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    ${times}
    guests 24
}

room "Boathouse" 12 m by 9 m {
    table A to C: round 60 inch, 8 seats
}

team { captain 1   servers 3   runners 1   plating-lines 1 at 12 plates per min }
${tasks}
menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'setup-runs-late',
    group: 'service',
    since: '0.2.0',
    title: 'Set-up that is not ready for the doors, or a strike that is not over in time',
    why: 'Guests who come into a room half laid see nothing else of the evening. And a hall that is hired until midnight is paid for by the hour after it.',
    source: ['quantities 6.2', 'quantities 9', 'common practice, no source'],
    fix: 'sometimes',
    noFix: 'Where four times the people would not be enough, the hours are wrong, and only the host and the house can change them.',
    customs: ['get-in', 'get-out', 'briefing', 'line-up', 'staff-meal', 'ready-chance'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'The crew still eats when it is to be briefed',
                text: plan('doors 18:30  seated 19:00  crew 6 at <|18:00|>', 'briefing: 15 min'),
            },
            {
                title: 'The house lets the team in too late',
                text: plan('doors <|18:30|>  seated 19:00', 'get-in: 35 min   folding-napkin: 2 min'),
            },
            {
                title: 'A room that is to be clear when the last guest goes',
                text: plan('seated 19:00  ends <|20:00|>', 'get-out: 0 min'),
            },
            {
                title: 'More people than there are',
                text: plan(
                    'seated 19:00',
                    'briefing: 15 min',
                    '\nsetup { task "Tables and chairs" takes 30 min, by <|5 servers|> }\n',
                ),
            },
        ],
        right: [
            {
                text: plan(
                    'doors 18:30  seated 19:00  ends 20:00  crew 6 at 17:30',
                    'get-in: 3 h   get-out: 1 h',
                    '\nsetup { task "Tables and chairs" takes 30 min, by 3 servers }\n',
                ),
            },
        ],
    },
    check({ plan, service, report }) {
        const clock = eveningClock(plan);
        const preparations = isLimited(plan, clock) ? service.preparations : undefined;
        if (!preparations || !clock || preparations.setUp.circle || preparations.strike.circle) {
            return;
        }
        judgePeople(plan, preparations, report);
        judgeMeal(plan, preparations, clock, report);
        judgeSetUp(plan, service, preparations, clock, report);
        judgeStrike(plan, service, preparations, clock, report);
    },
});

/** More than it takes to pour water and to set a first course before guests are called to sit, min. */
const FIRST_SERVICE = 30;

/** True where the plan states anything that set-up or strike could miss: there is nothing to work out where it doesn't. */
function isLimited({ event, tasks, customs }: Plan, clock: EveningClock | undefined): boolean {
    const meal = clock?.after(event?.crew?.at);
    const doors = Math.min(clock?.after(event?.doors, 'doors') ?? 0, -customs['seating-time'].value - FIRST_SERVICE);
    const ready = doors - customs['line-up'].value - customs.briefing.value;
    const mealIsNear = meal !== undefined && meal + customs['staff-meal'].value > ready;
    return event?.ends !== undefined || mealIsNear || tasks.length > 0 || customs['get-in'].value !== 'any-time';
}

/** Clauses are written to the next five minutes. */
const FIVE = 5;

function judgePeople(plan: Plan, { setUp, strike }: Preparations, report: (report: Report) => void): void {
    for (const { stated, role, takes, there } of [...setUp.tooMany, ...strike.tooMany]) {
        const task = plan.tasks[stated]!;
        const clause = clausesOf(plan, role as 'server').at(-1);
        report({
            at: fromTo(task.by!.count.origin, task.by!.role.origin),
            message: `${quoted(task.title.text)} takes ${counted(takes, role)}; the team has ${there}, so it is never begun.`,
            hint: 'Let fewer do it in more time, or have more of them.',
            related: clause ? [{ at: clause.origin, message: `The team has ${counted(there, role)}.` }] : [],
            fixes: clause
                ? [
                      {
                          title: `Have ${counted(takes, role)}`,
                          safety: 'unsafe',
                          changes: [{ do: 'replace', at: clause.count.origin, words: String(takes) }],
                      },
                  ]
                : [],
        });
    }
}

function judgeMeal(
    { event }: Plan,
    { setUp, doors }: Preparations,
    clock: EveningClock,
    report: (report: Report) => void,
): void {
    const { staffMeal, briefing } = setUp;
    const next = briefing?.start ?? doors;
    if (!staffMeal || !event?.crew?.at || staffMeal.end <= next) {
        return;
    }
    const latest = clock.face(Math.floor((next - (staffMeal.end - staffMeal.start)) / FIVE) * FIVE);
    report({
        at: event.crew.at.origin,
        message: `The crew eats from ${clock.face(staffMeal.start)} to ${clock.face(staffMeal.end)}, and ${briefing ? `is briefed at ${clock.face(next)} for the doors at` : 'the doors open at'} ${clock.face(doors)}.`,
        hint: `Let it eat at ${latest} at the latest; the time it has to itself may be set by law.`,
        fixes: [
            {
                title: `Let the crew eat at ${latest}`,
                safety: 'unsafe',
                preferred: true,
                changes: [{ do: 'replace', at: event.crew.at.origin, words: latest }],
            },
        ],
    });
}

function judgeSetUp(
    plan: Plan,
    service: Service,
    preparations: Preparations,
    clock: EveningClock,
    report: (report: Report) => void,
): void {
    const { setUp, doors } = preparations;
    const { begins, getIn, chance } = setUp;
    const early = startsTooEarly(preparations, doors);
    const at = plan.event?.doors ?? plan.event?.seated;
    if (early <= 0 || begins === undefined || getIn === undefined || !at) {
        return;
    }
    const [long] = setUp.tasks.toSorted((a, b) => b.work - a.work);
    const chances =
        chance.variance > 0 && chance.inTime !== undefined
            ? ` Begun then, it is ready in time with a chance of ${show(chance.inTime, '%')}.`
            : '';
    const enough = fewestServers(plan, service, (prepared) => startsTooEarly(prepared, doors) <= 0);
    report({
        at: at.origin,
        message: `Set-up has to begin at ${clock.face(begins)} to be ready for the doors at ${clock.face(doors)}; the house lets the team in at ${clock.face(doors - getIn)}, ${show(Math.ceil(early), 'min')} later.${chances}`,
        hint: `Most of the work is ${quoted(long!.title)} (${long!.because}); ${enough ? `${lowerFirst(enough.title)}, or ` : ''}do some of it the day before.`,
        related: getInAt(plan),
        fixes: enough ? [enough] : [],
    });
}

function lowerFirst(text: string): string {
    return text.charAt(0).toLowerCase() + text.slice(1);
}

function getInAt({ customs }: Plan): Report['related'] {
    const { origin } = customs['get-in'];
    return origin ? [{ at: origin, message: 'The house lets the team in then.' }] : [];
}

function judgeStrike(
    plan: Plan,
    service: Service,
    preparations: Preparations,
    clock: EveningClock,
    report: (report: Report) => void,
): void {
    const { strike } = preparations;
    const ends = plan.event?.ends;
    const late = strikesTooLate(preparations);
    if (late <= 0 || !ends || strike.by === undefined) {
        return;
    }
    const last = strike.tasks.filter(({ isCritical }) => isCritical).map(({ title }) => quoted(title));
    const enough = fewestServers(plan, service, (prepared) => strikesTooLate(prepared) <= 0);
    const longer = laterGetOut(plan, strike.over - (strike.by - getOutOf(plan)));
    report({
        at: ends.origin,
        message: `The strike is over at ${clock.face(strike.over)}; the last guest is to have gone at ${clock.face(strike.guestsGone)}, and the room is to be clear at ${clock.face(strike.by)}, ${show(Math.ceil(late), 'min')} before.`,
        hint: last.length > 0 ? `What holds it up: ${listed(last)}.` : undefined,
        fixes: [...(enough ? [enough] : []), ...(longer ? [longer] : [])],
    });
}

function getOutOf({ customs }: Plan): number {
    const { value } = customs['get-out'];
    return typeof value === 'number' ? value : 0;
}

/** The house takes its time. @param minutes from the last guest to the end of the strike */
function laterGetOut({ house, customs }: Plan, minutes: number): Fix | undefined {
    const value = show(Math.ceil(minutes / FIVE) * FIVE, 'min');
    return (
        house.origin && {
            title: `Have the room until ${value} after the last guest`,
            safety: 'unsafe',
            changes: [
                {
                    do: 'set-custom',
                    house: house.origin,
                    laying: house.layingOrigin,
                    custom: customs['get-out'].origin,
                    name: 'get-out',
                    value,
                },
            ],
        }
    );
}

/** The fewest servers with whom it is in time, where more of them help at all. */
function fewestServers(
    plan: Plan,
    service: Service,
    isFine: (prepared: Pick<Preparations, 'setUp' | 'strike'>) => boolean,
): Fix | undefined {
    const clauses = clausesOf(plan, 'server');
    const last = clauses.at(-1);
    const input = last && preparationsInput(plan, service);
    const count = input && fewestOf(input, 'server', isFine);
    if (!last || count === undefined) {
        return undefined;
    }
    const others = clauses.slice(0, -1).reduce((sum, clause) => sum + clause.count.count, 0);
    return {
        title: `Have ${counted(count, 'server')}`,
        safety: 'unsafe',
        changes: [{ do: 'replace', at: last.count.origin, words: String(count - others) }],
    };
}
