import type { WorkspaceEdit } from 'vscode-languageserver';
import { quoted } from '../rules/wording.js';
import type { Client } from './client.js';
import { formatEdits, formatText } from './format.js';
import type { TextEdit } from './fixes.js';
import { CHANGED_MEANWHILE, inSteps, type Asker, type Steps } from './in-steps.js';
import type { FolderLaidOut } from './requests.js';
import { workspaceEdit } from './workspace-edit.js';
import type { Place } from './workspace.js';

/** The edits that lay out plans, a plan a step, and what is to be said of it; nothing where the asker has stopped it. */
export async function layOutPlans(
    places: readonly Place[],
    client: Client,
    asker: Asker,
): Promise<FolderLaidOut | null> {
    const laidOut: { readonly place: Place; readonly text: string; readonly edits: readonly TextEdit[] }[] = [];
    const unread: string[] = [];
    const steps = function* (): Steps {
        for (const [index, place] of places.entries()) {
            const text = place.folder.textOf(place.path) ?? '';
            const formatted = formatText(text);
            if ('problems' in formatted) {
                unread.push(`${quoted(place.path)} was left as it is: ${formatted.problems[0]?.message ?? ''}`);
            } else if (formatted.text !== text) {
                laidOut.push({ place, text, edits: formatEdits(text) });
            }
            yield (index + 1) / places.length;
        }
    };
    if (!(await inSteps('Laying out', steps(), asker))) {
        return null;
    }
    if (laidOut.some(({ place: { folder, path }, text }) => folder.textOf(path) !== text)) {
        return CHANGED_MEANWHILE;
    }
    const edits = laidOut.map(({ place: { folder, path }, edits }) =>
        workspaceEdit(folder, new Map([[path, edits]]), client),
    );
    return {
        edit: joined(edits, client),
        told: [`${laidOut.length} of ${places.length} plans laid out anew.`, ...unread].join(' '),
        isWhole: unread.length === 0,
    };
}

/** Folders may lie in each other: each file is changed by one of them. */
function joined(edits: readonly WorkspaceEdit[], { takesVersionedEdits }: Client): WorkspaceEdit {
    return takesVersionedEdits
        ? { documentChanges: edits.flatMap(({ documentChanges = [] }) => documentChanges) }
        : { changes: Object.assign({}, ...edits.map(({ changes }) => changes)) as WorkspaceEdit['changes'] };
}
