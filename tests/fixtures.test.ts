import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { check } from '../packages/language/src/check.js';
import { filesInMemory } from '../packages/language/src/plan/files.js';
import { ruleById } from '../packages/language/src/rules/index.js';
import { runFixture, type Setting } from './support/fixtures.js';
import { filesBelow } from './support/samples.js';

// `tests/support/fixtures.ts` says how a fixture is written. UPDATE=1 writes what is found; read the difference.

const root = new URL('../', import.meta.url);
const own = { ...filesBelow('tests/rules'), ...filesBelow('tests/fixes') };
const examples = filesBelow('examples');
const wrongPlans = Object.keys(examples).filter((path) => /^examples\/wrong-plans\/.*\.cover$/.test(path));

function setting(name: string, around: Readonly<Record<string, string>>): Setting {
    return {
        name,
        around,
        isRule: (id) => ruleById(id) !== undefined,
        check: (file, texts) => check(file, filesInMemory(texts)),
    };
}

function holds(path: string, written: string, around: Readonly<Record<string, string>> = {}): void {
    const { mistakes, updated } = runFixture(written, setting(path, around));
    if (process.env.UPDATE === '1' && updated !== written) {
        writeFileSync(new URL(path, root), updated);
        return;
    }
    expect(mistakes.join('\n')).toBe('');
}

describe('fixtures', () => {
    it.each(Object.keys(own))('%s', (path) => holds(path, own[path]!));

    it('stand in the folder of the rule they speak of', () => {
        const misplaced = Object.entries(own).filter(([path, text]) => {
            const [, , id] = path.split('/');
            const isFix = path.startsWith('tests/fixes/');
            const speaksOf = isFix ? /^\/\/=>/m.test(text) : new RegExp(`\\b${id}\\b`).test(text);
            return !path.endsWith('.cover') || !speaksOf || (!isFix && ruleById(id!) === undefined);
        });
        expect(misplaced.map(([path]) => path)).toEqual([]);
    });
});

describe('wrong plans', () => {
    it.each(wrongPlans)('%s', (path) => holds(path, examples[path]!, examples));
});
