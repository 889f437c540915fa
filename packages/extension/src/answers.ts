import { commands, EventEmitter, Uri, window, workspace, type Disposable } from 'vscode';
import { plainWords } from './plain-words.js';

const SCHEME = 'underliner-answer';
const changed = new EventEmitter<Uri>();
/** What was answered last, by the name of its page. */
const pages = new Map<string, string>();

/** Pages that tell an answer: laid out, beside the plan, and gone with the window. */
export function provideAnswers(): Disposable {
    return workspace.registerTextDocumentContentProvider(SCHEME, {
        onDidChange: changed.event,
        provideTextDocumentContent: ({ path }) =>
            pages.get(path) ?? 'Ask again: this answer was given to an earlier window.',
    });
}

/**
 * Shows an answer, or why there is none; nothing where the question was withdrawn.
 * @param name of the page, the same for the same question: a later answer replaces it
 */
export async function showAnswer(
    name: string,
    answer: { readonly markdown: string } | { readonly refused: string } | null | undefined,
): Promise<void> {
    if (answer && 'refused' in answer) {
        void window.showErrorMessage(plainWords(answer.refused));
    } else if (answer) {
        const page = Uri.from({ scheme: SCHEME, path: `/${name}.md` });
        pages.set(page.path, answer.markdown);
        changed.fire(page);
        await commands.executeCommand('markdown.showPreviewToSide', page);
    }
}
