import { check } from './check.js';
import { filesInMemory } from './plan/files.js';
import { asMarkdown, asText, explanation, type Block, type Outcome } from './output/explain.js';
import { readExample } from './rules/example.js';
import type { Rule } from './rules/rule.js';

/** Why a rule is there, its examples with what a check says of them, and its sources: plain text for a terminal. */
export function explain(rule: Rule): string {
    return asText(explained(rule));
}

/** The same as a page of Markdown. */
export function explainInMarkdown(rule: Rule): string {
    return asMarkdown(explained(rule));
}

function explained(rule: Rule): readonly Block[] {
    return explanation(
        rule,
        rule.examples.wrong.map((example) => outcomesOf(rule, example.text)),
    );
}

function outcomesOf(rule: Rule, written: string): Outcome[] {
    const example = readExample(written);
    const { findings, texts } = check(example.file, filesInMemory(example.texts));
    return findings
        .filter((finding) => finding.rule === rule.id)
        .map(({ at, message, hint, fixes }) => {
            const text = texts.get(at.file) ?? '';
            return {
                file: at.file,
                line: text.slice(0, at.start).split('\n').length,
                words: text.slice(at.start, at.end),
                message,
                hint,
                fixes: fixes.map(({ title, safety }) => ({ title, safety })),
            };
        });
}
