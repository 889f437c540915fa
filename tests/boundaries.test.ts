import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../', import.meta.url));
const fixtures = fileURLToPath(new URL('boundaries/fixtures', import.meta.url));

interface Cruise {
    readonly exitCode: number | undefined;
    /** One line a violation: the rule, the importing file, what it imports. */
    readonly violations: readonly string[];
}

/** Cruises the packages below `folder` just as `npm run lint` does. */
async function cruise(folder: string): Promise<Cruise> {
    const options = ['packages', '--config', `${root}.dependency-cruiser.mjs`, '--output-type', 'err'];
    const { exitCode, stdout } = await execa('depcruise', options, {
        cwd: folder,
        preferLocal: true,
        localDir: root,
        reject: false,
    });
    const violations = stdout.split('\n').flatMap((line) => /^ *error (.+: .+ →.*)$/.exec(line)?.[1] ?? []);
    return { exitCode, violations: violations.sort() };
}

describe('import boundaries', () => {
    let found: Cruise;
    beforeAll(async () => {
        found = await cruise(fixtures);
    }, 30_000);

    // Each file makes one forbidden import; `to` is what the finding must name.
    it.each([
        ['plan/imports-reader.ts', 'plan/read-plan.ts'],
        ['service/imports-node.ts', 'crypto'],
        ['service/imports-rules.ts', 'rules/right.ts'],
        ['rules/imports-syntax-type.ts', 'grammar/tree.ts'],
        ['rules/imports-editor.ts', 'editor/index.ts'],
        ['output/imports-framework.ts', 'langium'],
        ['output/imports-protocol.ts', 'vscode-languageserver'],
    ])('%s may not import %s', (file, to) => {
        const from = `not-in-allowed: packages/language/src/${file} → `;
        const of = found.violations.filter((violation) => violation.startsWith(from));
        expect(of).toHaveLength(1);
        expect(of[0]).toContain(to);
    });

    it('lets the command line see the entry points of the language only', () => {
        expect(found.violations.filter((violation) => violation.includes(': packages/cli/'))).toEqual([
            'not-in-allowed: packages/cli/src/imports-inside.ts → packages/language/src/service/right.ts',
        ]);
    });

    it('reports a circle and an import that is not installed', () => {
        const rules = found.violations.filter((violation) => !violation.startsWith('not-in-allowed'));
        expect(rules.map((violation) => violation.split(':')[0])).toEqual(['no-circle', 'no-lost-import']);
    });

    it('allows what is left', () => {
        const files = found.violations.map((violation) => /src\/(\S+)/.exec(violation)?.[1] ?? violation);
        expect(files.filter((file) => !/imports-|circle-/.test(file))).toEqual([]);
        expect(found.exitCode).toBeGreaterThan(0);
    });
});
