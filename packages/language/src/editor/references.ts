import { DocumentHighlightKind, type DocumentHighlight, type Location } from 'vscode-languageserver';
import type { Occurrence } from '../plan/types.js';
import type { Client } from './client.js';
import { locationOf } from './diagnostics.js';
import { cupboardDeclarations, eachPlaceOnce, isSameThing, namesAt, placesOf } from './names.js';
import type { Place } from './workspace.js';

/** Every place in the folder's files that speaks of what stands at an offset. */
export function referencesAt(place: Place, offset: number, withDeclaration: boolean, client: Client): Location[] {
    const found = meantAt(place, offset).flatMap((name) => [
        ...placesOf(place.folder, place.path, name),
        ...cupboardDeclarations(name),
    ]);
    return eachPlaceOnce(found.filter(({ role }) => withDeclaration || role === 'uses')).flatMap(
        ({ origin }) => locationOf(place.folder, origin, client) ?? [],
    );
}

/** The same, in the one file. */
export function highlightsAt({ folder, path }: Place, offset: number): DocumentHighlight[] {
    const names = meantAt({ folder, path }, offset);
    const found =
        folder.readingOf(path)?.occurrences.filter((each) => names.some((name) => isSameThing(each, name))) ?? [];
    return eachPlaceOnce(found).flatMap(({ origin, role }) => {
        const range = folder.rangeOf(origin);
        return range
            ? [{ range, kind: role === 'declares' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read }]
            : [];
    });
}

/** `course soup` is the course where the menu speaks of it, so its kind, which stands in the same word, is left aside. */
function meantAt({ folder, path }: Place, offset: number): readonly Occurrence[] {
    const names = namesAt(folder.readingOf(path), offset);
    const declared = names.filter(({ role }) => role === 'declares');
    return declared.length > 0 ? declared : names;
}
