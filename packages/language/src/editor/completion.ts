import {
    CompletionItemKind,
    InsertTextFormat,
    type CompletionItem,
    type CompletionList,
    type Range,
} from 'vscode-languageserver';
import { check, type Checked } from '../check.js';
import { A_UNIT } from './about-figure.js';
import { aroundAt, type Around } from './around-cursor.js';
import { snippetsFor } from './block-snippets.js';
import type { Client } from './client.js';
import type { CoverServices } from './services.js';
import { cursorAt, type Cursor } from './cursor.js';
import { isReadable, nextAfter, type Next } from './next-words.js';
import { eventsWith } from './names.js';
import { figureProposals } from './figure-proposals.js';
import { nameProposals, RANK, seatProposals, unitProposals, wordProposals, type Proposal } from './proposals.js';
import { lineStart, wordsOf } from './page.js';
import { relativePath } from './relative-path.js';
import { wantedFigureAt } from './wanted-figure.js';
import { wantedNameAt, wantedUnitAt } from './wanted-name.js';
import type { Words } from './words.js';
import type { Place } from './workspace.js';

/** More proposals than these are not read; typing on brings others. */
export const MOST_PROPOSALS = 60;

/** Characters after which the client asks by itself, besides letters. */
export const TRIGGERS = ['"'];

const PLAIN = { takesSnippets: false, takesRows: false };

