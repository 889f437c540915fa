import { LSPErrorCodes, ResponseError, type Range, type WorkspaceEdit } from 'vscode-languageserver';
import type { NameSort, Occurrence } from '../plan/types.js';
import { namesInReach } from '../rules/names-in-reach.js';
import { quoted } from '../rules/wording.js';
import type { Client } from './client.js';
import type { TextEdit } from './fixes.js';
import type { Folder } from './folder.js';
import { eachPlaceOnce, isInCupboard, isSamePlace, isSameThing, namesAt, placesOf } from './names.js';
import type { Words } from './words.js';
import { workspaceEdit } from './workspace-edit.js';
import type { Place } from './workspace.js';

/** What a name stands for, as the refusal says it. Sorts that are not here are words the program knows by heart. */
const NOUN: Partial<Record<NameSort, string>> = {
    piece: 'piece',
    kind: 'kind',
    drink: 'drink',
    'kind-or-drink': 'kind',
    substance: 'allergen or ingredient',
    diet: 'diet',
    code: 'local code',
    course: 'course',
    table: 'table',
    'dish-title': 'dish',
    'pour-title': 'drink on the menu',
    'task-title': 'task',
};

/** Always written in quotes. */
const TITLES: ReadonlySet<NameSort> = new Set(['dish-title', 'pour-title', 'task-title']);

/** The name that a rename would begin with, and its place without the quotes around it. */
export function renamableAt(place: Place, offset: number): { readonly range: Range; readonly placeholder: string } {
    const names = namesAt(place.folder.readingOf(place.path), offset);
    const { origin, name } = namedAt(names);
    allPlaces(place, names);
    const isQuoted = quoteAround(place.folder, origin) !== undefined;
    const range = place.folder.rangeOf(isQuoted ? { ...origin, start: origin.start + 1, end: origin.end - 1 } : origin);
    return { range: range!, placeholder: name };
}

/** @throws ResponseError that says why the name can't be changed, or not to this */
export function renameAt(place: Place, offset: number, written: string, words: Words, client: Client): WorkspaceEdit {
    const { folder, path } = place;
    const names = namesAt(folder.readingOf(path), offset);
    const { name } = namedAt(names);
    const places = allPlaces(place, names);
    const wanted = parsed(written, places, words);
    if (wanted.name === name) {
        return workspaceEdit(folder, new Map(), client);
    }
    refuseTaken(folder, places, wanted.name);
    const edits = new Map<string, TextEdit[]>();
    for (const { origin, sort } of eachPlaceOnce(places)) {
        const quote = quoteAround(folder, origin);
        const isTitle = TITLES.has(sort) || quote !== undefined;
        const { start, end } = origin;
        const text =
            isTitle && quote !== undefined
                ? `${quote[0]}${wanted.name}${quote[1]}`
                : wanted.isQuoted
                  ? `"${wanted.name}"`
                  : wanted.name;
        edits.set(origin.file, [...(edits.get(origin.file) ?? []), { start, end, text }]);
    }
    return workspaceEdit(folder, edits, client);
}

function refuse(message: string): never {
    throw new ResponseError(LSPErrorCodes.RequestFailed, message);
}

function namedAt(names: readonly Occurrence[]): Occurrence {
    const name = names[0];
    return name && name.name !== '' ? name : refuse('There is no name here to change.');
}

/**
 * Every place that must change together. One word may be several names, as in `course soup "Roast squash"`, where `soup`
 * is a kind and the course: whatever speaks of either changes too.
 */
