import { check, type Checked } from '../../packages/language/src/check.js';
import { fixAll, MOST_ROUNDS } from '../../packages/language/src/editor/fix-all.js';
import { applyEdits, editsOf, type TextEdit } from '../../packages/language/src/editor/fixes.js';
import { wordsOf } from '../../packages/language/src/editor/page.js';
import { filesInMemory } from '../../packages/language/src/plan/files.js';
import type { Severity } from '../../packages/language/src/plan/types.js';
import type { Fix } from '../../packages/language/src/rules/fixes.js';
import type { Finding } from '../../packages/language/src/rules/rule.js';
import type { Sample } from './samples.js';

// What every fix of every rule promises. Each broken promise is one line of text; none is what a test wants.

/** Gravest first. */
const SEVERITIES: readonly Severity[] = ['error', 'warning', 'info', 'hint'];

export function checkSample({ file, texts }: Sample): Checked {
    return check(file, filesInMemory(texts));
}

/** Applies every fix of every finding, or of one rule's, each to the plan as it is. */
export function brokenFixes(sample: Sample, rule?: string): string[] {
    const before = checkSample(sample);
    const judged = before.findings.filter((finding) => rule === undefined || finding.rule === rule);
    return judged.flatMap((finding) => [
        ...misnamed(finding),
        ...finding.fixes.flatMap((fix) =>
            brokenFix(sample, before, finding, fix).map(
                (broken) => `${sample.name}: ${finding.rule}, fix "${fix.title}": ${broken}`,
            ),
        ),
    ]);
}

function misnamed(finding: Finding): string[] {
    const titles = finding.fixes.map(({ title }) => title);
    return [
        ...titles
            .filter((title) => !/^[A-Z][^\n]*[^.!\s]$/.test(title))
            .map((title) => `${finding.rule}: the title "${title}" is no short command`),
        ...(new Set(titles).size < titles.length ? [`${finding.rule}: two fixes share a title`] : []),
        ...(finding.fixes.filter(({ preferred }) => preferred).length > 1
            ? [`${finding.rule}: prefers two fixes`]
            : []),
    ];
}

function brokenFix(sample: Sample, before: Checked, finding: Finding, fix: Fix): string[] {
    const edits = editsOf(fix, (file) => sample.texts[file]);
    if (edits.size === 0) {
        return ['changes nothing'];
    }
    const texts = { ...sample.texts };
    for (const [file, fileEdits] of edits) {
        texts[file] = applyEdits(texts[file]!, fileEdits);
    }
    const after = checkSample({ ...sample, texts });
    const broken: string[] = [];
    if (syntaxCount(after) > syntaxCount(before)) {
        broken.push(`the text can no longer be read: ${syntaxOf(after)}`);
    }
    if (count(after, finding.rule) >= count(before, finding.rule)) {
        broken.push(`the finding is still there: ${messagesOf(after, finding.rule)}`);
    }
    const asGrave = SEVERITIES.slice(0, SEVERITIES.indexOf(finding.severity) + 1);
    const worse = new Set(after.findings.filter(({ severity }) => asGrave.includes(severity)).map(({ rule }) => rule));
    for (const rule of worse) {
        if (rule !== finding.rule && count(after, rule) > count(before, rule)) {
            broken.push(`brings ${rule}: ${messagesOf(after, rule)}`);
        }
    }
    const offers = (checked: Checked) =>
        checked.findings.filter(
            ({ rule, fixes }) => rule === finding.rule && fixes.some(({ title }) => title === fix.title),
        ).length;
    if (offers(after) >= offers(before)) {
        broken.push('is offered again');
    }
    for (const file of Object.keys(texts)) {
        const lost = lostComments(sample.texts[file]!, texts[file]!);
        if (lost.length > 0) {
            broken.push(`loses the comment ${lost[0]}`);
        }
    }
    return broken.map((line) => `${line}\n${shown(sample, edits)}`);
}

