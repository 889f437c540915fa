import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';

// What other programs read: the JSON report by its schema, the SARIF log by what the standard demands of it.

const root = join(import.meta.dirname, '..');
// A house that is not in the folder of its event, a name with a space, and findings of every severity.
const plans: Record<string, string> = {
    'soup.cover': 'menu { course soup "Leek soup" { eaten with soup-spoom } }',
    'wide.cover': 'menu { course soup "👩🏽‍🍳 Cre\u0300me" { eaten with soup-spoom } }',
};

function report(format: string, ...paths: string[]): string {
    const program = join(root, 'packages/cli/bin/underliner.cjs');
    const args = [program, 'check', '--show', 'hint', '--format', format, ...paths];
    return spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', env: {} }).stdout;
}

function reportOn(name: string, format: string): string {
    const program = join(root, 'packages/cli/bin/underliner.cjs');
    const args = [program, 'check', '--show', 'hint', '--format', format, '-', '--stdin-name', `a folder/${name}`];
    return spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', env: {}, input: plans[name] }).stdout;
}

describe('JSON', () => {
    const schema = JSON.parse(readFileSync(join(root, 'packages/cli/schema/findings.schema.json'), 'utf8')) as object;
    const validate = new Ajv2020({ strict: true, allErrors: true }).compile(schema);
    test.each([
        ['findings of a text', () => reportOn('soup.cover', 'json')],
        ['findings of the examples', () => report('json', 'examples')],
        ['nothing found', () => report('json', 'packages/cli/starter')],
    ])('%s', (_, run) => {
        const valid = validate(JSON.parse(run()));
        expect(validate.errors ?? []).toEqual([]);
        expect(valid).toBe(true);
    });
    test('the schema refuses what is no report', () => {
        expect(validate({ version: 1, filesChecked: 1, fixed: 0, counts: {}, findings: [] })).toBe(false);
    });
});

describe('SARIF', () => {
    const log = JSON.parse(reportOn('wide.cover', 'sarif')) as Log;
    const [run] = log.runs;
    test('names its version and its program', () => {
        expect(log.version).toBe('2.1.0');
        expect(run?.tool.driver.name).toBe('Underliner');
        expect(run?.tool.driver.semanticVersion).toMatch(/^\d+\.\d+\.\d+$/);
    });
    test('describes every rule that speaks, and points at it', () => {
        const rules = run?.tool.driver.rules ?? [];
        expect(rules.length).toBeGreaterThan(0);
        for (const { id, shortDescription, fullDescription, help } of rules) {
            expect(id).toMatch(/^[a-z-]+$/);
            expect(shortDescription?.text && fullDescription?.text && help?.text).toBeTruthy();
        }
        for (const { ruleId, ruleIndex, message, level } of run?.results ?? []) {
            expect(rules[ruleIndex ?? -1]?.id).toBe(ruleId);
            expect(['error', 'warning', 'note']).toContain(level);
            expect(message.text).toMatch(/[.?]$/);
        }
    });
    test('gives places as relative addresses and counts columns in code points', () => {
        expect(run?.columnKind).toBe('unicodeCodePoints');
        const unknown = run?.results?.find(({ ruleId }) => ruleId === 'unknown-name');
        const place = unknown?.locations?.[0]?.physicalLocation;
        expect(place?.artifactLocation).toEqual({ uri: 'a%20folder/wide.cover', uriBaseId: 'WORKSPACE' });
        expect(run?.originalUriBaseIds).toHaveProperty('WORKSPACE');
        const before = plans['wide.cover']!.split('soup-spoom')[0]!;
        const startColumn = Array.from(before).length + 1;
        expect(place?.region).toEqual({ startLine: 1, startColumn, endLine: 1, endColumn: startColumn + 10 });
    });
});
