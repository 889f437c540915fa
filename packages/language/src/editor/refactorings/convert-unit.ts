import { CodeActionKind } from 'vscode-languageserver';
import { figureAt } from '../about-figure.js';
import { code } from '../markdown.js';
import type { Refactoring, Selected } from './refactoring.js';

/** A figure in the other system of units, rounded as a cook reads it. */
export function convertUnit({ folder, path, start, end }: Selected): Refactoring[] {
    const figure = figureAt(folder.textOf(path) ?? '', start);
    if (!figure || end > figure.end) {
        return [];
    }
    const edit = { start: figure.start, end: figure.end, text: figure.exact };
    return [
        {
            title: `Write ${code(figure.exact)}`,
            kind: `${CodeActionKind.RefactorRewrite}.unit`,
            edits: new Map([[path, [edit]]]),
        },
    ];
}
