import { existsSync, readFileSync } from 'node:fs';
import { ruleById } from 'underliner-language';
import { describe, expect, it } from 'vitest';

// docs/demands.md says what shows each demand: here it is made sure that all of it is there.

const root = new URL('../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');

/** Demands that nothing shows in full yet. A line is taken out here when its words `not yet` go from the page. */
const NOT_YET: readonly string[] = ['A102'];

interface Demand {
    readonly number: string;
    readonly words: string;
    readonly evidence: readonly string[];
}

const demands: readonly Demand[] = [...read('docs/demands.md').matchAll(/^\| ([A-D]\d+) \| (.*?) \| (.*) \|$/gm)].map(
    ([, number, words, evidence]) => ({
        number: number!,
        words: words!,
        evidence: evidence!.split('<br>').filter((each) => each !== ''),
    }),
);

const isMissing = (evidence: string): boolean => evidence.startsWith('**not yet**');
const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };

/** Whether a test file has a test, or a group of tests, of this title, as it is written there. */
function hasTest(text: string, title: string): boolean {
    return ["'", '"', '`'].some((quote) => text.includes(`${quote}${title}${quote}`));
}

/** What is wrong with one piece of evidence, if anything. */
function lacking(evidence: string): string | undefined {
    const [, path, title] = /^`([^`]+)`(?:: (.+))?$/.exec(evidence) ?? [];
    const [, rule] = /^rule `([a-z-]+)`$/.exec(evidence) ?? [];
    if (rule !== undefined) {
        return ruleById(rule) ? undefined : `there is no rule ${rule}`;
    }
    if (path === undefined) {
        return `"${evidence}" is no test, command, rule or file`;
    }
    const [program, ...words] = path.split(' ');
    if (program === 'npm') {
        const script = words.at(-1)!;
        return script in scripts ? undefined : `there is no script ${script}`;
    }
    if (program === 'underliner') {
        const [verb, ...options] = words;
        const file = `packages/cli/src/${verb}.ts`;
        if (!existsSync(new URL(file, root))) {
            return `there is no command ${verb}`;
        }
        const source = read(file) + read('packages/cli/src/main.ts') + read('packages/cli/src/arguments.ts');
        const unknown = options.filter((option) => !source.includes(option));
        return unknown.length === 0 ? undefined : `${verb} has no ${unknown.join(', ')}`;
    }
    if (!existsSync(new URL(path, root))) {
        return `there is no file ${path}`;
    }
    if (path.endsWith('.test.ts') && title === undefined) {
        return `which test of ${path}?`;
    }
    return title === undefined || hasTest(read(path), title) ? undefined : `${path} has no test "${title}"`;
}

describe('docs/demands.md', () => {
    it('numbers the demands one after the other', () => {
        expect(demands.length).toBeGreaterThan(100);
        for (const part of ['A', 'B', 'C', 'D']) {
            const own = demands.map(({ number }) => number).filter((number) => number.startsWith(part));
            expect(own).toEqual(own.map((_, index) => `${part}${index + 1}`));
        }
    });

    it('shows something for each', () => {
        expect(demands.filter(({ evidence }) => evidence.length === 0).map(({ number }) => number)).toEqual([]);
    });

    it('names tests, commands, rules and files that are there', () => {
        const missing = demands.flatMap(({ number, evidence }) =>
            evidence
                .filter((each) => !isMissing(each))
                .flatMap((each) => lacking(each) ?? [])
                .map((what) => `${number}: ${what}`),
        );
        expect(missing).toEqual([]);
    });

    it('owns up to what is not shown yet, and to nothing else', () => {
        const open = demands.filter(({ evidence }) => evidence.some(isMissing));
        if (open.length > 0) {
            const lines = open.map(({ number, words, evidence }) =>
                [number, words, ...evidence.filter(isMissing)].join(': ').replaceAll('**', ''),
            );
            console.info(`Not shown in full yet:\n  ${lines.join('\n  ')}`);
        }
        expect(open.map(({ number }) => number)).toEqual(NOT_YET);
    });
});
