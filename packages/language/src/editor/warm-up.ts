import { check, checkPlan, type Checked } from '../check.js';
import type { FileText } from '../plan/files.js';
import { parseText } from '../plan/read-text.js';
import { readExample } from '../rules/example.js';
import { rules } from '../rules/index.js';
import { planOtherwise } from '../what-if.js';
import { cursorAt } from './cursor.js';
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

/**
 * What is run for the first time takes several times as long as later: a parser is built when it is first asked, and code is
 * compiled when it has been run for a while. So once the first findings are told, and while nobody waits for others, the
 * parsers are asked, every rule's first example is checked, and the plan in sight with what is changed first: all that would
 * stand behind the first keys.
 */
export class WarmUp {
    readonly #steps: Iterator<void>;
    #isGoingOn = false;

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

    /** Goes on until somebody waits for findings, or all is done: a step a turn, so that no question waits for more than one. */
    goOn(): void {
        if (!this.#isGoingOn) {
            this.#isGoingOn = true;
            setTimeout(() => {
                this.#isGoingOn = false;
                if (!this.isBusy() && this.#step()) {
                    this.goOn();
                }
            });
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
    for (const changed of checked ? changedFirst(checked) : []) {
        void changed.findings;
        yield;
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
