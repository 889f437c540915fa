import type { Severity } from '../plan/types.js';
import type { Summary } from './requests.js';
import type { Place } from './workspace.js';

const GRAVEST_FIRST: readonly Severity[] = ['error', 'warning', 'info', 'hint'];

/** The few figures of a file that a client keeps in sight. */
export function summaryOf({ folder, path }: Place): Summary {
    const { plan } = folder.checked(path);
    const own = folder.findingsIn(path).map(({ finding }) => finding);
    const count = (severity: Severity): number => own.filter((finding) => finding.severity === severity).length;
    const worst = GRAVEST_FIRST.flatMap((severity) => own.filter((finding) => finding.severity === severity))[0];
    const guests = plan.event?.guests?.expected.count;
    return {
        ...(plan.event ? { event: plan.event.title } : {}),
        ...(guests === undefined ? {} : { guests }),
        ...(plan.menu ? { courses: plan.menu.courses.length } : {}),
        findings: { error: count('error'), warning: count('warning'), info: count('info'), hint: count('hint') },
        ...(worst ? { worst: { severity: worst.severity, message: worst.message, rule: worst.rule } } : {}),
    };
}
