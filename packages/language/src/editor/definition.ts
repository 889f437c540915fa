import type { Location } from 'vscode-languageserver';
import { resolvePath } from '../plan/files.js';
import type { Client } from './client.js';
import { locationOf } from './diagnostics.js';
import { isSamePlace, declarationsOf, namesAt, plansWith } from './names.js';
import type { Place } from './workspace.js';

/**
 * Where a name is declared, the nearest declaration only; on a declaration, the one it is laid over, which may be the
 * standard cupboard's. On a `use` line, the file.
 */
export function definitionAt({ folder, path }: Place, offset: number, client: Client): Location | undefined {
    const reading = folder.readingOf(path);
    const used = reading?.uses.find(({ origin }) => origin.start <= offset && offset <= origin.end);
    const target = used && resolvePath(path, used.text);
    if (target !== undefined && folder.textOf(target) !== undefined) {
        return {
            uri: folder.uriOf(target),
            range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
        };
    }
    const names = namesAt(reading, offset);
    // `course soup` names its kind and declares the course: the way leads to the kind.
    const wanted = [...names.filter(({ role }) => role === 'uses'), ...names.filter(({ role }) => role === 'declares')];
    for (const name of wanted) {
        for (const plan of plansWith(folder, path)) {
            const found = declarationsOf(folder, plan, name);
            const isHere =
                name.role === 'declares' ? found.findIndex(({ origin }) => isSamePlace(origin, name.origin)) : -1;
            const declaration = found[isHere + 1] ?? found[isHere];
            const location = declaration && locationOf(folder, declaration.origin, client);
            if (location) {
                return location;
            }
        }
    }
    return undefined;
}
