import { CodeActionKind, type CodeAction, type ShowDocumentParams } from 'vscode-languageserver';
import { ruleById } from '../rules/index.js';
import { quoted } from '../rules/wording.js';
import type { Client } from './client.js';
import { diagnosticOf } from './diagnostics.js';
import { fixActions } from './fix-actions.js';
import type { Folder, PlacedFinding } from './folder.js';

/** The server's command that leads the client to a place, for clients that can be led; takes `ShowDocumentParams`. */
export const GO_TO_COMMAND = 'underliner.goTo';

/**
 * In a text that can't be read, fixes are withheld from all that is found in what was understood. In their place stands what
 * mends the first line that can't be read, the way there, and why nothing else is offered.
 * @param meant the findings at the cursor
 */
export function insteadOfWithheld(folder: Folder, meant: readonly PlacedFinding[], client: Client): CodeAction[] {
    const withheld = meant.filter((placed) => mistakeBehind(folder, placed) !== undefined);
    const mistake = withheld.map((placed) => mistakeBehind(folder, placed)!)[0];
    const range = mistake && folder.rangeOf(mistake.finding.at);
    if (!range) {
        return [];
    }
    const { at, message } = mistake.finding;
    const inOther = at.file === withheld[0]!.finding.at.file ? '' : ` of ${quoted(at.file)}`;
    const line = `line ${range.start.line + 1}${inOther}`;
    const isHere = meant.some(({ finding }) => finding === mistake.finding);
    const fixes = isHere ? [] : fixActions(folder, mistake, [], client);
    const goTo: ShowDocumentParams = { uri: folder.uriOf(at.file), selection: range, takeFocus: true };
    const title = `Go to ${line}, which can’t be read`;
    const kind = CodeActionKind.QuickFix;
    return [
        ...fixes.map(({ isPreferred: _, ...fix }) => ({
            ...fix,
            title: `${fix.title} in ${line}, which can’t be read`,
        })),
        ...(isHere || !client.goesToPlaces
            ? []
            : [{ title, kind, command: { title, command: GO_TO_COMMAND, arguments: [goTo] } }]),
        ...(client.takesDisabled
            ? [
                  {
                      title: 'Mend what is found here',
                      kind,
                      diagnostics: withheld.flatMap((placed) => diagnosticOf(folder, placed, client) ?? []),
                      disabled: { reason: `First mend ${line}: ${message}` },
                  },
              ]
            : []),
    ];
}

/** The first place that can't be read in the file that a finding is about, where its fixes are withheld for that. */
function mistakeBehind(folder: Folder, { finding }: PlacedFinding): PlacedFinding | undefined {
    const rule = ruleById(finding.rule);
    if (!rule || rule.group === 'text' || rule.fix === 'never') {
        return undefined;
    }
    // A finding about a used file stands at the `use` line, and tells first where it is written.
    const about = [finding.at, ...finding.related.slice(0, 1).map(({ at }) => at)];
    const file = about.map((at) => at.file).find((each) => (folder.readingOf(each)?.syntax.length ?? 0) > 0);
    return file === undefined
        ? undefined
        : folder.findingsIn(file).find(({ finding: { rule: id } }) => id === 'unreadable-text');
}
