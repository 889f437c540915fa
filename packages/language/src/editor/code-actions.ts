import { CodeActionKind, type CodeAction, type CodeActionParams, type Diagnostic } from 'vscode-languageserver';
import type { Client } from './client.js';
import { diagnosticOf, type FindingData } from './diagnostics.js';
import { fixAll } from './fix-all.js';
import { editsOf, type TextEdit } from './fixes.js';
import type { Folder, PlacedFinding } from './folder.js';
import { workspaceEdit } from './workspace-edit.js';
import type { Place } from './workspace.js';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.underliner`;

/** The fixes of the findings in a range, and one action that applies every fix that is surely meant. */
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
        ? meant.flatMap((placed) => fixesOf(folder, placed, context.diagnostics, client))
        : [];
    const all = wants(FIX_ALL) && (context.only || meant.length > 0) ? fixAllAction(place, client) : [];
    return [...fixes, ...all];
}

function fixesOf(folder: Folder, placed: PlacedFinding, told: readonly Diagnostic[], client: Client): CodeAction[] {
    const { finding } = placed;
    const own = diagnosticOf(folder, placed, client);
    // The client's own copy, found by what it says of itself, never by its message.
    const shown = told.filter(
        (each) => each.code === finding.rule && own && sameRange(each, own) && isOf(each, placed),
    );
    return finding.fixes.flatMap((fix): CodeAction[] => {
        const edits = editsOf(fix, (file) => folder.textOf(file));
        if (edits.size === 0) {
            return [];
        }
        return [
            {
                title: fix.title,
                kind: CodeActionKind.QuickFix,
                diagnostics: shown.length > 0 ? shown : own ? [own] : [],
                ...(fix.preferred ? { isPreferred: true } : {}),
                edit: workspaceEdit(folder, edits, client),
            },
        ];
    });
}

function isOf({ data }: Diagnostic, { plan }: PlacedFinding): boolean {
    const said = (data as Partial<FindingData> | undefined)?.plan;
    return said === undefined || said === plan;
}

function sameRange({ range: a }: Diagnostic, { range: b }: Diagnostic): boolean {
    return (
        a.start.line === b.start.line &&
        a.start.character === b.start.character &&
        a.end.line === b.end.line &&
        a.end.character === b.end.character
    );
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

/** The one edit that makes one text the other, without what both begin and end with. */
export function difference(before: string, after: string): TextEdit {
    const most = Math.min(before.length, after.length);
    let start = 0;
    while (start < most && before[start] === after[start]) {
        start++;
    }
    let same = 0;
    while (same < most - start && before[before.length - 1 - same] === after[after.length - 1 - same]) {
        same++;
    }
    return { start, end: before.length - same, text: after.slice(start, after.length - same) };
}
