import { check } from '../check.js';
import { standardCupboard } from '../cupboard/standard.js';
import type { Files } from '../plan/files.js';
import { readDate } from '../plan/read-written.js';
import type { Severity } from '../plan/types.js';
import { fileStem, freePlanPath } from './file-names.js';
import { formatText } from './format.js';
import type { Folder } from './folder.js';
import type { Asked } from './questions.js';
import type { AnswerProblem, NewEvent, NewEventAnswer } from './requests.js';

// A plan to begin with: three courses that say all that a course must say. It stands in its folder, so it uses the house
// that is there, and of several ways to write it the one is taken of which least is found.

/** The most guests that one event is begun with. */
const MOST_GUESTS = 5000;

/** What is asked of who begins an event. */
export const EVENT_QUESTIONS: readonly Asked[] = (
    [
        ['title', 'What is the event called?', 'Lantern night supper', readTitle],
        ['date', 'On which day is it?', '2026-10-17', readDay],
        ['guests', 'How many guests are expected?', '84', readGuests],
    ] as const
).map(([key, prompt, example, read], index, all) => ({
    key,
    label: `New event (${index + 1} of ${all.length})`,
    prompt,
    example,
    now: '',
    problemOf: (answer) => {
        const found = read(answer);
        return 'problem' in found ? found.problem : undefined;
    },
}));

type Read<Value> = { readonly value: Value } | AnswerProblem;

function readTitle(answer: string): Read<string> {
    if (answer === '') {
        return { problem: 'What is the event called?' };
    }
    return /["“”„\r\n]/.test(answer) ? { problem: 'The name can hold no quotes.' } : { value: answer };
}

function readDay(answer: string): Read<string> {
    const { value, suggestions } = readDate(answer);
    const days = value === undefined ? suggestions : [value];
    if (days.length > 1) {
        return { problem: `That can be ${days.join(' or ')}. Which?` };
    }
    return days[0] === undefined
        ? { problem: 'Write the day as year, month and day, such as 2026-10-17.' }
        : { value: days[0] };
}

function readGuests(answer: string): Read<number> {
    const guests = Number(answer);
    if (!/^\d+$/.test(answer) || guests === 0) {
        return { problem: 'How many guests, as a whole number, such as 84?' };
    }
    return guests > MOST_GUESTS ? { problem: `At most ${MOST_GUESTS} guests at one event.` } : { value: guests };
}

/** @param folder that the plan is to stand in; absent where none is open */
export function newEvent(asked: NewEvent, folder: Folder | undefined): NewEventAnswer {
    const title = readTitle(asked.title.trim());
    const date = readDay(asked.date.trim());
    const guests = readGuests(asked.guests.trim());
    if ('problem' in title || 'problem' in date || 'problem' in guests) {
        const [refused] = [title, date, guests].flatMap((read) => ('problem' in read ? [read.problem] : []));
        return { refused: refused! };
    }
    const within = pathIn(folder, asked.folder);
    const path = freePlanPath(folder?.plans ?? [], within, fileStem(title.value, 'event'));
    const name = path.slice(within.length);
    const zone = zoneOf(folder) ?? asked.zone ?? 'UTC';
    const facts = { title: title.value, date: date.value, guests: guests.value, zone };
    const ways = waysToBegin(zone, within, folder).map((way) => textOf(facts, way));
    const found = ways.map((text) => ({ text, weight: weightOf(path, text, folder) }));
    const best = found.reduce((one, other) => (other.weight < one.weight ? other : one));
    return { name, text: best.text };
}

/** The zone of the folder's own events, where they agree on one; the chef may be travelling. */
function zoneOf(folder: Folder | undefined): string | undefined {
    const zones = new Set(
        folder?.plans.flatMap((plan) => folder.readingOf(plan)?.events.flatMap(({ zone }) => zone?.text ?? []) ?? []),
    );
    return zones.size === 1 ? [...zones][0] : undefined;
}

interface Way {
    /** What the file uses. */
    readonly house?: string;
    /** The code that the event declares. */
    readonly code?: string;
}

/** With the house of the folder before without, and with as few words as possible first. */
function waysToBegin(zone: string, within: string, folder: Folder | undefined): Way[] {
    const houses = (folder?.plans ?? []).filter(
        (plan) => plan.startsWith(within) && !plan.slice(within.length).includes('/') && isHouse(folder!, plan),
    );
    const uses = [...(houses.length === 1 ? [houses[0]!.slice(within.length)] : []), undefined];
    const codes = [...standardCupboard().codes.values()].filter(({ zones }) => zones.some((each) => holds(each, zone)));
    return uses.flatMap((house) => [{ house }, ...codes.map(({ name: code }) => ({ house, code }))]);
}

function isHouse(folder: Folder, plan: string): boolean {
    const reading = folder.readingOf(plan);
    return (
        reading !== undefined && reading.houses.length > 0 && reading.events.length === 0 && reading.menus.length === 0
    );
}

/** A zone of a code may be a region, such as `Europe`. */
function holds(of: string, zone: string): boolean {
    return zone === of || zone.startsWith(`${of}/`);
}

const WEIGHT: Record<Severity, number> = { error: 1000, warning: 100, info: 10, hint: 1 };

function weightOf(path: string, text: string, folder: Folder | undefined): number {
    const files: Files = {
        read: (each) => (each === path ? { state: 'read', text } : (folder?.read(each) ?? { state: 'missing' })),
    };
    return check(path, files).findings.reduce((sum, { severity }) => sum + WEIGHT[severity], 0);
}

function textOf(
    facts: { readonly title: string; readonly date: string; readonly guests: number; readonly zone: string },
    { house, code }: Way,
): string {
    const text = `// ${facts.title}. Change what stands here and watch what is underlined.
${house === undefined ? '' : `use "${house}"\n`}
event "${facts.title}" {
    date ${facts.date}
    zone ${facts.zone}
    seated 19:00
    ${code === undefined ? '' : `local code ${code}`}

    // Guests who eat otherwise are some of these: \`guests ${facts.guests} { 2 vegetarian }\`.
    guests ${facts.guests}
}

menu {
    // A course is served, eaten and cleared before the next. What is in it is a complete statement.
    course soup "Carrot soup" {
        served in soup-bowl warmed to 60 °C at 64 °C, portion 200 ml
        eaten with soup-spoon warmed to 42 °C, brought with the course
        lasts 15 min
        contains celery
        suits vegetarian
    }

    // Where guests eat different things, each is a dish: \`dish "Mushroom barley" for vegetarian { … }\`.
    course main "Roast chicken" is poultry {
        served on dinner-plate warmed to 62 °C at 63 °C
        cook to 74 °C
        lasts 30 min
        contains nothing
    }

    course dessert "Lemon tart" {
        served on dessert-plate at 12 °C
        lasts 15 min
        contains wheat, egg, milk
    }
}
`;
    const laidOut = formatText(text);
    return 'text' in laidOut ? laidOut.text : text;
}

// ------------------------------------------------------------------ names of files
function pathIn(folder: Folder | undefined, uri: string | undefined): string {
    const inside = folder && uri?.startsWith(`${folder.uri}/`) ? uri.slice(folder.uri.length + 1) : '';
    const path = inside.split('/').map(decodeURIComponent).join('/').replace(/\/+$/, '');
    return path === '' ? '' : `${path}/`;
}
