import type { Checked } from '../../packages/language/src/check.js';
import { applyEdits, editsOf } from '../../packages/language/src/editor/fixes.js';
import type { Origin } from '../../packages/language/src/plan/origin.js';
import type { Severity } from '../../packages/language/src/plan/types.js';
import { readExample } from '../../packages/language/src/rules/example.js';
import type { Finding } from '../../packages/language/src/rules/rule.js';

// A fixture is a plan that says what a check finds in it. Under a line stand, as comments, what is found there:
//
//     eaten with salad-fork
// //             ^^^^^^^^^^ warning stock-short: 8 covers need 8 `salad-fork`; the house owns 4. Short by 4.
// //    hint: Borrow 4, or serve another salad.
// //    fix (unsafe): Eat it with `dinner-fork`
// //    also house.cover `4 salad-fork`: The house owns these.
// //             ^^^^^^^^^^ no error unknown-name
//
// Carets give the range, up to the end of the line where it goes on; right after the slashes, those count as carets.
// After the id stands the exact message, or a pattern between slashes, or nothing; with the message, what follows it
// must be exact too. What is found and not said fails, so a plan with no findings says `// no findings`, by hand alone.
// A fix fixture is a plan, a line `//=> title of the fix`, and the files as the fix leaves them.
// `//- name.cover` begins a file; the last is checked. UPDATE=1 writes what is found in place of what is wrong.

export interface Outcome {
    /** One line a mistake; empty where the fixture holds. */
    readonly mistakes: readonly string[];
    /** The fixture with everything it says made true. */
    readonly updated: string;
}

export interface Setting {
    /** Name of the file where the fixture has no header. */
    readonly name: string;
    readonly check: (file: string, texts: Readonly<Record<string, string>>) => Checked;
    /** Files beside the fixture's own. */
    readonly around?: Readonly<Record<string, string>>;
    readonly isRule: (id: string) => boolean;
}

const FIX_LINE = /^\/\/=>[ \t]*(.*)$/m;

export function runFixture(written: string, setting: Setting): Outcome {
    return FIX_LINE.test(written) ? runFix(written, setting) : runFindings(written, setting);
}

// ------------------------------------------------------------------ what is found
interface Expectation {
    readonly from: number;
    readonly to: number;
    readonly isForbidden: boolean;
    readonly severity: Severity;
    readonly rule: string;
    readonly message?: string;
    /** The expectation and what follows it, as written. */
    readonly lines: string[];
}

const EXPECTATION =
    /^(?<margin>\s*)\/\/(?:(?<gap>\s*)(?<carets>\^+)|\s*columns (?<first>\d+)-(?<last>\d+))\s+(?<no>no )?(?<severity>error|warning|info|hint) (?<rule>\S+?)(?:: (?<message>.*))?$/;
