import { TextDocument } from 'vscode-languageserver-textdocument';
import { askNextRule, check, checkPlan, type Checked } from '../check.js';
import type { FileText } from '../plan/files.js';
import { stretchesOf } from '../grammar/stretches.js';
import { parseText } from '../plan/read-text.js';
import { readExample } from '../rules/example.js';
import { rules } from '../rules/index.js';
import { planOtherwise } from '../what-if.js';
import { cursorAt } from './cursor.js';
import { Folder } from './folder.js';
import { nextAfter } from './next-words.js';
import type { CoverServices } from './services.js';

/** What most is written in, each cut off where a word, a name, a figure or a unit is to come. */
const BEGUN = [
    '',
    'menu {\n    course soup "Broth" {\n        ',
    'menu {\n    course soup "Broth" {\n        served in ',
    'menu {\n    course soup "Broth" {\n        served in soup-bowl at ',
    'menu {\n    course soup "Broth" {\n        served in soup-bowl at 64 ',
    'menu {\n    course main {\n        dish "Duck" is ',
    'house "Hall" {\n    own 12 ',
    'room "Hall" 18 m by 11 m {\n    table T1: ',
    'seating {\n    "A. Reed" at ',
];

/** Nobody types for so long, ms. */
const QUIET = 1000;

/**
 * What is run for the first time takes several times as long as later: a parser is built when it is first asked, and code is
 * compiled when it has been run for a while. So once the first findings are told, and while nobody waits for others, the
 * parsers are asked, every rule's first example is checked, and the plan in sight with what is changed first and as it is typed
 * in: all that would stand behind the first keys.
 */
export class WarmUp {
    readonly #steps: Iterator<void>;
    #next: ReturnType<typeof setTimeout> | undefined;

    /**
     * @param isBusy whether somebody waits for findings
     * @param inSight the plan whose findings were told last
     */
    constructor(
        services: CoverServices,
        private readonly isBusy: () => boolean,
        inSight: () => Checked | undefined,
    ) {
        this.#steps = steps(services, inSight);
    }

    /**
     * Goes on when nobody has waited for findings for a while, until somebody does or all is done: a step a turn, so that no
     * question waits for more than one, and not between the keys of somebody who types.
     */
    goOn(): void {
        clearTimeout(this.#next);
        this.#next = setTimeout(() => this.#go(), QUIET);
    }

    #go(): void {
        if (!this.isBusy() && this.#step()) {
            this.#next = setTimeout(() => this.#go());
        }
    }

    /** @returns whether there may be more */
    #step(): boolean {
        try {
            return this.#steps.next().done !== true;
        } catch {
            // Nobody asked for it; whoever asks for the same is told what broke.
            return false;
        }
    }
}

function* steps(services: CoverServices, inSight: () => Checked | undefined): Generator<void> {
    for (const text of BEGUN) {
        nextAfter(cursorAt(text, text.length).near, services);
        parseText(text);
        yield;
    }
    for (const { examples } of rules) {
        for (const { text } of examples.wrong.slice(0, 1)) {
            const { texts, file } = readExample(text);
            const read = (path: string): FileText => {
                const found = texts[path];
                return found === undefined ? { state: 'missing' } : { state: 'read', text: found };
            };
            // Asked for, they are worked out.
            void check(file, { read }).findings;
            yield;
        }
    }
    const checked = inSight();
    if (checked) {
        for (const changed of changedFirst(checked)) {
            void changed.findings;
            yield;
        }
        yield* typeIn(checked);
    }
}

/** More guests, another air, other pieces in a course. */
function* changedFirst(checked: Checked): Generator<Checked> {
    const { file, plan, texts } = checked;
    for (const otherwise of [{ guests: 2 * (plan.event?.guests?.expected.count ?? 0) }, { roomTemperature: 26 }]) {
        const changed = planOtherwise(checked, otherwise);
        if (typeof changed !== 'string') {
            yield changed;
        }
    }
    const { menu } = plan;
    for (const emptied of menu?.courses ?? []) {
        const courses = menu!.courses.map((course) =>
            course === emptied ? { ...course, dishes: course.dishes.map((dish) => ({ ...dish, eaten: [] })) } : course,
        );
        yield checkPlan(file, { ...plan, menu: { ...menu!, courses } }, texts);
    }
}

/** Where something is typed: behind a figure, in a name of several words, in a text, in the word that begins a clause. */
const TYPED_IN = [/\d(?![\d-])/g, /\p{L}-\p{L}(?=\p{L})/gu, /"\p{L}(?=[^"\n])/gu, /\n +\p{L}(?=\p{L})/gu];

/** So many of each. */
const PLACES = 2;

/** A text of more characters takes longer to type in than it saves. */
const LARGEST = 200_000;

/** Puts a letter or a digit into the plan and takes it out again, here and there, in a folder that nobody else sees. */
function* typeIn({ file, texts }: Checked): Generator<void> {
    const text = texts.get(file) ?? '';
    if (text.length > LARGEST) {
        return;
    }
    const folder = new Folder('warm-up:');
    texts.forEach((each, path) => folder.hold(path, { state: 'read', text: each }));
    const document = TextDocument.create(folder.uriOf(file), 'cover', 1, text);
    folder.opened(file, document);
    const type = (start: number, end: number, typed: string): void => {
        const range = { start: document.positionAt(start), end: document.positionAt(end) };
        TextDocument.update(document, [{ range, text: typed }], document.version + 1);
        folder.changed(file);
        const seen = folder.checked(file);
        while (!askNextRule(seen)) {
            // Each is asked.
        }
    };
    for (const place of placesIn(text)) {
        type(place, place, /\d/.test(text[place - 1]!) ? '1' : 'x');
        yield;
        type(place, place + 1, '');
        yield;
    }
}

/** Some of each in the blocks of each sort, for what is worked out differs from sort to sort. */
function placesIn(text: string): readonly number[] {
    const sorts = new Map<string, number[][]>();
    for (const { start, end } of stretchesOf(text) ?? [{ start: 0, end: text.length }]) {
        const block = text.slice(start, end);
        const sort = /^\p{L}+/mu.exec(block)?.[0] ?? '';
        const found = TYPED_IN.map((where) => [...block.matchAll(where)].map((at) => start + at.index + at[0].length));
        const before = sorts.get(sort);
        sorts.set(sort, before ? before.map((places, index) => [...places, ...found[index]!]) : found);
    }
    return [...sorts.values()].flat().flatMap(evenly);
}

function evenly(places: readonly number[]): readonly number[] {
    const count = Math.min(PLACES, places.length);
    return Array.from({ length: count }, (_, n) => places[Math.floor(((n + 0.5) / count) * places.length)]!);
}
