import type { Severity } from '../plan/types.js';
import { counted } from '../rules/wording.js';
import { escaped } from './markdown.js';
import type { Summary } from './requests.js';
import type { Place } from './workspace.js';

const GRAVEST_FIRST: readonly Severity[] = ['error', 'warning', 'info', 'hint'];

/** The few figures of a file that a client keeps in sight. */
export function summaryOf({ folder, path }: Place): Summary {
    const { plan, findings: ofPlan } = folder.checked(path);
    // What stands in a file that it uses keeps it from being compiled as well.
    const elsewhere = ofPlan.filter(({ at }) => at.file !== path);
    const own = [...folder.findingsIn(path).map(({ finding }) => finding), ...elsewhere];
    const count = (severity: Severity): number => own.filter((finding) => finding.severity === severity).length;
    const worst = GRAVEST_FIRST.flatMap((severity) => own.filter((finding) => finding.severity === severity))[0];
    const guests = plan.event?.guests?.expected.count;
    const courses = plan.menu?.courses.length;
    const findings = { error: count('error'), warning: count('warning'), info: count('info'), hint: count('hint') };
    const counts = countsOf(findings);
    const message = worst && (worst.at.file === path ? worst.message : `${worst.at.file}: ${worst.message}`);
    const figures = [
        ...(guests === undefined ? [] : [counted(guests, 'guest')]),
        ...(courses === undefined ? [] : [counted(courses, 'course')]),
    ];
    return {
        ...(plan.event ? { event: plan.event.title } : {}),
        ...(guests === undefined ? {} : { guests }),
        ...(courses === undefined ? {} : { courses }),
        line: figures.join(', ') || 'Service plan',
        found: message === undefined ? 'Nothing found.' : `${counts}. ${message}`,
        page: [
            ...(plan.event ? [`**${escaped(plan.event.title)}**`] : []),
            ...(message === undefined ? ['Nothing found.'] : [`${counts}.`, escaped(message)]),
        ].join('\n\n'),
        findings,
        ...(worst ? { worst: { severity: worst.severity, message: worst.message, rule: worst.rule } } : {}),
    };
}

function countsOf({ error, warning, info, hint }: Summary['findings']): string {
    const counts = [
        [error, 'error'],
        [warning, 'warning'],
        [info + hint, 'remark'],
    ] as const;
    return counts.flatMap(([count, noun]) => (count > 0 ? [counted(count, noun)] : [])).join(', ');
}
