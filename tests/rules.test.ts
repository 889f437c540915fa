import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { customSpecs } from '../packages/language/src/plan/customs.js';
import { isFromCupboard, type Origin } from '../packages/language/src/plan/origin.js';
import { readExample } from '../packages/language/src/rules/example.js';
import { rules } from '../packages/language/src/rules/index.js';
import { brokenFixes, checkSample, rewritten, saidBy, unsettled } from './support/fix-claims.js';
import { ruleExamples, type Sample } from './support/samples.js';

// Every rule, held to what it says of itself. No rule is named here.
vi.setConfig({ testTimeout: 120_000 });

const root = new URL('../', import.meta.url);
const folder = new URL('packages/language/src/rules/', root);
const SOURCE =
    /^((table-service|temperature|quantities) (§?\d+[a-z]?(\.\d+[a-z]?)*|§[\d.]+[a-z]?|[A-Z]{1,3}-?\d+[a-z]?)|common practice, no source)$/;

function examplesOf(id: string, kind: 'wrong' | 'right'): readonly Sample[] {
    return ruleExamples(kind).filter(({ name }) => name.startsWith(`${id}, `));
}

function named(sample: Sample): readonly [string, Sample] {
    return [sample.name, sample];
}

function sentences(text: string): number {
    return text.split(/(?<=[.?])\s+(?=[A-Z`\d])/).length;
}

function wordsAt({ texts }: Sample, { file, start, end }: Origin): string {
    return `${file} ${start}-${end} ${(texts[file] ?? '').slice(start, end)}`;
}

it('has every file that defines a rule in the registry, in order, and a page for each', () => {
    const files = readdirSync(folder).filter((file) =>
        readFileSync(new URL(file, folder), 'utf8').includes('export default defineRule('),
    );
    expect(rules.map(({ id }) => `${id}.ts`)).toEqual(files.sort());
    const pages = readdirSync(new URL('docs/rules/', root)).filter((page) => page !== 'README.md');
    expect(pages.sort()).toEqual(rules.map(({ id }) => `${id}.md`));
    const index = readFileSync(new URL('docs/rules/README.md', root), 'utf8');
    expect(rules.filter(({ id }) => !index.includes(`(${id}.md)`))).toEqual([]);
});

describe.each(rules.map((rule) => ({ id: rule.id, rule })))('$id', ({ id, rule }) => {
    const wrong = examplesOf(id, 'wrong');
    const right = examplesOf(id, 'right');

    it('is described in full', () => {
        expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
        expect(existsSync(new URL(`${id}.ts`, folder))).toBe(true);
        expect(rule.since).toMatch(/^\d+\.\d+\.\d+$/);
        expect(rule.title).toMatch(/^[A-Z0-9].*[^.!?]$/);
        expect(rule.why).toMatch(/^[A-Z0-9].*\.$/);
        expect(sentences(rule.why), rule.why).toBeLessThanOrEqual(2);
        expect(rule.source.length).toBeGreaterThan(0);
        expect(rule.source.filter((source) => !SOURCE.test(source))).toEqual([]);
        expect(new Set(rule.source).size).toBe(rule.source.length);
        const customs: readonly string[] = customSpecs.map(({ name }) => name);
        expect((rule.customs ?? []).filter((name) => !customs.includes(name))).toEqual([]);
        expect(rule.fix !== 'never' || rule.noFix !== undefined, '`noFix` says why there is never a fix').toBe(true);
        expect(wrong.length, 'wrong examples').toBeGreaterThan(0);
        expect(right.length, 'right examples').toBeGreaterThan(0);
    });

    it.each(wrong.map(named))('finds what is marked, and nothing else: %s', (_, sample) => {
        const { findings, broken } = checkSample(sample);
        expect(broken).toEqual([]);
        const { marks } = readExample(rule.examples.wrong[wrong.indexOf(sample)]!.text, sample.file);
        const others = findings.filter((finding) => finding.rule !== id);
        expect(others.map((finding) => `${finding.rule}: ${finding.message}`)).toEqual([]);
        expect(marks.length, 'marked words').toBeGreaterThan(0);
        expect(findings.map(({ at }) => wordsAt(sample, at)).sort()).toEqual(
            marks.map((mark) => wordsAt(sample, mark)).sort(),
        );
    });

    it.each(right.map(named))('is content: %s', (_, sample) => {
        const checked = checkSample(sample);
        expect(checked.broken).toEqual([]);
        expect(saidBy(checked)).toEqual([]);
    });

    it('speaks plainly, and of places in the plan', () => {
        for (const sample of wrong) {
            for (const finding of checkSample(sample).findings.filter((each) => each.rule === id)) {
                const texts = [finding.message, ...finding.related.map(({ message }) => message)];
                for (const text of texts) {
                    expect(text).toMatch(/^[A-Z0-9`"].*\.$/);
                }
                for (const text of [...texts, finding.hint ?? '']) {
                    expect(text).not.toMatch(/invalid|unexpected|\btokens?\b|undefined|NaN|\[object|!$/i);
                }
                expect(finding.hint ?? 'Do it.', 'the hint').toMatch(/^[A-Z0-9`].*[.?]$/);
                for (const { at } of [finding, ...finding.related]) {
                    expect(isFromCupboard(at)).toBe(false);
                    expect(at.start).toBeGreaterThanOrEqual(0);
                    expect(at.end).toBeLessThanOrEqual(sample.texts[at.file]?.length ?? -1);
                    expect(at.end).toBeGreaterThan(at.start);
                }
            }
        }
    });

    it(`offers a fix ${rule.fix}`, () => {
        const found = wrong.flatMap((sample) => checkSample(sample).findings).filter((finding) => finding.rule === id);
        const fixed = found.filter(({ fixes }) => fixes.length > 0);
        if (rule.fix === 'always') {
            expect(fixed.length).toBe(found.length);
        }
        expect(fixed.length > 0).toBe(rule.fix !== 'never');
    });

    it('has fixes that mend what they say and nothing else', () => {
        expect(wrong.flatMap((sample) => brokenFixes(sample, id))).toEqual([]);
        expect(wrong.flatMap(unsettled)).toEqual([]);
    });

    it('is the same for other line ends, tabs, comments and one long line', () => {
        for (const sample of wrong) {
            const said = saidBy(checkSample(sample));
            for (const other of rewritten(sample)) {
                expect(saidBy(checkSample(other)), other.name).toEqual(said);
                expect(brokenFixes(other, id)).toEqual([]);
            }
        }
    });
});
