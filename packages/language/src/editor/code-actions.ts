import { CodeActionKind, CodeActionTriggerKind, type CodeAction, type CodeActionParams } from 'vscode-languageserver';
import type { Client } from './client.js';
import { fixActions } from './fix-actions.js';
import { fixAll } from './fix-all.js';
import type { Folder, PlacedFinding } from './folder.js';
import { refactorings, type Refactoring } from './refactorings/index.js';
import { difference } from '../plan/text-difference.js';
import { silence, silencings } from './waiving.js';
import { insteadOfWithheld } from './withheld-fixes.js';
import { workspaceEdit } from './workspace-edit.js';
import type { Place } from './workspace.js';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.underliner`;

/** The command of a client that asks for the reason itself and then for the edits, with `BECAUSE_REQUEST`. */
export const BECAUSE_COMMAND = 'underliner.because';

/**
 * The fixes of the findings in a range, one action that applies every fix that is surely meant, ways to silence what is found
 * with a reason, and, where they are asked for, what else can be done with the words there.
 */
export function codeActions(place: Place, { range, context }: CodeActionParams, client: Client): CodeAction[] {
    const { folder, path } = place;
    const document = folder.documentOf(path);
    if (!document) {
        return [];
    }
    const wants = (kind: string): boolean =>
        !context.only || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
    const start = document.offsetAt(range.start);
    const end = document.offsetAt(range.end);
    const meant = folder.findingsIn(path).filter(({ finding: { at } }) => at.start <= end && start <= at.end);
    const fixes = wants(CodeActionKind.QuickFix)
        ? [
              ...insteadOfWithheld(folder, meant, client),
              ...meant.flatMap((placed) => fixActions(folder, placed, context.diagnostics, client)),
          ]
        : [];
    const all = wants(FIX_ALL) && (context.only || meant.length > 0) ? fixAllAction(place, client) : [];
    const silenced = wants(CodeActionKind.QuickFix)
        ? meant.flatMap((placed) => silencingsOf(folder, placed, client))
        : [];
    // A rule that finds two things here is silenced once.
    const silencedOnce = silenced.filter(
        ({ title }, index) => silenced.findIndex((other) => other.title === title) === index,
    );
    // Where the client only looks whether there is something, a figure is nothing.
    const isAsked = context.triggerKind !== CodeActionTriggerKind.Automatic || context.only !== undefined;
    const others = isAsked ? refactorings({ folder, path, start, end }).filter(({ kind }) => wants(kind)) : [];
    const actionsOf = (which: readonly Refactoring[]): CodeAction[] =>
        which.flatMap((each) => refactoringAction(folder, each, client));
    return [
        ...fixes,
        ...actionsOf(others.filter(({ kind }) => kind === CodeActionKind.QuickFix)),
        ...silencedOnce,
        ...all,
        ...actionsOf(others.filter(({ kind }) => kind !== CodeActionKind.QuickFix)),
    ];
}

function refactoringAction(folder: Folder, { title, kind, edits, creates }: Refactoring, client: Client): CodeAction[] {
    if (creates && !client.takesNewFiles) {
        return [];
    }
    return [{ title, kind, edit: workspaceEdit(folder, edits, client, creates) }];
}

/** A client that can ask is asked for the reason; another gets an empty one, which is found until it is filled in. */
function silencingsOf(folder: Folder, placed: PlacedFinding, client: Client): CodeAction[] {
    return silencings(folder, placed).flatMap(({ title, ...silencing }): CodeAction[] => {
        const kind = CodeActionKind.QuickFix;
        if (client.asksReasons) {
            const asked = { uri: folder.uriOf(placed.plan), ...silencing };
            return [{ title, kind, command: { title, command: BECAUSE_COMMAND, arguments: [asked] } }];
        }
        const edits = silence(folder, silencing, '');
        return edits.size > 0 ? [{ title, kind, edit: workspaceEdit(folder, edits, client) }] : [];
    });
}

/** Of this file only: other files have an action of their own. */
function fixAllAction({ folder, path }: Place, client: Client): CodeAction[] {
    const before = folder.textOf(path);
    const after = fixAll(path, folder, 'safe').texts.get(path);
    if (before === undefined || after === undefined || before === after) {
        return [];
    }
    const edits = new Map([[path, [difference(before, after)]]]);
    return [
        { title: 'Apply every fix that is surely meant', kind: FIX_ALL, edit: workspaceEdit(folder, edits, client) },
    ];
}
