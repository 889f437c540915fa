import { planText } from '../output/plan-json.js';
import { quoted } from '../rules/wording.js';
import { CHANGED_MEANWHILE, inSteps, isCurrent, workingOut, type Asker } from './in-steps.js';
import type { CompileAnswer } from './requests.js';
import type { Place } from './workspace.js';

/** The service plan of an event as the client writes it, beside its text; nothing where the asker has stopped it. */
export async function compilePlan({ folder, path }: Place, asker: Asker): Promise<CompileAnswer | null> {
    const checked = folder.checked(path);
    if (!checked.plan.event) {
        return {
            refused: `${quoted(path)} holds no event. Compile the file of an event; a house, a room or a cupboard is used by one.`,
            errors: 0,
        };
    }
    if (!(await inSteps('Computing the plan', workingOut(checked), asker))) {
        return null;
    }
    if (!isCurrent(folder, checked)) {
        return { ...CHANGED_MEANWHILE, errors: 0 };
    }
    const errors = checked.findings.filter(({ severity }) => severity === 'error').length;
    if (errors > 0) {
        const count = errors === 1 ? '1 error stands' : `${errors} errors stand`;
        return { refused: `${count} in the way: no plan was written.`, errors };
    }
    return { text: planText(checked, false), uri: planAddress(folder.uriOf(path)) };
}

/** `supper.cover` → `supper.plan.json`. */
function planAddress(uri: string): string {
    return `${uri.replace(/\.cover$/, '')}.plan.json`;
}
