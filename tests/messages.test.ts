import { readFileSync } from 'node:fs';
import ts from 'typescript';
import { expect, it } from 'vitest';
import { rules } from '../packages/language/src/rules/index.js';
import { checkSample } from './support/fix-claims.js';
import { examplePlans, fixturePlans, ruleExamples } from './support/samples.js';

// Whoever changes a message sees it change in a recorded output: a rule's page in docs/rules, which holds what its wrong
// examples yield, or a fixture, which holds what its plan yields.

const folder = new URL('../packages/language/src/rules/', import.meta.url);
const findings = [...ruleExamples('wrong'), ...fixturePlans(), ...examplePlans()].flatMap(
    (sample) => checkSample(sample).findings,
);
const docs = new URL('../docs/rules/', import.meta.url);

it.each(rules.map(({ id }) => id))('%s is in a recorded output', (id) => {
    const page = readFileSync(new URL(`${id}.md`, docs), 'utf8');
    const said = findings.filter(({ rule }) => rule === id).map(({ message }) => message);
    expect(said.some((message) => page.replaceAll('\\', '').includes(message))).toBe(true);
});

it.each(rules.map(({ id }) => id))('every message of %s is in a recorded output', (id) => {
    const said = findings.filter(({ rule }) => rule === id).map(({ message }) => message);
    const silent = messagesIn(`${id}.ts`).filter((pattern) => !said.some((message) => pattern.test(message)));
    expect(silent.map(({ source }) => source)).toEqual([]);
});

/** Each text that a rule's file gives as a `message:` of a report, as a pattern with its figures and names left open. */
function messagesIn(file: string): RegExp[] {
    const source = ts.createSourceFile(file, readFileSync(new URL(file, folder), 'utf8'), ts.ScriptTarget.ES2022, true);
    const patterns: RegExp[] = [];
    const visit = (node: ts.Node): void => {
        const isReport =
            ts.isPropertyAssignment(node) &&
            node.name.getText() === 'message' &&
            node.parent.getChildren().length > 0 &&
            // A related place has a message and a place only.
            node.parent.properties.length > 2;
        if (isReport) {
            patterns.push(...textsOf(node.initializer));
        }
        ts.forEachChild(node, visit);
    };
    visit(source);
    return patterns;
}

function textsOf(node: ts.Expression): RegExp[] {
    if (ts.isConditionalExpression(node)) {
        return [...textsOf(node.whenTrue), ...textsOf(node.whenFalse)];
    }
    if (ts.isParenthesizedExpression(node)) {
        return textsOf(node.expression);
    }
    if (ts.isStringLiteralLike(node)) {
        return [pattern([node.text])];
    }
    if (ts.isTemplateExpression(node)) {
        return [pattern([node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)])];
    }
    return [];
}

function pattern(texts: readonly string[]): RegExp {
    return new RegExp(`^${texts.map((text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('.*')}$`);
}
