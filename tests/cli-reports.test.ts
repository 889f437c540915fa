import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
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

    /** The schema is of draft 4, which names itself by a word that this library does not know, and differs in nothing it uses. */
    const {
        $schema: _,
        id: __,
        ...schema
    } = JSON.parse(readFileSync(join(root, 'tests/sarif/fixtures/sarif-2.1.0-rtm.5.json'), 'utf8')) as Record<
        string,
        unknown
    >;
    const isAddress = (text: string): boolean =>
        /^[\w:/?#[\]@!$&'()*+,;=.~%-]*$/.test(text) && !/%(?![\dA-F]{2})/i.test(text);
    const formats = { uri: isAddress, 'uri-reference': isAddress, 'date-time': true } as const;
    const validate = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false, formats }).compile(schema);
    // Every rule has a folder or an example there that it speaks in.
    const everything = JSON.parse(report('sarif', 'examples', 'tests/rules')) as Log;

    test.each([
        ['findings of a text', log],
        ['findings of every example and fixture', everything],
        ['nothing found', JSON.parse(report('sarif', 'packages/cli/starter')) as Log],
    ])('%s is what the schema of the standard says', (_, each) => {
        validate(each);
        expect(validate.errors ?? []).toEqual([]);
    });
    test('the schema refuses what is no log', () => {
        expect(validate({ version: '2.0.0', runs: [] })).toBe(false);
        expect(validate({ version: '2.1.0', runs: [{ results: [{ ruleId: 'x' }] }] })).toBe(false);
        const wrong = JSON.parse(JSON.stringify(log)) as Log;
        wrong.runs[0]!.results![0]!.locations![0]!.physicalLocation!.artifactLocation!.uri = 'a folder/wide.cover';
        expect(validate(wrong)).toBe(false);
    });
    // GitHub Docs, "SARIF results exceed limits" and "SARIF support for code scanning".
    test('keeps to what a code host takes in', () => {
        const [{ results = [], tool }] = everything.runs as [Log['runs'][number]];
        expect(results.length).toBeGreaterThan(100);
        expect(results.length).toBeLessThan(5_000);
        for (const { locations = [], relatedLocations = [], message } of results) {
            expect(locations).toHaveLength(1);
            expect(locations[0]!.physicalLocation?.region?.startLine).toBeGreaterThan(0);
            expect(locations[0]!.physicalLocation?.artifactLocation?.uri).not.toMatch(/^[/.]|^\w+:/);
            expect(relatedLocations.length).toBeLessThanOrEqual(100);
            expect(message.text).toBeTruthy();
        }
        for (const { id, shortDescription, fullDescription, help, properties } of tool.driver.rules ?? []) {
            expect(id.length).toBeLessThanOrEqual(255);
            expect(shortDescription!.text.length).toBeLessThanOrEqual(1_024);
            expect(fullDescription!.text.length).toBeLessThanOrEqual(1_024);
            expect(help!.markdown).toContain(`# `);
            expect(properties!.tags!.length).toBeLessThanOrEqual(10);
            expect(['error', 'warning', 'recommendation']).toContain(properties!['problem.severity']);
        }
    });
});

describe('GitHub', () => {
    const lines = report('github', 'examples', 'tests/rules').trimEnd().split('\n');

    test('has one command a finding, which its reader takes apart without loss', () => {
        const { findings } = JSON.parse(report('json', 'examples', 'tests/rules')) as {
            findings: { rule: string; file: string; message: string; hint?: string; start?: { line: number } }[];
        };
        const plain = (text: string, property = false): string =>
            (property ? text.replaceAll('%3A', ':').replaceAll('%2C', ',') : text)
                .replaceAll('%0D', '\r')
                .replaceAll('%0A', '\n')
                .replaceAll('%25', '%');
        // As the runner does: the properties end at the first `::`, and are parted by commas.
        const read = lines.map((line) => {
            const [, command, properties, message] = /^::(\w+) (.*?)::(.*)$/.exec(line)!;
            expect(['error', 'warning', 'notice']).toContain(command);
            const known = Object.fromEntries(
                properties!
                    .split(',')
                    .map((pair) => [pair.split('=')[0]!, plain(pair.slice(pair.indexOf('=') + 1), true)]),
            );
            return { rule: known.title, file: known.file, line: Number(known.line), message: plain(message!) };
        });
        expect(read).toEqual(
            findings.map(({ rule, file, message, hint, start }) => ({
                rule,
                file,
                line: start!.line,
                message: [message, hint].filter(Boolean).join('\n'),
            })),
        );
    });
});