function shown(sample: Sample, edits: ReadonlyMap<string, readonly TextEdit[]>): string {
    const lines = [...edits].flatMap(([file, fileEdits]) =>
        fileEdits.map(({ start, end, text }) => {
            const before = sample.texts[file]!;
            const line = before.slice(0, start).split('\n').length;
            return `  ${file}:${line}: "${before.slice(start, end)}" becomes "${text}"`;
        }),
    );
    return lines.join('\n');
}

/** All safe fixes together, and all fixes that change the service, come to rest and leave nothing for a second run. */
export function unsettled(sample: Sample): string[] {
    const broken: string[] = [];
    for (const widest of ['safe', 'unsafe'] as const) {
        const once = fixAll(sample.file, filesInMemory(sample.texts), widest);
        const twice = fixAll(
            sample.file,
            filesInMemory({ ...sample.texts, ...Object.fromEntries(once.texts) }),
            widest,
        );
        if (once.rounds >= MOST_ROUNDS) {
            broken.push(
                `${sample.name}: ${widest} fixes do not settle: ${once.applied
                    .slice(-4)
                    .map(({ title }) => title)
                    .join('; ')}`,
            );
        } else if (twice.applied.length > 0) {
            broken.push(`${sample.name}: ${widest} fixes go on: ${twice.applied.map(({ title }) => title).join('; ')}`);
        }
        if (syntaxCount(once.checked) > syntaxCount(checkSample(sample))) {
            broken.push(`${sample.name}: ${widest} fixes together break the text`);
        }
    }
    return broken;
}

/** The same plan as others would write it: other line ends, tabs, a comment on every line, all on one line. */
export function rewritten(sample: Sample): readonly (Sample & { readonly keepsFindings: boolean })[] {
    const written = (name: string, keepsFindings: boolean, change: (text: string) => string) => ({
        name: `${sample.name} (${name})`,
        file: sample.file,
        texts: Object.fromEntries(
            Object.entries(sample.texts).map(([file, text]) => [file, file.endsWith('.cover') ? change(text) : text]),
        ),
        keepsFindings,
    });
    const isQuoted = Object.values(sample.texts).every((text) => !hasOpenEnd(text));
    return [
        written('CRLF', true, (text) => text.replace(/\r?\n/g, '\r\n')),
        written('tabs', true, (text) => text.replace(/^( {4})+/gm, (spaces) => '\t'.repeat(spaces.length / 4))),
        ...(isQuoted
            ? [
                  written('commented', true, (text) => text.replace(/(\S)$/gm, '$1 // kept 🍽️')),
                  written('one line', true, (text) =>
                      text.includes('//') ? text : text.replace(/\s*\n\s*/g, ' ').trim(),
                  ),
              ]
            : []),
    ];
}

/** A text or comment without its end swallows what is written after it on the line. */
function hasOpenEnd(text: string): boolean {
    return wordsOf(text).some(({ start, end }) => {
        const word = text.slice(start, end);
        return /^["“„](.*[^"“”])?$/.test(word) || (word.startsWith('/*') && !word.endsWith('*/'));
    });
}

export function saidBy(checked: Checked): string[] {
    return checked.findings.map(({ rule, severity, message }) => `${severity} ${rule}: ${message}`).sort();
}

function count({ findings }: Checked, wanted: string): number {
    return findings.filter(({ rule }) => rule === wanted).length;
}

function messagesOf({ findings }: Checked, wanted: string): string {
    return findings
        .filter(({ rule }) => rule === wanted)
        .map(({ message }) => message)
        .join(' ');
}

function syntaxCount({ plan }: Checked): number {
    return plan.readings.reduce((sum, { syntax }) => sum + syntax.length, 0);
}

function syntaxOf({ plan }: Checked): string {
    return plan.readings.flatMap(({ syntax }) => syntax.map(({ message }) => message)).join(' ');
}

function lostComments(before: string, after: string): string[] {
    const comments = (text: string) =>
        wordsOf(text)
            .filter(({ sort }) => sort === 'comment')
            .map(({ start, end }) => text.slice(start, end).trimEnd());
    const left = comments(after);
    return comments(before).filter((comment) => {
        const index = left.indexOf(comment);
        if (index >= 0) {
            left.splice(index, 1);
        }
        return index < 0;
    });
}
