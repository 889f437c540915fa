import { check, type Checked, type Finding, type Severity } from 'underliner-language';
import { palette, wantsColor, type ColorChoice } from './colors.js';
import type { ReportFormat } from './formats.js';
import { allInputs } from './inputs.js';
import { writeResult, writeTalk } from './output.js';
import { CANNOT_RUN, tellFaults } from './faults.js';
import { inOrder, Locator, type LocatedFinding } from './report/located.js';
import { reporterFor } from './report/reporter.js';

export interface CheckOptions {
    readonly format: ReportFormat;
    readonly show: Severity;
    readonly failOn: Severity | 'never';
    readonly maxWarnings?: number;
    readonly fix?: boolean;
    readonly unsafeFixes?: boolean;
    readonly watch?: boolean;
    readonly stdinName?: string;
    readonly root?: string;
    readonly color: ColorChoice;
}

/** Gravest first. */
const severities: readonly Severity[] = ['error', 'warning', 'info', 'hint'];

/** `underliner check`: what is wrong with each plan. */
export async function runCheck(paths: readonly string[], options: CheckOptions): Promise<number> {
    const { inputs, unread } = await allInputs(paths, options);
    const located: LocatedFinding[] = [];
    let fixed = 0;
    let faults = 0;
    let isFixedTextOnStdout = false;
    for (const input of inputs) {
        let checked: Checked;
        if (options.fix || options.unsafeFixes) {
            const { fix } = await import('./fix.js');
            const result = fix(input, options.unsafeFixes ? 'unsafe' : 'safe');
            checked = result.checked;
            fixed += result.applied;
            isFixedTextOnStdout ||= input.isStandardInput;
        } else {
            checked = check(input.file, input.files);
        }
        faults += tellFaults(input.shown, checked);
        located.push(...new Locator(input.files.root, process.cwd(), checked).findings(checked.findings));
    }
    const findings = inOrder(located);
    const counts = countBySeverity(findings.map(({ finding }) => finding));
    const shown = findings.filter(({ finding }) => isAsGrave(finding.severity, options.show));
    const report = await reporterFor(options.format);
    const channel = isFixedTextOnStdout ? 2 : 1;
    const text = await report(
        { findings: shown, counts, filesChecked: inputs.length, hidden: findings.length - shown.length, fixed },
        palette(wantsColor(options.color, channel)),
    );
    (isFixedTextOnStdout ? writeTalk : writeResult)(text);
    return faults + unread > 0 ? CANNOT_RUN : isFailure(counts, options) ? 1 : 0;
}

function countBySeverity(findings: readonly Finding[]): Record<Severity, number> {
    const counts = { error: 0, warning: 0, info: 0, hint: 0 };
    for (const { severity } of findings) {
        counts[severity]++;
    }
    return counts;
}

function isAsGrave(severity: Severity, limit: Severity): boolean {
    return severities.indexOf(severity) <= severities.indexOf(limit);
}

function isFailure(counts: Readonly<Record<Severity, number>>, { failOn, maxWarnings }: CheckOptions): boolean {
    const fails = severities.some(
        (severity) => failOn !== 'never' && counts[severity] > 0 && isAsGrave(severity, failOn),
    );
    return fails || (maxWarnings !== undefined && counts.warning > maxWarnings);
}
