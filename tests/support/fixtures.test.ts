import { describe, expect, it } from 'vitest';
import type { Checked } from '../../packages/language/src/check.js';
import type { Finding } from '../../packages/language/src/rules/rule.js';
import { runFixture } from './fixtures.js';

/** A check that finds every `frok`, and offers to write `fork`. */
function check(file: string, texts: Readonly<Record<string, string>>): Checked {
    const findings = Object.entries(texts).flatMap(([path, text]) =>
        [...text.matchAll(/frok/g)].map(({ index }): Finding => {
            const at = { file: path, start: index, end: index + 4 };
            return {
                rule: 'no-frok',
                severity: 'warning',
                at,
                message: 'No piece is called `frok`.',
                hint: 'Did you mean `fork`?',
                related: [{ at, message: 'It stands here.' }],
                hasSafeFix: true,
                fixes: [{ title: 'Write `fork`', safety: 'safe', changes: [{ do: 'replace', at, words: 'fork' }] }],
            };
        }),
    );
    return { file, findings, texts: new Map(Object.entries(texts)) } as unknown as Checked;
}

const setting = { name: 'plan.cover', check, isRule: (id: string) => id === 'no-frok' };
const run = (...lines: string[]) => runFixture(lines.join('\n'), setting);

const FULL = [
    '//  ^^^^ warning no-frok: No piece is called `frok`.',
    '//    hint: Did you mean `fork`?',
    '//    fix (safe): Write `fork`',
    '//    also `frok`: It stands here.',
];

describe('a fixture of findings', () => {
    it.each([
        ['in full', ['own frok', ...FULL]],
        ['with the range and the rule', ['own frok', '//  ^^^^ warning no-frok']],
        ['with a pattern', ['own frok', '//  ^^^^ warning no-frok: /piece .* `frok`/']],
        ['at the start of the line', ['frok', '//^^ warning no-frok']],
        ['by its columns', ['/ frok', '// columns 3-6 warning no-frok']],
        ['that there is none', ['own fork', '//  ^^^^ no warning no-frok']],
        ['that there are none at all', ['// no findings', 'own fork']],
        ['in any of its files', ['//- house.cover', 'own frok', '//  ^^^^ warning no-frok', '//- event.cover', 'own']],
    ])('may say what is found %s', (_, lines) => {
        expect(run(...lines).mistakes).toEqual([]);
        expect(run(...lines).updated).toBe(lines.join('\n'));
    });

    it.each([
        [
            'what is found is not said',
            ['own frok', 'own frok', '//  ^^^^ warning no-frok'],
            'not expected: warning no-frok',
        ],
        ['what is said is not found', ['own fork', '//  ^^^^ warning no-frok'], 'not found under "own fork"'],
        ['the range is another', ['own frok', '//  ^^^ warning no-frok'], 'not found'],
        ['the severity is another', ['own frok', '//  ^^^^ error no-frok'], 'not found'],
        ['the message is another', ['own frok', '//  ^^^^ warning no-frok: No.'], 'not found'],
        ['the notes are others', ['own frok', FULL[0]!], 'what follows no-frok differs'],
        ['a forbidden finding is there', ['own frok', '//   ^ no warning no-frok'], 'found in spite of "no"'],
        ['no rule has the id', ['own', '// ^ no warning no-such'], 'no rule is called no-such'],
        ['it says nothing', ['own fork'], 'expects nothing'],
        ['it says there are none and there are', ['// no findings', 'own frok'], 'It says "// no findings"'],
        ['carets say nothing', ['own fork', '// ^^^ what a fork'], 'not an expectation'],
    ])('fails where %s', (_, lines, mistake) => {
        expect(run(...lines).mistakes.join('\n')).toContain(mistake);
    });

    it('fails where a mark does not close', () => {
        expect(() => run('own <|frok')).toThrow('does not close');
    });

    it('fails where a finding lands in a file around it', () => {
        const around = { 'house.cover': 'own frok' };
        expect(runFixture('// no findings\n', { ...setting, around }).mistakes[0]).toContain('lands in house.cover');
    });

    it('is made true by an update', () => {
        const wrong = ['own frok', '//   ^^^ error no-frok', 'own fork', '//  ^^^^ no warning no-frok', ''];
        const { updated } = run(...wrong);
        expect(updated).toBe(['own frok', ...FULL, 'own fork', '//  ^^^^ no warning no-frok', ''].join('\n'));
        expect(runFixture(updated, setting).mistakes).toEqual([]);
        // That nothing is found is never taken for granted.
        expect(run('own fork', '').updated).toBe('own fork\n');
    });
});

describe('a fixture of a fix', () => {
    it('compares the files as the fix leaves them', () => {
        expect(run('own frok', '//=> Write `fork`', 'own fork', '').mistakes).toEqual([]);
        expect(run('own frok', '//=> Write `fork`', 'own spoon', '').mistakes[0]).toContain('own fork');
        expect(run('own frok', '//=> Write `fork`', 'own spoon', '').updated).toBe(
            'own frok\n//=> Write `fork`\nown fork\n',
        );
        const files = ['//- house.cover', 'own frok', '//- event.cover', 'own', '//=> Write `fork`'];
        expect(run(...files, '//- house.cover', 'own fork').mistakes).toEqual([]);
    });

    it('needs one finding that offers it, by its title and its mark', () => {
        expect(run('frok frok', '//=> Write `fork`', 'fork frok').mistakes[0]).toContain('2 findings offer');
        expect(run('frok <|frok|>', '//=> Write `fork`', 'frok fork').mistakes).toEqual([]);
        expect(run('frok', '//=> Write `spoon`', 'spoon').mistakes[0]).toContain('There are:\n  Write `fork`');
    });
});