const NOTE = /^\s*\/\/\s+(hint: |fix \(|also )/;
const NO_FINDINGS = '// no findings';

interface Line {
    readonly text: string;
    readonly start: number;
    readonly expectations: readonly Expectation[];
}

function runFindings(written: string, setting: Setting): Outcome {
    const example = readExample(written, setting.name);
    const checked = setting.check(example.file, { ...setting.around, ...example.texts });
    const mistakes: string[] = [];
    const left = new Set(checked.findings.filter(({ at }) => at.file in example.texts));
    for (const finding of checked.findings) {
        if (!left.has(finding)) {
            mistakes.push(`${finding.rule} lands in ${finding.at.file}, where this fixture can't expect it.`);
        }
    }
    let expected = 0;
    const hasHeaders = /^\/\/-/m.test(written);
    const updated = Object.entries(example.texts).map(([file, text]) => {
        const lines: string[] = hasHeaders ? [`//- ${file}`] : [];
        for (const line of linesOf(text, file, mistakes)) {
            const kept: { readonly at: number; readonly lines: readonly string[] }[] = [];
            const here = () => [...left].filter(({ at }) => at.file === file && isOnLine(at, line));
            for (const expectation of line.expectations) {
                expected += 1;
                if (!setting.isRule(expectation.rule)) {
                    mistakes.push(`${file}: no rule is called ${expectation.rule}.`);
                }
                const found = here().find((finding) => isMeant(expectation, finding, line));
                if (expectation.isForbidden) {
                    kept.push({ at: expectation.from, lines: expectation.lines });
                    if (found !== undefined) {
                        mistakes.push(`${place(file, text, found)}: found in spite of "no": ${found.rule}.`);
                    }
                } else if (found === undefined) {
                    mistakes.push(`${file}: not found under "${line.text.trim()}": ${expectation.lines[0]!.trim()}`);
                } else {
                    left.delete(found);
                    const actual = report(found, line, checked.texts);
                    const isExact = expectation.message !== undefined && !isPattern(expectation.message);
                    const holds = !isExact || sameNotes(expectation.lines, actual);
                    kept.push({ at: expectation.from, lines: holds ? expectation.lines : actual });
                    if (!holds) {
                        mistakes.push(
                            `${place(file, text, found)}: what follows ${found.rule} differs:\n${actual.slice(1).join('\n')}`,
                        );
                    }
                }
            }
            for (const finding of here()) {
                left.delete(finding);
                mistakes.push(
                    `${place(file, text, finding)}: not expected: ${finding.severity} ${finding.rule}: ${finding.message}`,
                );
                kept.push({ at: columns(finding.at, line).from, lines: report(finding, line, checked.texts) });
            }
            const isFalseClaim = line.text === NO_FINDINGS && checked.findings.length > 0;
            lines.push(
                ...(isFalseClaim ? [] : [line.text]),
                ...kept.sort((a, b) => a.at - b.at).flatMap((each) => each.lines),
            );
        }
        return lines.join('\n');
    });
    const saysNone = written.split('\n').includes(NO_FINDINGS);
    if (expected === 0 && !saysNone) {
        mistakes.push(`It expects nothing; a plan without findings says "${NO_FINDINGS}".`);
    }
    if (saysNone && checked.findings.length > 0) {
        mistakes.push(`It says "${NO_FINDINGS}".`);
    }
    return { mistakes, updated: updated.join('\n') };
}

/** The lines of a file, each with what is said under it. */
function linesOf(text: string, file: string, mistakes: string[]): Line[] {
    const lines: (Line & { expectations: Expectation[] })[] = [];
    let start = 0;
    let last: Expectation | undefined;
    for (const line of text.split('\n')) {
        const groups = EXPECTATION.exec(line)?.groups;
        const above = lines.at(-1);
        if (groups !== undefined && above !== undefined) {
            last = expectation(line, groups);
            above.expectations.push(last);
        } else if (last !== undefined && NOTE.test(line)) {
            last.lines.push(line);
        } else {
            if (/^\s*\/\/\s*\^/.test(line)) {
                mistakes.push(`${file}: not an expectation: ${line.trim()}`);
            }
            last = undefined;
            lines.push({ text: line, start, expectations: [] });
        }
        start += line.length + 1;
    }
    return lines;
}

function expectation(line: string, groups: Record<string, string | undefined>): Expectation {
    const { margin = '', gap = '', carets = '', first, last } = groups;
    // Carets right after the slashes: the slashes are where the range begins.
    const slashes = margin.length + (gap === '' ? 0 : '//'.length + gap.length);
    return {
        from: first === undefined ? slashes : Number(first) - 1,
        to: last === undefined ? margin.length + '//'.length + gap.length + carets.length : Number(last),
        isForbidden: groups.no !== undefined,
        severity: groups.severity as Severity,
        rule: groups.rule!,
        message: groups.message,
        lines: [line],
    };
}

function isOnLine(at: Origin, line: Line): boolean {
    return at.start >= line.start && at.start <= line.start + line.text.length;
}

/** Columns from 0, the end not included; up to the end of the line where the range goes on. */
function columns(at: Origin, line: Line): { readonly from: number; readonly to: number } {
    return { from: at.start - line.start, to: Math.min(at.end - line.start, line.text.trimEnd().length) };
}

function isMeant(expectation: Expectation, finding: Finding, line: Line): boolean {
    const { from, to } = columns(finding.at, line);
    if (finding.rule !== expectation.rule) {
        return false;
    }
    if (expectation.isForbidden) {
        return from < expectation.to && to > expectation.from;
    }
    return (
        from === expectation.from &&
        to === expectation.to &&
        finding.severity === expectation.severity &&
        (expectation.message === undefined ||
            (isPattern(expectation.message)
                ? new RegExp(expectation.message.slice(1, -1)).test(finding.message)
                : finding.message === expectation.message))
    );
}

function isPattern(message: string): boolean {
    return message.length > 2 && message.startsWith('/') && message.endsWith('/');
}

function sameNotes(expected: readonly string[], actual: readonly string[]): boolean {
    const notes = (lines: readonly string[]) => lines.slice(1).map((line) => line.trim().replace(/^\/\/\s*/, ''));
    return JSON.stringify(notes(expected)) === JSON.stringify(notes(actual));
}

/** A finding as a fixture says it in full. */
function report(
    { at, severity, rule, message, hint, fixes, related }: Finding,
    line: Line,
    texts: ReadonlyMap<string, string>,
): string[] {
    const words = (origin: Origin) =>
        (texts.get(origin.file) ?? '').slice(origin.start, origin.end).split('\n')[0]!.trimEnd();
    return [
        `${pointer(columns(at, line))} ${severity} ${rule}: ${message}`,
        ...(hint === undefined ? [] : [`//    hint: ${hint}`]),
        ...fixes.map(({ title, safety }) => `//    fix (${safety}): ${title}`),
        ...related.map(
            (each) =>
                `//    also ${each.at.file === at.file ? '' : `${each.at.file} `}\`${words(each.at)}\`: ${each.message}`,
        ),
    ];
}

function pointer({ from, to }: { readonly from: number; readonly to: number }): string {
    if (from > 2 && to > from) {
        return `//${' '.repeat(from - 2)}${'^'.repeat(to - from)}`;
    }
    return to - from > 2 ? `${' '.repeat(from)}//${'^'.repeat(to - from - 2)}` : `// columns ${from + 1}-${to}`;
}

function place(file: string, text: string, { at }: Finding): string {
    return `${file}:${text.slice(0, at.start).split('\n').length}`;
}

// ------------------------------------------------------------------ what a fix does
function runFix(written: string, setting: Setting): Outcome {
    const parts = written.split(/^(\/\/=>.*)\n/m);
    const title = FIX_LINE.exec(written)![1]!;
    const [before = '', , after = ''] = parts;
    if (parts.length !== 3) {
        return { mistakes: ['It has more than one fix.'], updated: written };
    }
    const example = readExample(before, setting.name);
    const texts = { ...setting.around, ...example.texts };
    const { findings } = setting.check(example.file, texts);
    const isMarked = ({ at }: Finding) =>
        example.marks.length === 0 ||
        example.marks.some((mark) => mark.file === at.file && at.start < mark.end && at.end > mark.start);
    const offers = findings.filter(isMarked).flatMap(({ fixes }) => fixes.filter((fix) => fix.title === title));
    if (offers.length !== 1) {
        const titles = findings.filter(isMarked).flatMap(({ fixes }) => fixes.map((fix) => `\n  ${fix.title}`));
        return {
            mistakes: [`${offers.length} findings offer "${title}". There are:${titles.join('')}`],
            updated: written,
        };
    }
    const hasHeaders = /^\/\/-/m.test(before);
    const changed = [...editsOf(offers[0]!, (file) => texts[file])].map(([file, edits]) => {
        const text = applyEdits(texts[file]!, edits);
        return hasHeaders ? `//- ${file}\n${text}` : text;
    });
    const actual = changed.join('\n').trimEnd();
    return {
        mistakes: actual === after.trimEnd() ? [] : [`"${title}" leaves:\n${actual}`],
        updated: `${before}//=> ${title}\n${actual}\n`,
    };
}
