import { check, type Checked } from '../check.js';
import { parseText } from '../grammar/parse.js';
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
 * Of two fixes that want the same place the later waits for the next round. In a file that can't be read to its end only words
 * are mended, and only where that can be read then. Writes nothing: the caller does.
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

interface Step {
    readonly rule: string;
    readonly title: string;
    readonly edits: readonly (readonly [path: string, edits: readonly TextEdit[]])[];
}

/** One round. @returns whether anything changed */
function mend(
    checked: Checked,
    widest: Widest,
    texts: Map<string, string>,
    applied: { rule: string; title: string }[],
): boolean {
    const wanted = stepsIn(checked, widest);
    const unread = new Set(
        checked.plan.readings
            .filter(({ syntax }) => syntax.length > 0)
            .flatMap(({ file }) => unreadThen(checked.texts.get(file) ?? '', editsIn(file, wanted))),
    );
    const steps = wanted.filter(({ edits }) => !edits.some(([, mine]) => mine.some((edit) => unread.has(edit))));
    applied.push(...steps.map(({ rule, title }) => ({ rule, title })));
    for (const path of new Set(steps.flatMap(({ edits }) => edits.map(([each]) => each)))) {
        texts.set(path, applyEdits(checked.texts.get(path)!, editsIn(path, steps)));
    }
    return steps.length > 0;
}

/** What is to be done, but for what meets something before it. */
function stepsIn({ findings, texts }: Checked, widest: Widest): Step[] {
    const textOf = (path: string) => (path.startsWith(CUPBOARD_PREFIX) ? undefined : texts.get(path));
    const taken = new Map<string, TextEdit[]>();
    return findings.flatMap(({ rule, fixes }) => {
        const fix = surestFix(fixes, widest);
        const edits = [...(fix === undefined ? [] : editsOf(fix, textOf))];
        const isFree = edits.every(([path, mine]) => mine.every((edit) => !taken.get(path)?.some(meets(edit))));
        if (fix === undefined || edits.length === 0 || !isFree) {
            return [];
        }
        edits.forEach(([path, mine]) => taken.set(path, [...(taken.get(path) ?? []), ...mine]));
        return [{ rule, title: fix.title, edits }];
    });
}

/** The edits of one file, in the order of its text. */
function editsIn(file: string, steps: readonly Step[]): TextEdit[] {
    return steps
        .flatMap(({ edits }) => edits.flatMap(([path, mine]) => (path === file ? mine : [])))
        .sort((a, b) => a.start - b.start || a.end - b.end);
}

/**
 * The edits of a text after which their line can't be read as far as what they write: behind it there may be more to mend.
 * @param edits in the order of the text
 */
function unreadThen(text: string, edits: readonly TextEdit[]): TextEdit[] {
    const mended = applyEdits(text, edits);
    const { problems } = parseText(mended);
    let longer = 0;
    return edits.filter((edit) => {
        longer += edit.text.length - (edit.end - edit.start);
        const end = edit.end + longer;
        const lineStart = mended.lastIndexOf('\n', end - edit.text.length - 1) + 1;
        return problems.some((problem) => problem.end >= lineStart && problem.start <= end);
    });
}

/** Two edits meet when they share a character or a place. */
function meets(edit: TextEdit): (other: TextEdit) => boolean {
    return (other) => edit.start <= other.end && other.start <= edit.end;
}
