import { isFromCupboard, type Origin } from '../plan/origin.js';
import type { Fix, Intention } from '../rules/fixes.js';
import { asJoint, pageOf, textOf, wordAfter, type Page } from './page.js';
import { GAP, writeChange, type Change, type TextEdit } from './write-change.js';

export type { TextEdit } from './write-change.js';

// Turns what a rule intends into the smallest edit of the text: comments stay, and so do line ends and indentation.
// Knows no editor protocol: the editor and the command line both use it.

/**
 * The edits that carry out a fix, by file, in order and apart from each other.
 * Empty where the fix can't be written: a file is not to be had, or its text is no longer what the rule saw.
 * @param readText the text of a file by its path, `undefined` where it is not to be changed
 */
export function editsOf(
    fix: Fix,
    readText: (file: string) => string | undefined,
): ReadonlyMap<string, readonly TextEdit[]> {
    const pages = new Map<string, Page>();
    const edits = new Map<string, TextEdit[]>();
    const pageAt = (origin: Origin): Page | undefined => {
        const text = isFromCupboard(origin) ? undefined : readText(origin.file);
        if (text !== undefined && !pages.has(origin.file)) {
            pages.set(origin.file, pageOf(text));
        }
        return pages.get(origin.file);
    };
    for (const change of gathered(fix.changes, pageAt)) {
        const page = pageAt(change.at);
        const written = page === undefined ? undefined : writeChange(page, change);
        if (written === undefined) {
            return new Map();
        }
        edits.set(change.at.file, [...(edits.get(change.at.file) ?? []), ...written]);
    }
    const result = new Map<string, readonly TextEdit[]>();
    for (const [file, all] of edits) {
        const apart = keptApart(all);
        if (apart === undefined) {
            return new Map();
        }
        if (apart.length > 0) {
            result.set(file, apart);
        }
    }
    return result;
}

/**
 * Carries out edits.
 * @param edits in order and apart from each other
 */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
    let done = '';
    let from = 0;
    for (const edit of edits) {
        done += text.slice(from, edit.start) + edit.text;
        from = edit.end;
    }
    return done + text.slice(from);
}

// ------------------------------------------------------------------ what belongs together
/** Clauses for one block, customs of one house and neighbouring items of a list are one change each. */
function gathered(intentions: readonly Intention[], pageAt: (origin: Origin) => Page | undefined): Change[] {
    const changes: Change[] = [];
    const clauses = new Map<string, { at: Origin; clauses: string[] }>();
    const customs = new Map<string, { at: Origin; customs: string[] }>();
    const removals: Origin[] = [];
    const addClause = (at: Origin, clause: string) => {
        const key = `${at.file} ${at.start} ${at.end}`;
        const block = clauses.get(key) ?? { at, clauses: [] };
        clauses.set(key, block);
        block.clauses.push(clause);
    };
    for (const intention of intentions) {
        switch (intention.do) {
            case 'replace':
            case 'append':
                changes.push(intention);
                break;
            case 'remove':
                removals.push(intention.at);
                break;
            case 'add-clause':
                addClause(intention.to, intention.clause);
                break;
            case 'move-before':
                changes.push({ do: 'move', at: intention.block, before: intention.before });
                break;
            case 'add-block':
                changes.push({ do: 'add-block', at: intention.beside, where: intention.where, block: intention.block });
                break;
            case 'set-custom': {
                const { house, laying, custom, name, value } = intention;
                const page = custom && pageAt(custom);
                if (custom !== undefined) {
                    const isWhole = page !== undefined && new RegExp(`^"?${name}"?\\s*:`).test(textOf(page, custom));
                    changes.push({ do: 'replace', at: custom, words: isWhole ? `${name}: ${value}` : value });
                } else if (laying !== undefined) {
                    addClause(laying, `${name}: ${value}`);
                } else {
                    const block = customs.get(house.file) ?? { at: house, customs: [] };
                    customs.set(house.file, block);
                    block.customs.push(`${name}: ${value}`);
                }
                break;
            }
        }
    }
    for (const { at, customs: lines } of customs.values()) {
        addClause(at, `laying { ${lines.join(GAP)} }`);
    }
    return [
        ...changes,
        ...neighboursJoined(removals, pageAt).map((at) => ({ do: 'remove' as const, at })),
        ...[...clauses.values()].map((block) => ({ do: 'add-clauses' as const, ...block })),
    ];
}

/** Two items with nothing but a comma (or `and`) between them go as one. */
function neighboursJoined(removals: readonly Origin[], pageAt: (origin: Origin) => Page | undefined): Origin[] {
    const joined: Origin[] = [];
    for (const removal of [...removals].sort((a, b) => a.start - b.start)) {
        const last = joined.findIndex(({ file, end }) => {
            const page = file === removal.file ? pageAt(removal) : undefined;
            const joint = page && asJoint(page, wordAfter(page, end));
            return page && joint && wordAfter(page, joint.end)?.start === removal.start;
        });
        if (last < 0) {
            joined.push(removal);
        } else {
            joined[last] = { ...joined[last]!, end: removal.end };
        }
    }
    return joined;
}

/** In order; deletions that meet become one. `undefined` where two edits want the same characters. */
function keptApart(edits: readonly TextEdit[]): TextEdit[] | undefined {
    const apart: TextEdit[] = [];
    for (const edit of [...edits].sort((a, b) => a.start - b.start || a.end - b.end)) {
        const last = apart.at(-1);
        if (last === undefined || edit.start >= last.end) {
            apart.push(edit);
        } else if (edit.text === '' && last.text === '') {
            apart[apart.length - 1] = { start: last.start, end: Math.max(last.end, edit.end), text: '' };
        } else {
            return undefined;
        }
    }
    return apart;
}
