import { readCelsius, readClock, readMinutes } from '../plan/read-written.js';
import { DISPLAY_UNIT, show } from '../plan/quantity.js';
import { compare } from '../output/comparison/compare.js';
import { restOfEvening, tellCallsInMarkdown } from '../output/comparison/rest-of-evening.js';
import { tellChangesInMarkdown } from '../output/comparison/tell.js';
import type { Plan } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import { isSameRole } from '../service/run/team-of-plan.js';
import { cautionOf, planOtherwise, problemWith, type Otherwise } from '../what-if.js';
import { CHANGED_MEANWHILE, inSteps, isCurrent, workingOut, type Asker } from './in-steps.js';
import type { Asked } from './questions.js';
import type { OtherwiseAnswers, Question, WhatIfAnswer } from './requests.js';
import type { Place } from './workspace.js';

// What a chef may ask of an evening: each question with what the plan says now, and how its answer is read.

interface Readable extends Pick<Question, 'key' | 'label' | 'now' | 'example'> {
    /** @returns what the answer changes, or what is wrong with it */
    readonly read: (answer: string) => Otherwise | string;
}

/** The questions that this plan gives something to ask of. */
export function otherwiseQuestions({ folder, path }: Place): readonly Asked[] {
    const { plan } = folder.checked(path);
    return questionsOf(plan).map(({ read, ...question }) => ({
        ...question,
        prompt: question.now === '' ? question.label : `The plan says ${question.now}.`,
        problemOf: (answer) => {
            const found = read(answer);
            return typeof found === 'string' ? found : problemWith(plan, found);
        },
    }));
}

/** Computes the evening with the answers and tells in Markdown what is different; nothing where the asker has stopped it. */
export async function answerWhatIf(
    { folder, path }: Place,
    answers: OtherwiseAnswers,
    asker: Asker,
): Promise<WhatIfAnswer | null> {
    const checked = folder.checked(path);
    const asked = questionsOf(checked.plan).filter(({ key }) => answers[key] !== undefined);
    const read = asked.map((question) => question.read(answers[question.key]!.trim()));
    const problem = read.find((each) => typeof each === 'string');
    if (problem !== undefined) {
        return { refused: problem };
    }
    const again = planOtherwise(checked, joined(read as Otherwise[]));
    if (typeof again === 'string') {
        return { refused: again };
    }
    if (!(await inSteps('Computing the evening', workingOut(checked, again), asker))) {
        return null;
    }
    if (!isCurrent(folder, checked)) {
        return CHANGED_MEANWHILE;
    }
    const caution = cautionOf(checked, again);
    const calls = again.plan.underway ? restOfEvening(again) : [];
    return {
        markdown: [
            `# ${checked.plan.event?.title ?? path}: what if\n`,
            ...asked.map(
                ({ key, label, now }) => `- ${label}: **${answers[key]!.trim()}**${now ? ` (planned: ${now})` : ''}`,
            ),
            ...(caution === undefined ? [] : [`\n> ${caution}`]),
            '',
            ...(calls.length > 0 ? [tellCallsInMarkdown(calls)] : []),
            tellChangesInMarkdown(compare(checked, again), 'Nothing changes for anybody.'),
        ].join('\n'),
    };
}

function joined(all: readonly Otherwise[]): Otherwise {
    return all.reduce((one, more) => ({ ...one, ...more, people: { ...one.people, ...more.people } }), {});
}

function questionsOf(plan: Plan): readonly Readable[] {
    return plan.event
        ? [...guestQuestions(plan), ...teamQuestions(plan), ...hourQuestions(plan), ...roomQuestions(plan)]
        : [];
}

function guestQuestions({ event }: Plan): Readable[] {
    const guests = event?.guests;
    if (!guests) {
        return [];
    }
    const count = (key: 'guests' | 'guaranteed' | 'setFor', label: string, now: number | undefined): Readable => ({
        key,
        label,
        now: now === undefined ? '' : String(now),
        example: String((now ?? guests.expected.count) + 7),
        read: (answer) => readCount(answer, (value) => ({ [key]: value })),
    });
    return [
        count('guests', 'Guests expected', guests.expected.count),
        count('guaranteed', 'Guests guaranteed', guests.guaranteed?.count),
        count('setFor', 'Places set', guests.setFor?.count),
    ];
}

function teamQuestions({ team }: Plan): Readable[] {
    const roles = team?.roles ?? [];
    const first = roles.filter(
        ({ role }, at) => roles.findIndex((each) => isSameRole(each.role.name, role.name)) === at,
    );
    const countOf = (name: string): number =>
        roles.reduce((sum, { role, count }) => sum + (isSameRole(role.name, name) ? count.count : 0), 0);
    return first.map(({ role }) => ({
        key: `people ${role.name}`,
        label: role.name.replaceAll('-', ' ').replace(/^./, (letter) => letter.toUpperCase()),
        now: String(countOf(role.name)),
        example: String(Math.max(1, countOf(role.name) - 1)),
        read: (answer) => readCount(answer, (value) => ({ people: { [role.name]: value } })),
    }));
}

function hourQuestions(plan: Plan): Readable[] {
    const clock = eveningClock(plan);
    if (!clock) {
        return [];
    }
    const running = `${clock.face(55)} ${plan.menu?.courses[0]?.kind.name ?? 'soup'}`;
    return [
        {
            key: 'late',
            label: 'Guests sit down late',
            now: '',
            example: '15 min',
            read: (answer) => {
                const late = readMinutes(answer);
                return late === undefined ? 'How much later, such as 15 min or 1 h?' : { late };
            },
        },
        {
            key: 'underway',
            label: 'The evening runs: now, and the last course cleared',
            now: '',
            example: running,
            read: (answer) => {
                const [, time = '', done = ''] = /^(\d{1,2}:\d{2}(?:\s*[ap]\.?m)?)\s+(.+)$/i.exec(answer.trim()) ?? [];
                const minutes = readClock(time).value;
                return minutes === undefined
                    ? `Write the time and the last course that is cleared, such as ${running}.`
                    : { underway: { minutes, done } };
            },
        },
    ];
}

function roomQuestions({ room }: Plan): Readable[] {
    return room
        ? [
              {
                  key: 'roomTemperature',
                  label: 'Air of the room',
                  now: room.temperature ? show(room.temperature.value, DISPLAY_UNIT.temperature) : '',
                  example: '28 °C',
                  read: (answer) => {
                      const celsius = readCelsius(answer);
                      return celsius === undefined
                          ? 'How warm is the room, such as 28 °C or 82 °F?'
                          : { roomTemperature: celsius };
                  },
              },
          ]
        : [];
}

function readCount(answer: string, use: (count: number) => Otherwise): Otherwise | string {
    return /^\d+$/.test(answer) ? use(Number(answer)) : 'How many, as a whole number?';
}
