import { check } from '../check.js';
import { compare } from '../output/comparison/compare.js';
import { tellChangesInMarkdown } from '../output/comparison/tell.js';
import { quoted } from '../rules/wording.js';
import { CHANGED_MEANWHILE, inSteps, isCurrent, workingOut, type Asker } from './in-steps.js';
import type { CompareAnswer, CompareRequest } from './requests.js';
import type { Place } from './workspace.js';

/**
 * What changed for people between earlier texts of a plan and the texts as they are now, saved or not. The server knows no
 * history: it asks for each earlier text that the plan turns out to use. Nothing where the asker has stopped it.
 */
export async function compareSince(
    { folder, path }: Place,
    { before, since }: CompareRequest,
    asker: Asker,
): Promise<CompareAnswer | null> {
    const now = folder.checked(path);
    if (!now.plan.event) {
        return { refused: `${quoted(path)} holds no event.` };
    }
    const wanted = new Set<string>();
    const earlier = check(path, {
        read: (file) => {
            const text = before[folder.uriOf(file)];
            if (text === undefined) {
                wanted.add(folder.uriOf(file));
            }
            return typeof text === 'string' ? { state: 'read', text } : { state: 'missing' };
        },
    });
    if (wanted.size > 0) {
        return { wanted: [...wanted] };
    }
    if (!earlier.plan.event) {
        return { refused: `In ${since} ${quoted(path)} held no event yet.` };
    }
    if (!(await inSteps('Comparing', workingOut(earlier, now), asker))) {
        return null;
    }
    if (!isCurrent(folder, now)) {
        return CHANGED_MEANWHILE;
    }
    const title = `# ${now.plan.event.title}: what changed since ${since}\n\n`;
    return { markdown: title + tellChangesInMarkdown(compare(earlier, now), 'Nothing changes for anybody.') };
}
