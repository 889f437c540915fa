// How long the whole computation of an evening takes, and how it grows with the guests.
//   node tests/bench/service.bench.mjs     measures and prints; `npm run bench` writes it into docs/performance.md
// Milliseconds are reported. What fails is growth: ten times the guests at most fifteen times the work, in one run.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../../', import.meta.url));
const examples = join(root, 'examples', 'saltmarsh-hall');
const RUNS = 7;
const MOST_GROWTH = 15;

/** The lantern supper for so many guests, with the room, the people and the stock for them. @param turn makes each text new to every cache */
function supper(guests, turn) {
    const times = guests / 120;
    const read = (name) => readFileSync(join(examples, name), 'utf8');
    const tables = 12 * times;
    const side = 3.4 * Math.ceil(Math.sqrt(tables));
    const room = `room "Great hall" ${(side + 6 + turn / 1000).toFixed(3)} m by ${(side + 4).toFixed(3)} m {
    at 20 °C
    table T1 to T${tables}: round 72 inch, 10 seats, 1 accessible
}
team { captain 1  servers ${Math.round(10 * times ** 1.1)}  runners ${Math.round(5 * times ** 1.25)}  plating-lines ${Math.round(4 * times ** 1.1)} at 12 plates per min each }
`;
    const numbers = (text) =>
        text
            .replace(/guests 84 guaranteed 80 set for \d+/, `guests ${guests} set for ${Math.round(guests * 1.04)}`)
            .replace(/^( *)6 vegetarian$/m, `$1${Math.round(9 * times)} vegetarian`)
            .replace(/^( *)2 without gluten$/m, `$1${Math.round(3 * times)} without gluten`)
            .replace('is steak for 40', `is steak for ${Math.round(guests * 0.48)}`);
    const stock = (text) =>
        text.replaceAll(/\bown [^\n]*/g, (line) =>
            line.replaceAll(/\d+(?= [a-z])/g, (count) => `${Math.ceil(count * times * 1.5)}`),
        );
    const recipes = readdirSync(join(examples, 'recipes')).map((name) => [`recipes/${name}`, read(`recipes/${name}`)]);
    return {
        ...Object.fromEntries(recipes),
        'house.cover': stock(read('house.cover')),
        'cupboard.cover': read('cupboard.cover'),
        'long-gallery.cover': room,
        'supper.cover': numbers(read('lantern-supper.cover')).replace(
            'lasts 35 min',
            `lasts ${(35 + turn / 1000).toFixed(3)} min`,
        ),
    };
}

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** @returns lines of Markdown, and what is too slow */
export async function measureService() {
    const outfile = join(root, 'node_modules', '.underliner', 'bench', 'service.mjs');
    await build({
        stdin: {
            contents: "export { check, filesInMemory, planJson } from './packages/language/src/index.ts';",
            resolveDir: root,
        },
        outfile,
        bundle: true,
        format: 'esm',
        platform: 'node',
        target: 'node20.19',
        conditions: ['underliner-source'],
        banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
        logLevel: 'error',
    });
    const { check, filesInMemory, planJson } = await import(pathToFileURL(outfile).href);

    let turn = 0;
    const time = (guests, change) => {
        const texts = supper(guests, (turn += 1));
        const first = change && check('supper.cover', filesInMemory(texts));
        if (first) {
            planJson(first);
        }
        const files = filesInMemory(change ? { ...texts, 'supper.cover': change(texts['supper.cover']) } : texts);
        const start = performance.now();
        const checked = check('supper.cover', files);
        // Every section is worked out for it.
        planJson(checked);
        return performance.now() - start;
    };
    const key = (text) => text.replace('"Quince sorbet"', '"Quince sorbets"');
    const cases = [
        { title: '120 guests', guests: 120 },
        { title: '1,200 guests', guests: 1200 },
        { title: '1,200 guests, one key typed in a course since', guests: 1200, change: key },
    ];
    const times = cases.map(() => []);
    for (let run = 0; run <= RUNS; run++) {
        for (const [index, { guests, change }] of cases.entries()) {
            const taken = time(guests, change);
            // The first round warms the code.
            if (run > 0) {
                times[index].push(taken);
            }
        }
    }
    const medians = times.map(median);
    const growth = medians[1] / medians[0];
    const rows = cases.map(
        ({ title }, index) =>
            `| ${title} | ${medians[index].toFixed(0)} ms | ${(medians[index] / medians[0]).toFixed(1)} |`,
    );
    const page = `Reading, every check and every section of the compiled plan of a supper of seven courses, the median of ${RUNS} runs in one warm
process, nothing kept from one run to the next but for the last row. Ten times the guests may take ${MOST_GROWTH} times as long at
most; here it is ${growth.toFixed(1)} times.

| Supper | Median | Multiple |
| --- | ---: | ---: |
${rows.join('\n')}

\`node tests/bench/service.bench.mjs\` makes these figures alone.
`;
    return {
        page,
        tooSlow: growth > MOST_GROWTH ? [`Ten times the guests take ${growth.toFixed(1)} times as long.`] : [],
    };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
    const { page, tooSlow } = await measureService();
    process.stdout.write(page);
    process.stderr.write(tooSlow.map((line) => `${line}\n`).join(''));
    process.exitCode = tooSlow.length > 0 ? 1 : 0;
}
