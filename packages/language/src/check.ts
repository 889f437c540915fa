import { standardCupboard } from './cupboard/standard.js';
import { ask, judge, type Answer, type Judged } from './judge.js';
import { ChangingPlan } from './plan/changing-plan.js';
import type { Files } from './plan/files.js';
import { lazily } from './plan/lazily.js';
import type { ReadText } from './plan/load.js';
import { readRecipe } from './plan/read-recipe.js';
import { readText } from './plan/read-text.js';
import { resolvePlan } from './plan/resolve.js';
import type { Plan } from './plan/types.js';
import type { Rule } from './rules/rule.js';
import { deriveService } from './service/derive.js';
import type { Service } from './service/types.js';

/** A plan looked at: what it says, and, worked out when first asked for, what is derived from it and what is found. */
export interface Checked extends Judged {
    /** The file asked for. */
    readonly file: string;
    readonly plan: Plan;
    readonly service: Service;
    /** The text of every file read, by path, for excerpts and fixes. */
    readonly texts: ReadonlyMap<string, string>;
}

/** How a plan is looked at. */
export interface CheckOptions {
    /** How texts become readings; an editor hands in what it already holds. */
    readonly readText?: ReadText;
}

/**
 * Checks one file together with the files it uses.
 * A file without an event gets only the findings that hold for any event.
 * @param file workspace-relative path; the caller has made sure that it can be read
 * @param files where it and what it uses, its recipes among them, are read
 */
export function check(file: string, files: Files, options: CheckOptions = {}): Checked {
    const { plan, texts } = resolve(file, files, options);
    return checkPlan(file, plan, texts);
}

/** Derives and judges a plan that is already resolved, or one changed in memory. */
export function checkPlan(file: string, plan: Plan, texts: ReadonlyMap<string, string>): Checked {
    return look(file, plan, texts, workOut(plan));
}

/**
 * Checks one file again and again, and works out of each text only what is touched by what has changed since the last.
 * What it said before holds no longer: only the last look may be asked.
 */
export class PlanChecker {
    #changing: ChangingPlan | undefined;
    #worked: Worked | undefined;

    constructor(readonly file: string) {}

    check(files: Files, options: CheckOptions = {}): Checked {
        const { plan, texts } = resolve(this.file, files, options);
        if (this.#changing) {
            this.#changing.set(plan);
        } else {
            this.#changing = new ChangingPlan(plan);
            this.#worked = workOut(this.#changing.plan);
        }
        return look(this.file, this.#changing.plan, texts, this.#worked!);
    }
}

function resolve(file: string, files: Files, options: CheckOptions): ReturnType<typeof resolvePlan> {
    return resolvePlan(file, files, standardCupboard(), { text: options.readText ?? readText, recipe: readRecipe });
}

/** What is worked out from a plan, each part when it is asked for. */
interface Worked {
    readonly service: () => Service;
    readonly answerOf: (rule: Rule) => Answer;
}

function workOut(plan: Plan): Worked {
    // A proposal asks what the plan says, and does not wait for what every rule has to say of it.
    const service = lazily(() => deriveService(plan));
    const answers = new Map<Rule, () => Answer>();
    return {
        service,
        answerOf: (rule) => {
            const answer = answers.get(rule) ?? lazily(() => ask(rule, plan, service()));
            answers.set(rule, answer);
            return answer();
        },
    };
}

function look(file: string, plan: Plan, texts: ReadonlyMap<string, string>, { service, answerOf }: Worked): Checked {
    const judging = judge(plan, (rule, unused) => (unused ? ask(rule, plan, service(), unused) : answerOf(rule)));
    let judged: Judged | undefined;
    const next = (): Judged | undefined => {
        if (!judged) {
            const { done, value } = judging.next();
            if (done && !value) {
                throw new Error('The rules broke off.');
            }
            judged = value ?? undefined;
        }
        return judged;
    };
    const finished = (): Judged => {
        let all = next();
        while (!all) {
            all = next();
        }
        return all;
    };
    const checked: Checked = {
        file,
        plan,
        texts,
        get service() {
            return service();
        },
        get findings() {
            return finished().findings;
        },
        get broken() {
            return finished().broken;
        },
    };
    steps.set(checked, () => next() !== undefined);
    return checked;
}

const steps = new WeakMap<Checked, () => boolean>();

/** Asks one more rule, so that a server can answer somebody in between. @returns whether all have been asked */
export function askNextRule(checked: Checked): boolean {
    return steps.get(checked)?.() ?? true;
}
