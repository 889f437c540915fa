import { isFromCupboard, isWithin, type Origin } from './plan/origin.js';
import { resolvePath } from './plan/files.js';
import { lazily } from './plan/lazily.js';
import type { Plan, Severity, Waiver } from './plan/types.js';
import { rules } from './rules/index.js';
import { GROUP_SEVERITY, type Finding, type Report, type Rule } from './rules/rule.js';
import type { Service } from './service/types.js';

/** What every rule has to say of a plan. */
export interface Judged {
    /** Ordered by file, position, rule. */
    readonly findings: readonly Finding[];
    /** Rules that broke while looking at this plan: a mistake of ours, never the chef's. */
    readonly broken: readonly { readonly rule: string; readonly error: unknown }[];
}

/** What one rule reports of a plan, or with what it broke. */
export type Answer = readonly Report[] | { readonly broke: unknown };

const rulesById = new Map(rules.map((rule) => [rule.id, rule]));

/** Asks one rule, whatever the plan's settings and waivers say of it. */
export function ask(rule: Rule, plan: Plan, service: Service, unusedWaivers?: readonly Waiver[]): Answer {
    const isEvent = plan.event !== undefined || plan.menu !== undefined;
    if (rule.scope === 'event' && !isEvent) {
        return [];
    }
    const reports: Report[] = [];
    try {
        rule.check({ plan, service, rules: rulesById, unusedWaivers, report: (report) => reports.push(report) });
    } catch (error) {
        return { broke: error };
    }
    return reports;
}

/**
 * Asks every rule, each a step, and applies the house's settings and the plan's waivers.
 * @param answerOf what a rule says of this plan
 */
export function* judge(
    plan: Plan,
    answerOf: (rule: Rule, unusedWaivers?: readonly Waiver[]) => Answer,
): Generator<void, Judged, void> {
    const broken: { rule: string; error: unknown }[] = [];
    const findings: Finding[] = [];
    const used = new Set<Waiver>();
    const brokenFiles = new Set(
        plan.readings.filter((reading) => reading.syntax.length > 0).map((reading) => reading.file),
    );

    const run = (rule: Rule, unusedWaivers?: readonly Waiver[]): void => {
        const answer = answerOf(rule, unusedWaivers);
        if ('broke' in answer) {
            broken.push({ rule: rule.id, error: answer.broke });
            return;
        }
        for (const report of answer) {
            const severity = severityOf(rule, report, plan);
            const waiver =
                rule.safety === 'fixed'
                    ? undefined
                    : plan.waivers.find((each) => each.rule.name === rule.id && isWithin(report.at, each.scope));
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
