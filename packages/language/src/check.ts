import { standardCupboard } from './cupboard/standard.js';
import type { Files } from './plan/files.js';
import { isFromCupboard, type Origin } from './plan/origin.js';
import type { ReadText } from './plan/load.js';
import { readText } from './plan/read-text.js';
import { resolvePath } from './plan/files.js';
import { readRecipe } from './plan/read-recipe.js';
import { resolvePlan } from './plan/resolve.js';
import type { Plan, Severity, Waiver } from './plan/types.js';
import { rules } from './rules/index.js';
import { GROUP_SEVERITY, type Finding, type Report, type Rule } from './rules/rule.js';
import { deriveService } from './service/derive.js';
import { lazily } from './service/lazily.js';
import type { Service } from './service/types.js';

/** A plan looked at: what it says, and, worked out when first asked for, what is derived from it and what is found. */
export interface Checked {
    /** The file asked for. */
    readonly file: string;
    readonly plan: Plan;
    readonly service: Service;
    /** Ordered by file, position, rule. */
    readonly findings: readonly Finding[];
    /** The text of every file read, by path, for excerpts and fixes. */
    readonly texts: ReadonlyMap<string, string>;
    /** Rules that broke while looking at this plan: a mistake of ours, never the chef's. */
    readonly broken: readonly { readonly rule: string; readonly error: unknown }[];
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
    const { plan, texts } = resolvePlan(file, files, standardCupboard(), {
        text: options.readText ?? readText,
        recipe: readRecipe,
    });
    return checkPlan(file, plan, texts);
}

/** Derives and judges a plan that is already resolved, or one changed in memory. */
export function checkPlan(file: string, plan: Plan, texts: ReadonlyMap<string, string>): Checked {
    // A proposal asks what the plan says, and does not wait for what every rule has to say of it.
    const service = lazily(() => deriveService(plan));
    const judging = lazily(() => judge(plan, service()));
    let judged: Judged | undefined;
    const next = (): Judged | undefined => {
        if (!judged) {
            const { done, value } = judging().next();
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

type Judged = Pick<Checked, 'findings' | 'broken'>;

const rulesById = new Map(rules.map((rule) => [rule.id, rule]));

/** Runs every rule, each a step, and applies the house's settings and the plan's waivers. */
function* judge(plan: Plan, service: Service): Generator<void, Judged, void> {
    const broken: { rule: string; error: unknown }[] = [];
    const findings: Finding[] = [];
    const used = new Set<Waiver>();
    const isEvent = plan.event !== undefined || plan.menu !== undefined;
    const brokenFiles = new Set(
        plan.readings.filter((reading) => reading.syntax.length > 0).map((reading) => reading.file),
    );

    const run = (rule: Rule, unusedWaivers?: readonly Waiver[]): void => {
        if (rule.scope === 'event' && !isEvent) {
            return;
        }
        const reports: Report[] = [];
        try {
            rule.check({ plan, service, rules: rulesById, unusedWaivers, report: (report) => reports.push(report) });
        } catch (error) {
            broken.push({ rule: rule.id, error });
            return;
        }
        for (const report of reports) {
            const severity = severityOf(rule, report, plan);
            const waiver =
                rule.safety === 'fixed'
                    ? undefined
                    : plan.waivers.find((each) => each.rule.name === rule.id && isInside(report.at, each.scope));
            if (waiver) {
                used.add(waiver);
            }
            // A safety rule with a floor still speaks through a waiver, as a warning.
            if (severity === 'off' || (waiver && rule.safety !== 'floor')) {
                continue;
            }
            findings.push(finish(rule, report, waiver ? lower(severity) : severity, plan, brokenFiles));
        }
    };
    for (const rule of rules.filter((each) => each.id !== WAIVER_RULE)) {
        yield;
        run(rule);
    }
    const waiverRule = rulesById.get(WAIVER_RULE);
    if (waiverRule) {
        run(
            waiverRule,
            plan.waivers.filter((waiver) => !used.has(waiver)),
        );
    }
    return { findings: dropRepeats(findings.toSorted(inOrder)), broken };
}

/** It speaks of waivers that silenced nothing, so it runs when all others have. */
const WAIVER_RULE = 'waiver-without-effect';

/** The house's setting, within what the rule's safety allows. */
function severityOf(rule: Rule, report: Report, plan: Plan): Severity | 'off' {
    const own = report.severity ?? rule.severity ?? GROUP_SEVERITY[rule.group];
    const level = plan.house.settings.findLast((setting) => setting.rule.name === rule.id)?.level;
    if (level === undefined || rule.safety === 'fixed') {
        return own;
    }
    return rule.safety === 'floor' && level !== 'error' ? lower(own) : level;
}

const lower = (severity: Severity | 'off'): Severity =>
    severity === 'error' || severity === 'off' ? 'warning' : severity;

function isInside(at: Origin, scope: Origin): boolean {
    return at.file === scope.file && at.start >= scope.start && at.end <= scope.end;
}

/** Puts a finding where the reader of this file sees it, and withholds fixes from a text that can't be read. */
function finish(rule: Rule, report: Report, severity: Severity, plan: Plan, brokenFiles: ReadonlySet<string>): Finding {
    const { at, message, hint, related = [] } = report;
    const isWithheld = brokenFiles.has(at.file) && rule.group !== 'text';
    const fixes = lazily(() => (typeof report.fixes === 'function' ? report.fixes() : (report.fixes ?? [])));
    const home = isFromCupboard(at)
        ? undefined
        : rule.scope === 'file' || at.file === plan.file
          ? at
          : useLineOf(plan, at.file);
    const place = home ?? plan.event?.titleOrigin ?? { file: plan.file, start: 0, end: 0 };
    const isHere = home === at || isFromCupboard(at);
    return {
        rule: rule.id,
        severity,
        message,
        hint,
        at: place,
        related: isHere ? related : [{ at, message: 'It is written here.' }, ...related],
        get fixes() {
            return isWithheld ? [] : fixes();
        },
        hasSafeFix:
            !isWithheld && typeof report.fixes !== 'function' && fixes().some(({ safety }) => safety === 'safe'),
    };
}

/** The `use` line of the file asked for through which another file comes in. */
function useLineOf(plan: Plan, file: string): Origin | undefined {
    const byFile = new Map(plan.readings.map((reading) => [reading.file, reading]));
    const leadsTo = (from: string, seen: ReadonlySet<string>): boolean =>
        from === file ||
        (!seen.has(from) &&
            (byFile.get(from)?.uses ?? []).some((use) =>
                leadsTo(resolvePath(from, use.text) ?? '', new Set([...seen, from])),
            ));
    return byFile.get(plan.file)?.uses.find((use) => leadsTo(resolvePath(plan.file, use.text) ?? '', new Set()))
        ?.origin;
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function inOrder(a: Finding, b: Finding): number {
    return (
        compare(a.at.file, b.at.file) ||
        a.at.start - b.at.start ||
        compare(a.rule, b.rule) ||
        a.at.end - b.at.end ||
        compare(a.message, b.message)
    );
}

/** The same words about the same place are said once. */
function dropRepeats(findings: readonly Finding[]): Finding[] {
    const key = (finding: Finding): string =>
        `${finding.at.file}:${finding.at.start}:${finding.at.end}:${finding.rule}:${finding.message}`;
    return [...new Map(findings.map((finding) => [key(finding), finding])).values()];
}
