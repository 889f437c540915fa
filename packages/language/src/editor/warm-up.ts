import { TextDocument } from 'vscode-languageserver-textdocument';
import { askNextRule, type Checked } from '../check.js';
import { stretchesOf, type Stretch } from '../grammar/stretches.js';
import { parseText } from '../plan/read-text.js';
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

/** Nobody typed for so long, ms: what the engine tidies up then it does because nobody types. */
const AT_REST = 5000;

/** It does so up to three times in a row, which takes no longer than this, ms. */
const TIDYING = 3000;

/**
 * What is run for the first time takes several times as long as later: a parser is built when it is first asked, and code is
 * compiled when it has been run for a while. So once the first findings are told, and while nobody waits for others, the
 * parsers are asked, and the plan in sight is looked at as it is typed in: all that would stand behind the first keys.
 */
export class WarmUp {
    #steps: Iterator<void>;
    #next: ReturnType<typeof setTimeout> | undefined;
    /** When findings were told or something was typed here last, of the clock that `performance` keeps. */
    #worked = performance.now();
    /** Somebody has typed since it was done again. */
    #isUsed = true;

    /**
     * @param isBusy whether somebody waits for findings
     * @param inSight the plan whose findings were told last
     */
    constructor(
        services: CoverServices,
        private readonly isBusy: () => boolean,
        private readonly inSight: () => Checked | undefined,
    ) {
        this.#steps = steps(services, inSight);
    }

    /**
     * Goes on when nobody has waited for findings for a while, until somebody does or all is done: a step a turn, so that no
     * question waits for more than one, and not between the keys of somebody who types.
     */
    goOn(): void {
        this.#worked = performance.now();
        this.#isUsed = true;
        this.#in(QUIET);
    }

    /**
     * The engine has tidied up. Where it does so at rest it throws away most of what it has compiled, and the keys after are
     * slow again: so the plan is typed in once more, for a while, and then not until somebody has typed.
     */
    tidied(): void {
        if (this.#isUsed && performance.now() - this.#worked > AT_REST) {
            this.#isUsed = false;
            this.#steps = typeInSight(this.inSight, AGAIN);
            this.#in(TIDYING);
        }
    }

    #in(pause: number): void {
        clearTimeout(this.#next);
        this.#next = setTimeout(() => this.#go(), pause);
    }

    #go(): void {
        if (!this.isBusy() && this.#step()) {
            this.#in(0);
        }
    }

    /** @returns whether there may be more */
    #step(): boolean {
        this.#worked = performance.now();
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
    yield* typeInSight(inSight, LONGEST);
}

function* typeInSight(inSight: () => Checked | undefined, longest: number): Generator<void> {
    const checked = inSight();
    if (checked) {
        yield* typeIn(checked, longest);
    }
}

/**
 * Where something is typed, and at how many places of each sort of block: behind a figure, in a name of several words, in a
 * text, in the word that begins a clause. Another figure or name changes what is worked out in a way of its own, covers and
 * the evening above all; a text or a clause changes it much as the one before did.
 */
const TYPED_IN = [
    { where: /\d(?![\d-])/g, most: 60 },
    { where: /\p{L}-\p{L}(?=\p{L})/gu, most: 60 },
    { where: /"\p{L}(?=[^"\n])/gu, most: 30 },
    { where: /\n +\p{L}(?=\p{L})/gu, most: 30 },
];

/** A text of more characters takes longer to type in than it saves. */
const LARGEST = 200_000;

/** For no longer is it typed in, ms of computing; and where that was done before. */
const LONGEST = 8_000;
const AGAIN = 1_500;

/** As many blocks of each sort are enough to type in, and are kept twice meanwhile. */
const BLOCKS = 4;

/**
 * Puts a letter or a digit into the plan and takes it out again, here and there, in a folder that nobody else sees.
 * @param longest ms of computing
 */
function* typeIn({ file, texts }: Checked, longest: number): Generator<void> {
    const text = withFewOfEach(texts.get(file) ?? '');
    if (text.length > LARGEST) {
        return;
    }
    const folder = new Folder('warm-up:');
    texts.forEach((each, path) => folder.hold(path, { state: 'read', text: each }));
    const document = TextDocument.create(folder.uriOf(file), 'cover', 1, text);
    folder.opened(file, document);
    let spent = 0;
    const type = (start: number, end: number, typed: string): void => {
        const began = performance.now();
        const range = { start: document.positionAt(start), end: document.positionAt(end) };
        TextDocument.update(document, [{ range, text: typed }], document.version + 1);
        folder.changed(file);
        const seen = folder.checked(file);
        while (!askNextRule(seen)) {
            // Each is asked.
        }
        spent += performance.now() - began;
    };
    for (const place of placesIn(text)) {
        if (spent > longest) {
            return;
        }
        type(place, place, /\d/.test(text[place - 1]!) ? '1' : 'x');
        yield;
        type(place, place + 1, '');
        yield;
    }
}

/** The blocks of a text by the word that each begins with, for what is worked out differs from sort to sort. */
function blocksOf(text: string): readonly (readonly Stretch[])[] {
    const sorts = new Map<string, Stretch[]>();
    for (const block of stretchesOf(text) ?? [{ start: 0, end: text.length }]) {
        const sort = /^\p{L}+/mu.exec(text.slice(block.start, block.end))?.[0] ?? '';
        sorts.set(sort, [...(sorts.get(sort) ?? []), block]);
    }
    return [...sorts.values()];
}

/** A text with the first blocks of each sort, in their order. */
function withFewOfEach(text: string): string {
    const few = blocksOf(text).flatMap((blocks) => blocks.slice(0, BLOCKS));
    return few
        .sort((a, b) => a.start - b.start)
        .map(({ start, end }) => text.slice(start, end))
        .join('');
}

/** Some of each in the blocks of each sort: the first of all of them first, for there may not be time for all. */
function placesIn(text: string): readonly number[] {
    const lists = blocksOf(text).flatMap((blocks) =>
        TYPED_IN.map(({ where, most }) =>
            evenly(
                blocks.flatMap(({ start, end }) =>
                    [...text.slice(start, end).matchAll(where)].map((at) => start + at.index + at[0].length),
                ),
                most,
            ),
        ),
    );
    const longest = Math.max(0, ...lists.map(({ length }) => length));
    return Array.from({ length: longest }, (_, turn) => lists.flatMap((list) => list[turn] ?? [])).flat();
}

/** Every other place, and no more than so many, from all over. */
function evenly(places: readonly number[], most: number): readonly number[] {
    const count = Math.min(most, Math.ceil(places.length / 2));
    return Array.from({ length: count }, (_, n) => places[Math.floor(((n + 0.5) / count) * places.length)]!);
}
