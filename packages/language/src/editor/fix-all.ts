import { check, type Checked } from '../check.js';
import type { Files } from '../plan/files.js';
import { CUPBOARD_PREFIX } from '../plan/origin.js';
import { surestFix, type Widest } from '../rules/fixes.js';
import { applyEdits, editsOf, type TextEdit } from './fixes.js';

/** A plan mended, as far as fixes go. */
export interface Fixed {
    /** The new text of every file that changed, by path. */
    readonly texts: ReadonlyMap<string, string>;
    /** In the order applied. */
    readonly applied: readonly { readonly rule: string; readonly title: string }[];
    /** How often the plan was mended and looked at again. */
    readonly rounds: number;
    /** What is left to say about the mended plan. */
    readonly checked: Checked;
}

/** One fix can make room for the next; more rounds than this mean that two rules undo each other's work. */
export const MOST_ROUNDS = 10;

/**
 * Mends a plan: applies to every finding its one allowed fix, or the preferred one, checks again, and goes on until nothing changes.
 * Of two fixes that want the same place the later waits for the next round. A file that can't be read to its end is
 * left alone. Writes nothing: the caller does.
 * @param widest `safe` for what is surely meant; `unsafe` also for what changes the service. Ideas (`show`) never.
 */
export function fixAll(file: string, files: Files, widest: Widest): Fixed {
    const texts = new Map<string, string>();
    const applied: { rule: string; title: string }[] = [];
    const mended: Files = {
        read: (path) => {
            const text = texts.get(path);
            return text === undefined ? files.read(path) : { state: 'read', text };
        },
    };
    let checked = check(file, mended);
    let rounds = 0;
    while (rounds < MOST_ROUNDS && mend(checked, widest, texts, applied)) {
        rounds += 1;
        checked = check(file, mended);
    }
    return { texts, applied, rounds, checked };
}

/** One round. @returns whether anything changed */
function mend(
    checked: Checked,
    widest: Widest,
    texts: Map<string, string>,
    applied: { rule: string; title: string }[],
): boolean {
    const broken = new Set(checked.plan.readings.filter(({ syntax }) => syntax.length > 0).map(({ file }) => file));
    const textOf = (path: string) =>
        broken.has(path) || path.startsWith(CUPBOARD_PREFIX) ? undefined : checked.texts.get(path);
    const round = new Map<string, TextEdit[]>();
    for (const finding of checked.findings) {
        const fix = surestFix(finding.fixes, widest);
        const edits = [...(fix === undefined ? [] : editsOf(fix, textOf))];
        const isFree = edits.every(([path, mine]) => mine.every((edit) => !(round.get(path) ?? []).some(meets(edit))));
        if (fix !== undefined && edits.length > 0 && isFree) {
            edits.forEach(([path, mine]) => round.set(path, [...(round.get(path) ?? []), ...mine]));
            applied.push({ rule: finding.rule, title: fix.title });
        }
    }
    for (const [path, edits] of round) {
        const inOrder = edits.sort((a, b) => a.start - b.start || a.end - b.end);
        texts.set(path, applyEdits(checked.texts.get(path)!, inOrder));
    }
    return round.size > 0;
}

/** Two edits meet when they share a character or a place. */
function meets(edit: TextEdit): (other: TextEdit) => boolean {
    return (other) => edit.start <= other.end && other.start <= edit.end;
}
