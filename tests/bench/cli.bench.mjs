// How long the command line takes to start and to do its work, as multiples of an empty Node process.
//   npm run bench                      measures, writes docs/performance.md, and fails when a multiple is beyond its limit
//   node tests/bench/cli.bench.mjs     the same, and writes nothing
// All cases run interleaved in one go, so that whatever else the machine does falls on all of them alike.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { writeSection } from './performance-page.mjs';
import { measureService } from './service.bench.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = join(root, 'node_modules', '.underliner', 'bench');
const program = 'packages/cli/bin/underliner.cjs';
const plan = 'tests/bench/banquet/banquet.cover';
const RUNS = 20;

/** `limit` in multiples of the empty process; only these can fail. */
const cases = [
    { title: 'an empty process', args: ['-e', '0'], shown: 'node -e 0' },
    { title: 'the version', args: [program, '--version'], shown: 'underliner --version', limit: 1.15 },
    { title: 'check, 200 lines', args: [program, 'check', plan], shown: 'underliner check banquet.cover', limit: 2.0 },
    {
        title: 'compile, 200 lines',
        args: [program, 'compile', plan],
        shown: 'underliner compile banquet.cover',
        limit: 2.4,
    },
    {
        title: 'check, a text that can’t be read',
        args: [program, 'check', '-'],
        shown: 'underliner check - < broken.cover',
    },
    { title: 'explain', args: [program, 'explain', 'three-per-side'], shown: 'underliner explain three-per-side' },
    {
        title: 'the framework’s floor, 200 lines',
        args: [join(folder, 'floor.cjs'), join(folder, 'store.floor')],
        shown: 'tests/bench/floor',
    },
];

/** The floor: the framework with the smallest language, bundled like the program but for its compiled code. */
async function makeFloor() {
    mkdirSync(folder, { recursive: true });
    const floor = join(root, 'tests', 'bench', 'floor');
    const generator = join(root, 'node_modules', 'langium-cli', 'bin', 'langium.js');
    execFileSync(process.execPath, [generator, 'generate'], { cwd: floor, stdio: 'pipe' });
    await build({
        entryPoints: [join(floor, 'floor.ts')],
        outfile: join(folder, 'floor.cjs'),
        bundle: true,
        minify: true,
        keepNames: true,
        format: 'cjs',
        platform: 'node',
        target: 'node20.19',
        mainFields: ['module', 'main'],
        define: { 'process.env.NODE_ENV': '"production"' },
        logLevel: 'error',
    });
    const name = (number) => `piece-${String.fromCharCode(97 + (number % 26), 97 + Math.floor(number / 26))}`;
    const lines = Array.from({ length: 100 }, (_, number) => `piece ${name(number)} 100\npull 10 ${name(number)}\n`);
    writeFileSync(join(folder, 'store.floor'), lines.join(''));
}

function measure() {
    const times = cases.map(() => []);
    // Without its last brace, so that the framework is called for.
    const broken = readFileSync(join(root, plan), 'utf8').trimEnd().slice(0, -1);
    for (let run = 0; run <= RUNS; run++) {
        for (const [index, { title, args }] of cases.entries()) {
            const start = process.hrtime.bigint();
            const { status, stderr } = spawnSync(process.execPath, args, {
                cwd: root,
                input: broken,
                encoding: 'utf8',
            });
            const milliseconds = Number(process.hrtime.bigint() - start) / 1e6;
            if (status === 2 || status === null || stderr !== '') {
                throw new Error(`${title}: ${stderr}`);
            }
            // The first round fills the disk's cache.
            if (run > 0) {
                times[index].push(milliseconds);
            }
        }
    }
    return times.map(median);
}

function median(values) {
    const sorted = values.toSorted((a, b) => a - b);
    const middle = sorted.length / 2;
    return (sorted[Math.floor(middle)] + sorted[Math.ceil(middle) - 1]) / 2;
}

function page(medians) {
    const rows = cases.map(({ title, shown, limit }, index) => {
        const multiple = (medians[index] / medians[0]).toFixed(2);
        return `| ${title} | \`${shown}\` | ${medians[index].toFixed(0)} ms | ${multiple} | ${limit?.toFixed(2) ?? ''} |`;
    });
    return `Written by \`npm run bench\`.

Each figure is the median of ${RUNS} cold starts; all cases run interleaved in one
process run. What counts is the multiple of an empty Node process; milliseconds depend on the machine and never fail.

Machine: ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}, Node ${process.versions.node}, ${process.platform} ${process.arch}.

| What | Command | Median | Multiple | Limit |
| --- | --- | ---: | ---: | ---: |
${rows.join('\n')}

The plan is \`${plan}\`. The floor is what the language framework costs with a language of two
rules (\`tests/bench/floor\`), bundled the same way and without a code cache.
`;
}

await makeFloor();
const medians = measure();
const service = await measureService();
const text = page(medians);
process.stdout.write(`${text}\n${service.page}`);
if (process.argv.includes('--write')) {
    await writeSection('The command line', text);
    await writeSection('The whole computation', service.page);
}
const slow = cases.filter(({ limit }, index) => limit !== undefined && medians[index] / medians[0] > limit);
for (const { title, limit } of slow) {
    process.stderr.write(`Too slow: ${title} takes more than ${limit} times an empty process.\n`);
}
for (const line of service.tooSlow) {
    process.stderr.write(`${line}\n`);
}
process.exitCode = slow.length + service.tooSlow.length > 0 ? 1 : 0;