/** What may be written at an offset: the grammar says which words, the plan which names. */
export function completionAt(
    { folder, path }: Place,
    offset: number,
    services: CoverServices,
    words: Words,
    client: Pick<Client, 'takesSnippets' | 'takesRows'> = PLAIN,
): CompletionList {
    const document = folder.documentOf(path);
    const text = document?.getText() ?? '';
    const found = cursorAt(text, offset);
    if (!document || found.isInComment) {
        return { isIncomplete: false, items: [] };
    }
    const cursor = { ...found, near: readableIn(found, services) };
    const next = nextAfter(cursor.near, services);
    const proposals =
        cursor.quote === undefined ? atWord({ folder, path }, cursor, next) : inText({ folder, path }, cursor, next);
    const begun = typed(text, cursor);
    const fitting = proposals.filter(({ name, word }) =>
        word === undefined ? isTypedIn(name, begun) : begun !== '' && word.startsWith(begun.toLowerCase()),
    );
    const ordered = [...new Map(fitting.sort((a, b) => a.rank - b.rank).map((each) => [labelOf(each), each])).values()];
    const from = document.positionAt(cursor.quote === undefined ? cursor.start : cursor.quote + 1);
    const range = { start: from, end: document.positionAt(offset) };
    // A unit that stands there already belongs to the figure that was taken out before it.
    const [unit = ''] = UNIT_BEHIND.exec(text.slice(offset)) ?? [];
    const withUnit = { start: from, end: document.positionAt(offset + unit.length) };
    // Nothing is ever glued to what stands before.
    const gap = cursor.quote === undefined && /[^\s{(]$/.test(cursor.item) ? ' ' : '';
    const items = ordered.slice(0, MOST_PROPOSALS).map((proposal, index): CompletionItem => {
        const name =
            cursor.quote !== undefined || isWritten(proposal) || next.nameWords.has(proposal.name)
                ? proposal.name
                : words.written(proposal.name);
        return {
            label: labelOf(proposal),
            kind: proposal.kind,
            ...(isNews(proposal.detail, proposal) ? { detail: proposal.detail } : {}),
            ...rowOf(proposal, client),
            ...(proposal.about === undefined ? {} : { documentation: proposal.about }),
            sortText: `${proposal.rank}${String(index).padStart(3, '0')}`,
            filterText: proposal.word ?? name,
            textEdit: { range: hasUnit(proposal) ? withUnit : range, newText: `${gap}${name}` },
        };
    });
    const blocks =
        client.takesSnippets && cursor.quote === undefined ? blockItems(next, cursor, items, range, gap) : [];
    // Other words for names come only once one is begun.
    const isMoreToCome = begun === '' && proposals.some(({ word }) => word !== undefined);
    return { isIncomplete: isMoreToCome || ordered.length > MOST_PROPOSALS, items: [...items, ...blocks] };
}

const labelOf = ({ name, word }: Proposal): string => word ?? name;

/** The unit right behind the cursor, on its line. */
const UNIT_BEHIND = new RegExp(`^[ \\t]*${A_UNIT}`, 'u');

/** Whether it is a figure with its unit, or a unit. */
const hasUnit = ({ kind, name }: Proposal): boolean =>
    kind === CompletionItemKind.Unit || (kind === CompletionItemKind.Value && name.includes(' '));

/** Beside each name, not only the one that is chosen. */
function rowOf(proposal: Proposal, { takesRows }: Pick<Client, 'takesRows'>): Pick<CompletionItem, 'labelDetails'> {
    const description = proposal.row ?? proposal.detail;
    return takesRows && isNews(description, proposal) ? { labelDetails: { description } } : {};
}

/** Nothing is said that is the name over again. */
function isNews(words: string | undefined, { name }: Proposal): words is string {
    const same = (each: string): string => each.toLowerCase().replaceAll('-', ' ');
    return words !== undefined && words !== '' && same(words) !== same(name);
}

/** What the words before the cursor are read from: past a mistake further up only the outline can be, or the rest of the line. */
function readableIn({ near, item, outline }: Cursor, services: CoverServices): string {
    const known = [near, item, outline].find((each) => isReadable(each, services));
    if (known !== undefined) {
        return known;
    }
    const line = lineStart(outline, outline.length);
    const headings = outline.slice(0, line);
    return (
        wordsOf(outline.slice(line))
            .map(({ start }) => headings + outline.slice(line + start))
            .find((each) => isReadable(each, services)) ?? outline
    );
}

/** Blocks to fill in, each behind the bare word that it begins with. */
function blockItems(
    next: Next,
    cursor: Cursor,
    items: readonly CompletionItem[],
    range: Range,
    gap: string,
): CompletionItem[] {
    // Behind other words of its line a word may be a name, and behind a figure stands what is counted.
    if (!/(^|[{}\n])\s*$/.test(cursor.item)) {
        return [];
    }
    return snippetsFor(next)
        .filter(({ word, label }) => isTypedIn(word ?? label, cursor.prefix))
        .map(({ word, label, about, body }, index) => ({
            label,
            kind: CompletionItemKind.Snippet,
            documentation: about,
            sortText: `${items.find((item) => item.label.split(' ')[0] === word)?.sortText ?? RANK.suits}-${index}`,
            filterText: word ?? label,
            insertTextFormat: InsertTextFormat.Snippet,
            textEdit: { range, newText: gap + body },
        }));
}

const WRITTEN: ReadonlySet<CompletionItemKind> = new Set([
    CompletionItemKind.Keyword,
    CompletionItemKind.Unit,
    CompletionItemKind.Value,
]);

/** Words, units, figures and titles are written as they are. */
function isWritten({ kind, name }: Proposal): boolean {
    return WRITTEN.has(kind) || name.startsWith('"');
}

function atWord({ folder, path }: Place, cursor: Cursor, next: Next): Proposal[] {
    const units = next.units.size > 0 ? unitProposals(wantedUnitAt(cursor), measureBefore(cursor), next.units) : [];
    // Right behind a digit a figure is still being typed: only what must follow it is of use.
    if (/\d$/.test(cursor.item)) {
        return units;
    }
    const phrases = next.phrases.map((name): Proposal => ({ name, kind: CompletionItemKind.Keyword, rank: RANK.word }));
    const checked = next.takesName ? checkedWithName({ folder, path }, cursor) : checkedFor({ folder, path });
    const around = aroundAt(checked, path, cursor.start);
    const { occurrence, madeUp } = next.takesName ? wantedNameAt(cursor, 'name') : {};
    const names = occurrence
        ? nameProposals(occurrence, checked, around, next.properties)
        : madeUp
          ? // What is being typed is among them, for the plan is read with it.
            wordProposals(madeUp, checked).filter(({ name }) => name !== cursor.prefix)
          : [];
    const title = next.takesText && !next.takesName ? wantedNameAt(cursor, 'text').occurrence : undefined;
    const titles = title ? nameProposals(title, checked, around, next.properties) : [];
    const figures = next.figuresOf.size > 0 ? figuresAt(cursor, checked, around) : [];
    return [...figures, ...units, ...phrases, ...names, ...titles.map((each) => ({ ...each, name: `"${each.name}"` }))];
}

/** Figures with their units, and numbers of seats. */
function figuresAt(cursor: Cursor, checked: Checked, around: Around): Proposal[] {
    const [, quoted, bare] = /\bat\s+(?:"([^"\n]+)"|(\S+))\s+seat\s*$/.exec(cursor.item) ?? [];
    const table = quoted ?? bare;
    if (table !== undefined) {
        return seatProposals(table, checked);
    }
    const wanted = wantedFigureAt(cursor);
    return wanted ? figureProposals(wanted, measureBefore(cursor), around, checked, cursor.item) : [];
}

/** A file without an event knows the names of the event that uses it. */
function checkedFor({ folder, path }: Place): Checked {
    return folder.checked(eventsWith(folder, path)[0] ?? path);
}

/**
 * Where a name is still to come, the word that follows is taken for it: after `bread from` the course below is read as
 * its name, and what it holds is lost. So the plan is looked at as it is with a name there.
 */
function checkedWithName({ folder, path }: Place, { item, prefix, offset }: Cursor): Checked {
    const text = folder.textOf(path);
    const next = offset + (/^\s*/.exec(text?.slice(offset) ?? '')?.[0].length ?? 0);
    const isTaken = folder.readingOf(path)?.occurrences.some(({ origin }) => origin.start === next);
    // What suits bread is known once there is a plate or knife for it.
    const isInBread = /\bbread\b[^{}]*$/.test(item);
    if (text === undefined || prefix !== '' || !(isTaken || isInBread)) {
        return checkedFor({ folder, path });
    }
    const withName = `${text.slice(0, offset)} ${NAME_TO_COME} ${text.slice(offset)}`;
    return check(eventsWith(folder, path)[0] ?? path, {
        read: (each) => (each === path ? { state: 'read', text: withName } : folder.read(each)),
    });
}

const NAME_TO_COME = 'name-to-come';

/** In quotes: a path after `use`, else a title that the plan knows. */
function inText({ folder, path }: Place, cursor: Cursor, next: Next): Proposal[] {
    if (/\buse\s*$/.test(cursor.item)) {
        const known = folder.checked(path).plan.readings.map(({ file }) => file);
        const others = folder.plans.filter((plan) => plan !== path && !known.includes(plan));
        return others.map((plan) => ({
            name: relativePath(path, plan),
            kind: CompletionItemKind.File,
            rank: RANK.name,
        }));
    }
    const wanted = next.takesText ? wantedNameAt(cursor, 'text').occurrence : undefined;
    if (!wanted) {
        return [];
    }
    const checked = checkedFor({ folder, path });
    return nameProposals(wanted, checked, aroundAt(checked, path, cursor.start), next.properties);
}

/** The word that says what the figure before the cursor measures. */
function measureBefore({ item }: Cursor): string {
    return /([\p{L}][\p{L}\p{N}-]*)\s*:?\s*[-\d.,\s]*(?:to\s+[-\d.,\s]*)?$/u.exec(item)?.[1] ?? '';
}

function typed(text: string, cursor: Cursor): string {
    return cursor.quote === undefined ? cursor.prefix : text.slice(cursor.quote + 1, cursor.offset);
}

/** Whether what is typed begins a part of the name, or its letters stand in it in order from the start of a part. */
function isTypedIn(name: string, prefix: string): boolean {
    const wanted = prefix.toLowerCase();
    const known = name.toLowerCase();
    if (known.startsWith(wanted)) {
        return true;
    }
    const parts = [...known.matchAll(/(^|[^\p{L}\p{N}])(?=[\p{L}\p{N}])/gu)].map(
        ({ index, 0: gap }) => index + gap.length,
    );
    return parts.some((start) => {
        let at = start;
        return [...wanted].every((letter, index) => {
            at = known.indexOf(letter, at) + 1;
            return at > 0 && (index > 0 || at === start + 1);
        });
    });
}
