/** Setting up, warming, chilling and striking, for the compiled plan. */
import type { Plan } from '../plan/types.js';
import type { Call, Chance, PreparedTask, Roster, Timed } from '../service/preparations/types.js';
import { momentJson } from './plan-clock.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

export function preparationsJson(telling: Telling): Json | undefined {
    const { plan, service } = telling;
    const { preparations } = service;
    if (!preparations) {
        return undefined;
    }
    const { doors, setUp, strike, warming, chilling, assumed } = preparations;
    const moment = (minutes: number): Json => momentJson(plan, minutes);
    return {
        readyFor: moment(doors),
        setUp: {
            begins: setUp.begins === undefined ? undefined : moment(setUp.begins),
            over: moment(setUp.over),
            tasks: setUp.tasks.map((task) => taskJson(telling, task)),
            staffMeal: timedJson(plan, setUp.staffMeal),
            briefing: timedJson(plan, setUp.briefing),
            lineUp: timedJson(plan, setUp.lineUp),
            calls: setUp.calls.map((call) => callJson(plan, call)),
            roster: setUp.roster.map((roster) => rosterJson(plan, roster)),
            getInMinutesBefore: setUp.getIn,
            chance: chanceJson(setUp.chance),
        },
        warming: warming.map((load) => ({
            course: plan.menu?.courses[load.course]?.title,
            piece: load.piece,
            pieces: load.pieces,
            celsius: load.to,
            gear: load.gear,
            in: moment(load.start),
            out: moment(load.end),
            wantedUntil: moment(load.wantedUntil),
        })),
        chilling: chilling.map((start) => ({
            title: start.title,
            bottles: start.bottles,
            in: start.way,
            startBy: moment(start.at),
        })),
        strike: {
            guestsGone: moment(strike.guestsGone),
            guestsGoneBecause: strike.isGoneStated ? 'as stated' : 'the service is over, and guests linger',
            tasks: strike.tasks.map((task) => taskJson(telling, task)),
            over: moment(strike.over),
            by: strike.by === undefined ? undefined : moment(strike.by),
            leaves: strike.leaves.map((call) => callJson(plan, call)),
            roster: strike.roster.map((roster) => rosterJson(plan, roster)),
            chance: chanceJson(strike.chance),
        },
        rule: 'Set-up is scheduled backwards from the doors and strike forwards from the last guest: of the tasks that people are free for, the one with the longest way to the end goes first. Slack counts with the people there are.',
        assumed,
        assumedSource: 'common practice, no source',
    };
}

function taskJson({ plan, places }: Telling, task: PreparedTask): Json {
    return {
        title: task.title,
        because: task.because,
        ...at(places, task.stated === undefined ? undefined : plan.tasks[task.stated]?.origin),
        ...timedJson(plan, task),
        by: task.by.map(({ role, people }) => ({ role, people })),
        workMinutes: round(task.work),
        slackMinutes: round(task.slack),
        isCritical: task.isCritical || undefined,
        expectedMinutes: task.expected && round(task.expected.minutes),
        varianceMinutes2: task.expected && round(task.expected.variance),
    };
}

function timedJson(plan: Plan, timed: Timed | undefined): Json | undefined {
    return timed && { start: momentJson(plan, timed.start), end: momentJson(plan, timed.end) };
}

function callJson(plan: Plan, { role, count, at: first, each }: Call): Json {
    return { role, count, at: momentJson(plan, first), each: each.map((minutes) => momentJson(plan, minutes)) };
}

function rosterJson(plan: Plan, { role, number, tasks }: Roster): Json {
    return {
        role,
        number,
        tasks: tasks.map((task) => ({ title: task.title, tables: task.tables, ...timedJson(plan, task) })),
    };
}

/** Left out where no task is of uncertain length: then it is in time or it isn't. */
function chanceJson({ mean, variance, available, inTime }: Chance): Json | undefined {
    return variance > 0
        ? {
              expectedMinutes: round(mean),
              standardDeviationMinutes: round(Math.sqrt(variance)),
              availableMinutes: available === undefined ? undefined : round(available),
              inTime: inTime === undefined ? undefined : round(inTime),
          }
        : undefined;
}

/** Two decimals: what is estimated is not told to the last digit of a binary fraction. */
const round = (value: number): number => Math.round(value * 100) / 100;