function allPlaces({ folder, path }: Place, names: readonly Occurrence[]): readonly Occurrence[] {
    const found: Occurrence[] = [];
    const open = [...names];
    for (let name = open.shift(); name; name = open.shift()) {
        const known = name;
        if (found.some((each) => isSameThing(each, known) && each.sort === known.sort)) {
            continue;
        }
        refuseFixed(known);
        const same = placesOf(folder, path, known);
        if (!same.some(({ role }) => role === 'declares')) {
            refuse(`Nothing in reach declares ${quoted(known.name)}, so there is nothing to change its name of.`);
        }
        same.filter(({ role }) => role === 'declares').forEach(refuseFixed);
        found.push(...same);
        for (const { origin } of same) {
            const here =
                folder.readingOf(origin.file)?.occurrences.filter((each) => isSamePlace(each.origin, origin)) ?? [];
            open.push(...here.filter((each) => !isSameThing(each, known)));
        }
    }
    return found;
}

function refuseFixed(name: Occurrence): void {
    const noun = NOUN[name.sort];
    if (noun === undefined) {
        refuse(`${quoted(name.name)} is a word that the program knows by heart; its name can't be changed.`);
    }
    if (isInCupboard(name)) {
        refuse(
            `${quoted(name.name)} is ${withArticle(noun)} of the standard cupboard, which can't be changed. Declare one of your own: \`… my-name is ${name.name}\`.`,
        );
    }
    if (name.sort === 'table' && name.of !== undefined) {
        refuse(
            `${quoted(name.name)} is one of a range of tables that ends at ${quoted(name.of)}. Write the range anew instead.`,
        );
    }
}

/** The name as wanted. Quotes around it say that it is to be written in quotes. */
function parsed(
    written: string,
    places: readonly Occurrence[],
    words: Words,
): { readonly name: string; readonly isQuoted: boolean } {
    const inner = /^\s*["“„](.*)["”“]\s*$/.exec(written)?.[1];
    const name = (inner ?? written.trim()).normalize('NFC');
    const isTitle = places.every(({ sort }) => TITLES.has(sort)) || places.some(({ sort }) => TITLES.has(sort));
    if (name === '') {
        refuse('A name has at least one letter.');
    }
    if (/["“”„\n\r]/.test(name)) {
        refuse('A name can hold neither a quote nor a line end.');
    }
    if (isTitle || inner !== undefined || words.isBareName(name)) {
        return { name, isQuoted: inner !== undefined };
    }
    return refuse(
        words.isWord(name)
            ? `${quoted(name)} is a word of the language. To use it as a name, write it in quotes: \`"${name}"\`.`
            : `${quoted(name)} can't stand as a name without quotes. Join its words with \`-\`, or write it in quotes: \`"${name}"\`.`,
    );
}

function refuseTaken(folder: Folder, places: readonly Occurrence[], name: string): void {
    const files = new Set(places.map(({ origin }) => origin.file));
    const plans = folder.plans.filter((plan) => folder.filesOf(plan).some((file) => files.has(file)));
    for (const { sort, of } of places) {
        const sorts: readonly NameSort[] = sort === 'kind-or-drink' ? ['kind', 'drink'] : [sort];
        for (const plan of plans) {
            const { plan: resolved } = folder.checked(plan);
            const taken = sorts.some((each) =>
                TITLES.has(each) || each === 'course'
                    ? resolved.readings.some(({ occurrences }) =>
                          occurrences.some(
                              (other) => other.role === 'declares' && other.sort === each && other.name === name,
                          ),
                      )
                    : namesInReach({ sort: each, of }, { plan: resolved })?.includes(name),
            );
            if (taken) {
                refuse(
                    `There is ${withArticle(NOUN[sort]!)} called ${quoted(name)} already, in ${quoted(plan)} or a file it uses.`,
                );
            }
        }
    }
}

function withArticle(noun: string): string {
    return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}

/** The quotes a name stands in, straight or curly. */
function quoteAround(
    folder: Folder,
    { file, start, end }: Occurrence['origin'],
): readonly [string, string] | undefined {
    const text = folder.textOf(file)?.slice(start, end) ?? '';
    return /^["“„].*["”“]$/.test(text) ? [text[0]!, text.at(-1)!] : undefined;
}
