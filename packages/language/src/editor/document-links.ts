import type { DocumentLink } from 'vscode-languageserver';
import { resolvePath } from '../plan/files.js';
import type { Text } from '../plan/origin.js';
import type { Reading } from '../plan/types.js';
import type { Place } from './workspace.js';

/** The paths after `use` and `recipe` that lead to a file. */
export function documentLinks({ folder, path }: Place): DocumentLink[] {
    const reading = folder.readingOf(path);
    return (reading ? pathsOf(reading) : []).flatMap(({ text, origin }) => {
        const target = resolvePath(path, text);
        const isThere = target !== undefined && folder.textOf(target) !== undefined;
        // Without the quotes.
        const range = folder.rangeOf({ ...origin, start: origin.start + 1, end: origin.end - 1 });
        return isThere && range ? [{ range, target: folder.uriOf(target) }] : [];
    });
}

/** Every path that a file names after `use` and `recipe`, with its quotes; each place once. */
export function pathsOf(reading: Reading): readonly Text[] {
    const paths = [...reading.uses, ...recipesOf(reading)];
    return [...new Map(paths.map((path) => [path.origin.start, path])).values()];
}

function recipesOf({ menus }: Reading): Text[] {
    return menus.flatMap(({ courses, bread }) => {
        const dishes = [...courses.flatMap((course) => course.dishes), ...(bread?.dishes ?? [])];
        return [...dishes.map(({ recipe }) => recipe), bread?.recipe].filter((recipe) => recipe !== undefined);
    });
}
