import { CodeActionKind } from 'vscode-languageserver';
import { resolvePath } from '../../plan/files.js';
import type { Origin } from '../../plan/origin.js';
import type { Occurrence, Reading } from '../../plan/types.js';
import { quoted } from '../../rules/wording.js';
import { fileStem, freePlanPath } from '../file-names.js';
import type { TextEdit } from '../fixes.js';
import type { Folder } from '../folder.js';
import { isSameThing } from '../names.js';
import { linesOf, lineStart, pageOf, skipEmptyLines, textOf, type Page } from '../page.js';
import type { Refactoring, Selected } from './refactoring.js';

/** What can stand in a file of its own, to be shared by several events. */
interface Part {
    readonly what: string;
    readonly fileName: string;
    readonly items: readonly Origin[];
}

/** The house, the room or everything of the cupboard in a file goes to its own, which is used in its place. */
export function moveToOwnFile({ folder, path, start, end }: Selected): Refactoring[] {
    const reading = folder.readingOf(path);
    const text = folder.textOf(path);
    if (!reading || text === undefined || reading.syntax.length > 0) {
        return [];
    }
    const page = pageOf(text);
    const all = partsOf(reading);
    const rest = all.flatMap(({ items }) => items).length + itemsThatStay(reading);
    return all
        .filter(({ items }) => items.some((item) => item.start <= start && end <= item.end) && items.length < rest)
        .flatMap((part) => moved(folder, path, reading, page, part) ?? []);
}

function partsOf({ houses, rooms, pieces, kinds, substances, diets, codes }: Reading): Part[] {
    const cupboard = [...pieces, ...kinds, ...substances, ...diets, ...codes].map(({ origin }) => origin);
    const parts = [
        { what: 'the house', fileName: 'house', items: houses.flatMap(({ origin }) => origin ?? []) },
        ...rooms.map(({ title, origin }) => ({
            what: `the room ${quoted(title)}`,
            fileName: fileStem(title, 'room'),
            items: [origin],
        })),
        { what: 'the cupboard', fileName: 'cupboard', items: cupboard.sort((a, b) => a.start - b.start) },
    ];
    return parts.filter(({ items }) => items.length > 0);
}

function itemsThatStay({ events, menus, teams, guests }: Reading): number {
    return events.length + menus.length + teams.length + guests.length;
}

function moved(folder: Folder, path: string, reading: Reading, page: Page, part: Part): Refactoring | undefined {
    const spans = part.items.map((item) => linesOf(page, item) ?? item);
    const isMoved = ({ start, end }: Origin): boolean =>
        part.items.some((item) => item.start <= start && end <= item.end);
    const speaksOf = reading.occurrences.filter(({ role, origin }) => role === 'uses' && isMoved(origin));
    const stays = reading.occurrences.filter(({ role, origin }) => role === 'declares' && !isMoved(origin));
    // The new file would ask for names of the one that uses it.
    if (speaksOf.some((name) => stays.some((other) => other.sort !== 'course' && isSameThing(name, other)))) {
        return undefined;
    }
    const target = freePlanPath(folder.plans, path.slice(0, path.lastIndexOf('/') + 1), part.fileName);
    const name = target.slice(target.lastIndexOf('/') + 1);
    const uses = usesNeeded(folder, path, reading, speaksOf).map((use) => `use ${textOf(page, use)}${page.lineEnd}`);
    const body = spans.map((span) => textOf(page, span).trimEnd()).join(page.lineEnd.repeat(2));
    const created = [...uses, ...(uses.length > 0 ? [page.lineEnd] : []), body, page.lineEnd].join('');
    const removals = spans.map(({ start, end }): TextEdit => ({
        start,
        end: skipEmptyLines(page.text, end),
        text: '',
    }));
    const edits = [...removals, useLine(reading, page, name)].sort((a, b) => a.start - b.start || a.end - b.end);
    return {
        title: `Move ${part.what} to ${quoted(name)}`,
        kind: `${CodeActionKind.Refactor}.move`,
        edits: new Map([[path, joined(edits)]]),
        creates: new Map([[target, created]]),
    };
}

/** The `use` lines through which the names come that the moved part speaks of. */
function usesNeeded(folder: Folder, path: string, { uses }: Reading, names: readonly Occurrence[]): Origin[] {
    return uses
        .filter(({ text }) => {
            const target = resolvePath(path, text);
            return (
                target !== undefined &&
                folder.hasPlan(target) &&
                folder
                    .checked(target)
                    .plan.readings.some(({ occurrences }) =>
                        occurrences.some(
                            (other) => other.role === 'declares' && names.some((name) => isSameThing(name, other)),
                        ),
                    )
            );
        })
        .map(({ origin }) => origin);
}

/** After the other `use` lines, else above the first item. */
function useLine({ uses }: Reading, page: Page, name: string): TextEdit {
    const last = uses.at(-1);
    if (last) {
        return { start: last.origin.end, end: last.origin.end, text: `${page.lineEnd}use "${name}"` };
    }
    const first = page.words.find(({ sort }) => sort !== 'comment');
    const place = lineStart(page.text, first?.start ?? 0);
    return { start: place, end: place, text: `use "${name}"${page.lineEnd}${page.lineEnd}` };
}

/** Edits that meet in one place become one. */
function joined(edits: readonly TextEdit[]): TextEdit[] {
    const all: TextEdit[] = [];
    for (const edit of edits) {
        const last = all.at(-1);
        if (last && edit.start <= last.end) {
            all[all.length - 1] = { start: last.start, end: Math.max(last.end, edit.end), text: last.text + edit.text };
        } else {
            all.push(edit);
        }
    }
    return all;
}
