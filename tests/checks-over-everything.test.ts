import { rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { brokenFixes, checkSample, rewritten, saidBy, unsettled } from './support/fix-claims.js';
import { examplePlans, fixturePlans, ruleExamples, type Sample } from './support/samples.js';

// What holds for every plan there is, with no code for any of them.
vi.setConfig({ testTimeout: 120_000 });

const root = fileURLToPath(new URL('../', import.meta.url));
const plans = [...examplePlans(), ...fixturePlans()];
const named = plans.map((sample) => [sample.name, sample] as const);
const everything = [...plans, ...ruleExamples('wrong'), ...ruleExamples('right')];

describe('every plan', () => {
    it.each(named)('has fixes that hold what they promise: %s', (_, sample) => {
        expect(brokenFixes(sample)).toEqual([]);
        expect(unsettled(sample)).toEqual([]);
    });

    it.each(named)('is found the same in other line ends, tabs and comments: %s', (_, sample) => {
        const said = saidBy(checkSample(sample));
        for (const other of rewritten(sample)) {
            expect(saidBy(checkSample(other)), other.name).toEqual(said);
        }
    });

    it('breaks no rule', () => {
        expect(
            everything.flatMap((sample) =>
                checkSample(sample).broken.map(({ rule, error }) => `${sample.name}: ${rule}: ${String(error)}`),
            ),
        ).toEqual([]);
    });

    it('is found the same twice, and wherever it lies', () => {
        for (const sample of everything) {
            const once = JSON.stringify(checkSample(sample).findings);
            expect(JSON.stringify(checkSample(sample).findings), sample.name).toBe(once);
            const [one, other] = ['one/', 'two ü/'].map((folder) =>
                JSON.stringify(checkSample(moved(sample, folder)).findings).replaceAll(folder, ''),
            );
            expect(other, sample.name).toBe(one);
        }
    });
});

function moved(sample: Sample, folder: string): Sample {
    const texts = Object.entries(sample.texts).map(([file, text]) => [folder + file, text]);
    return { ...sample, file: folder + sample.file, texts: Object.fromEntries(texts) as Record<string, string> };
}

describe('every plan, on another machine', () => {
    const bundle = join(root, 'node_modules', '.underliner', `checks-${process.pid}.mjs`);
    const samples = join(root, 'node_modules', '.underliner', `checks-${process.pid}.json`);

    beforeAll(async () => {
        writeFileSync(samples, JSON.stringify(everything));
        await build({
            stdin: {
                contents: `
                    import { readFileSync } from 'node:fs';
                    import { check } from './packages/language/src/check.ts';
                    import { filesInMemory } from './packages/language/src/plan/files.ts';
                    const samples = JSON.parse(readFileSync(${JSON.stringify(samples)}, 'utf8'));
                    const seen = samples.map(({ file, texts }) => {
                        const { findings, service } = check(file, filesInMemory(texts));
                        return { findings, service };
                    });
                    const { timeZone, locale } = Intl.DateTimeFormat().resolvedOptions();
                    console.log(JSON.stringify({ machine: \`\${timeZone} \${locale}\`, seen }));`,
                resolveDir: root,
            },
            outfile: bundle,
            bundle: true,
            format: 'esm',
            platform: 'node',
            packages: 'external',
            conditions: ['underliner-source'],
            logLevel: 'error',
        });
    }, 30_000);
    afterAll(() => {
        rmSync(bundle, { force: true });
        rmSync(samples, { force: true });
    });

    it('is found the same in another time zone, locale and working folder', async () => {
        const on = async (env: Record<string, string>, cwd: string) => {
            const { stdout } = await execa('node', [bundle], { cwd, env });
            const { machine, seen } = JSON.parse(stdout) as { machine: string; seen: unknown[] };
            return { machine, seen };
        };
        const here = await on({ TZ: 'America/Halifax', LC_ALL: 'en_US.UTF-8' }, root);
        const there = await on({ TZ: 'Pacific/Kiritimati', LC_ALL: 'tr_TR.UTF-8' }, tmpdir());
        expect([here.machine, there.machine]).toEqual(['America/Halifax en-US', 'Pacific/Kiritimati tr-TR']);
        everything.forEach(({ name }, index) => expect(there.seen[index], name).toEqual(here.seen[index]));
    }, 300_000);
});
