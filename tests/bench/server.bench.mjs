// How fast the language server is, beside general-purpose ones and beside the framework's as it comes.
//   npm run bench:server                  measures, writes docs/performance.md, and fails where a goal is missed
//   node tests/bench/server.bench.mjs     the same, and writes nothing; sizes may be named: `200 2000`
// Every server runs over stdio on documents with as many lines. They are measured in turn, key by key, in one run, so that
// whatever else the machine does falls on all of them alike; each when all are at rest, so that none waits for what the one
// before it still does behind its answer. Ratios can fail, milliseconds never.
import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { writeSection } from './performance-page.mjs';
import { Client } from './server/client.mjs';
import { schema, sizes } from './server/documents.mjs';
import { copyProgram, installServers, makeBareServer, serversWith } from './server/servers.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = join(root, 'node_modules', '.underliner', 'bench', 'server');

/** Keys typed for each sort of place: each is put in and taken out again, so that twice as many are measured. */
const KEYS_EACH = 10;
const WARM_KEYS = 5;
const BURST = { keys: 100, pace: 33 };
const ASKED = 20;
/** Servers are at rest when all together have computed for less than `busy` in a `pause`, both ms; after `most` pauses nobody waits. */
const REST = { pause: 30, busy: 1.5, most: 100 };

const atRank = (values, share) =>
    values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.ceil(values.length * share) - 1)];
const p50 = (values) => atRank(values, 0.5);
const p95 = (values) => atRank(values, 0.95);

/** So many places in a text, evenly over all of it. */
function placesIn(text, { pattern, key }, count) {
    const found = [...text.matchAll(pattern)].map((match) => match.index + match[0].length);
    return Array.from({ length: count }, (_, index) => {
        const offset = found[Math.floor(((index + 0.5) / count) * found.length)];
        const line = text.slice(0, offset).split('\n').length - 1;
        return { line, at: offset - text.lastIndexOf('\n', offset - 1) - 1, key };
    });
}

const positionOf = ({ line, at }) => ({ line, character: at });

async function measureSize(size, servers) {
    const home = join(folder, String(size.lines));
    mkdirSync(home, { recursive: true });
    const running = [];
    for (const server of servers) {
        const text = server.document(size);
        const own = join(home, server.id);
        mkdirSync(own, { recursive: true });
        const path = join(own, `event.${server.extension}`);
        const client = await Client.start(server, pathToFileURL(own).href);
        const opened = await client.open(pathToFileURL(path).href, text);
        const sorts = Object.values(server.keys);
        const spread = (count) =>
            sorts.flatMap((sort) => placesIn(text, sort, count)).toSorted((a, b) => mixed(a) - mixed(b));
        running.push({ server, client, text, opened, spread, keys: [], processor: 0, completions: [], answers: {} });
    }
    const eachServer = async (work) => {
        for (const run of running) {
            await work(run);
        }
    };
    const atRest = async () => {
        const spent = () => running.reduce((sum, { client }) => sum + (client.processorTime ?? 0), 0);
        let before = spent();
        for (let pauses = 0; pauses < REST.most; pauses++) {
            await new Promise((resolve) => setTimeout(resolve, REST.pause));
            const now = spent();
            if (now - before < REST.busy) {
                return;
            }
            before = now;
        }
    };

    // ------------------------------------------------------------ single keys
    const key = async (run, index, isMeasured) => {
        const place = run.places[index % run.places.length];
        for (const typed of [place.key, '']) {
            await atRest();
            const before = run.client.processorTime;
            const took = await run.client.typeAndWait(place, typed);
            if (isMeasured) {
                run.keys.push(took);
                run.processor += run.client.processorTime - before;
            }
        }
    };
    running.forEach((run) => (run.places = run.spread(KEYS_EACH)));
    for (let index = 0; index < WARM_KEYS; index++) {
        await eachServer((run) => key(run, index * 7, false));
    }
    const most = Math.max(...running.map(({ places }) => places.length));
    for (let index = 0; index < most; index++) {
        await eachServer((run) => key(run, index, true));
    }

    // ------------------------------------------------------------ completion behind a key
    for (let index = 0; index < ASKED; index++) {
        await eachServer(async (run) => {
            const { client, places } = run;
            if (!client.capabilities.completionProvider) {
                return;
            }
            const place = places[(index * 3) % places.length];
            await atRest();
            const start = performance.now();
            await client.type(place, place.key);
            await client.about('textDocument/completion', { position: positionOf({ ...place, at: place.at + 1 }) });
            run.completions.push(performance.now() - start);
            await client.typeAndWait(place, '');
        });
    }

    // ------------------------------------------------------------ questions about a text at rest
    const questions = {
        hover: ['hoverProvider', 'textDocument/hover', (place) => ({ position: positionOf(place) })],
        symbols: ['documentSymbolProvider', 'textDocument/documentSymbol', () => ({})],
        tokens: ['semanticTokensProvider', 'textDocument/semanticTokens/full', () => ({})],
        formatting: [
            'documentFormattingProvider',
            'textDocument/formatting',
            () => ({ options: { tabSize: 4, insertSpaces: true } }),
        ],
    };
    for (const [name, [provider, method, params]] of Object.entries(questions)) {
        for (let index = 0; index < ASKED; index++) {
            await eachServer(async (run) => {
                if (!run.client.capabilities[provider]) {
                    return;
                }
                await atRest();
                const start = performance.now();
                await run.client.about(method, params(run.places[(index * 3) % run.places.length]));
                (run.answers[name] ??= []).push(performance.now() - start);
            });
        }
    }

    // ------------------------------------------------------------ a burst
    await eachServer(async (run) => {
        await atRest();
        // One place, as someone who writes a word; a comment or a title, so that the text stays one that can be read.
        const [place] = placesIn(run.text, run.server.keys.titles, 1);
        run.burst = await run.client.burst(Array(BURST.keys).fill(place), 'x', BURST.pace);
    });

    for (const run of running) {
        run.memory = run.client.peakMemory;
        await run.client.end();
    }
    return running.map(({ server, opened, keys, processor, completions, answers, burst, memory }) => ({
        id: server.id,
        title: server.title,
        opened,
        keys: keys.length,
        key50: p50(keys),
        key95: p95(keys),
        processor: processor / keys.length || undefined,
        silence: burst.silence,
        settled: burst.settled,
        told: burst.told,
        completion: completions.length > 0 ? p95(completions) : undefined,
        ...Object.fromEntries(Object.entries(answers).map(([name, values]) => [name, p50(values)])),
        memory,
    }));
}

/** An order that jumps about in the text, the same every time. */
const mixed = ({ line, at }) => (line * 7919 + at * 104_729) % 1009;

/** What must hold between figures of one run. `most` times the other server's. */
const goals = [
    { lines: 200, figure: 'key95', of: 'bare', most: 2.5, says: 'key → findings, p95' },
    { lines: 200, figure: 'key95', of: 'yaml', most: 0.1, says: 'key → findings, p95' },
    { lines: 2_000, figure: 'key95', of: 'bare', most: 2, says: 'key → findings, p95' },
    { lines: 2_000, figure: 'key95', of: 'yaml', most: 0.2, says: 'key → findings, p95' },
    { lines: 10_000, figure: 'key95', of: 'yaml', most: 0.5, says: 'key → findings, p95' },
    { lines: 2_000, figure: 'completion', of: 'yaml', most: 0.5, says: 'completion, p95' },
    { lines: 2_000, figure: 'silence', of: 'yaml', most: 0.1, says: 'longest silence while typing' },
    { lines: 10_000, figure: 'silence', of: 'yaml', most: 0.1, says: 'longest silence while typing' },
    { lines: 2_000, figure: 'settled', of: 'yaml', most: 0.15, says: 'last key → settled' },
    { lines: 2_000, figure: 'memory', of: 'yaml', most: 0.85, says: 'peak memory' },
    { lines: 10_000, figure: 'memory', of: 'yaml', most: 0.85, says: 'peak memory' },
];

function reached(results) {
    return goals.flatMap((goal) => {
        const rows = results.find(({ lines }) => lines === goal.lines)?.rows;
        const [ours, other] = ['underliner', goal.of].map((id) => rows?.find((row) => row.id === id));
        return ours?.[goal.figure] !== undefined && other?.[goal.figure] !== undefined
            ? [{ ...goal, ratio: ours[goal.figure] / other[goal.figure], other: other.title }]
            : [];
    });
}

const milliseconds = (value) => (value === undefined ? '–' : value < 10 ? value.toFixed(1) : value.toFixed(0));

function page(results, judged) {
    const columns = [
        ['open', 'opened'],
        ['key p50', 'key50'],
        ['key p95', 'key95'],
        ['processor a key', 'processor'],
        ['silence', 'silence'],
        ['settled', 'settled'],
        ['completion p95', 'completion'],
        ['hover', 'hover'],
        ['symbols', 'symbols'],
        ['tokens', 'tokens'],
        ['formatting', 'formatting'],
    ];
    const tables = results.map(({ lines, guests, rows }) => {
        const body = rows.map(
            (row) =>
                `| ${row.title} | ${columns.map(([, figure]) => milliseconds(row[figure])).join(' | ')} | ${row.memory?.toFixed(0) ?? '–'} MB |`,
        );
        return `### ${lines.toLocaleString('en')} lines, ${guests.toLocaleString('en')} guests

| Server | ${columns.map(([title]) => title).join(' | ')} | peak memory |
| --- | ${columns.map(() => '---:').join(' | ')} | ---: |
${body.join('\n')}`;
    });
    const rows = judged.map(
        ({ lines, says, other, most, ratio }) =>
            `| ${says}, ${lines.toLocaleString('en')} lines | ${other} | ${most} | ${ratio.toFixed(2)} | ${ratio <= most ? 'reached' : '**missed**'} |`,
    );
    return `Written by \`npm run bench:server\`, which installs the other servers in \`tests/bench/servers\` the first time.

Each server runs over stdio with one document open, of as many lines for each; ours is one event in one file (\`tests/bench/server/documents.mjs\`):
the banquet of 84 guests, and the same for more guests, each named and seated, with the pieces, kinds and drinks the house
describes itself. All rules and computations are on; nothing waits for a pause.

- **open**: the document opened → its findings. **key**: one character put in or taken out → findings of that text, of ${results[0]?.rows[0]?.keys ?? 0}
  keys over all of the text, in names, figures, comments, titles and the words of clauses (so that half of those leave a text that can't be
  read), one at a time, after ${WARM_KEYS} that do not count. The servers take turns, key by key, each when all
  are at rest; so ours has had time to warm up behind the first findings, which a chef who types at once has not: it types in the same plan, too
  (\`editor/warm-up.ts\`). It types for eight seconds of computing at most; left alone, on a machine where an empty Node process
  takes 110 ms, it was done 9 s after the findings at 200 lines and 10 at 2,000, and had taken 13 and 15 s of the processor. When
  the engine has tidied up at rest, 15 s later, it types once more, for two seconds.
  **processor a key**: the time that all threads of the server computed for one, the mean; unlike the others it hardly grows
  when the machine has much else to do.
- **silence**, **settled**: ${BURST.keys} keys, one every ${BURST.pace} ms, as fast as a held key repeats: the longest time without findings, and
  from the last key to the findings of the whole.
- **completion** is asked for right behind a key, and the time holds both. Other answers: the median of ${ASKED}, the text at rest.
- All in ms. JSON is asked for its findings (a client would ask as often), TypeScript’s memory holds the compiler’s process.
- The bare server is the framework’s as it comes, with a grammar of a few rules (\`tests/bench/bare\`), no names and no checks.

Machine: ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}, Node ${process.versions.node}, ${process.platform} ${process.arch}. Milliseconds depend on it; ratios within this run are what counts.

${tables.join('\n\n')}

### Goals

| What | Beside | At most | Here | |
| --- | --- | ---: | ---: | --- |
${rows.join('\n')}
`;
}

mkdirSync(folder, { recursive: true });
installServers();
const bareServer = join(folder, 'bare.cjs');
await makeBareServer(bareServer);
const schemaFile = join(folder, 'schema.json');
writeFileSync(schemaFile, JSON.stringify(schema));
const named = process.argv
    .slice(2)
    .filter((argument) => /^\d+$/.test(argument))
    .map(Number);
const only = process.argv
    .find((argument) => argument.startsWith('--only='))
    ?.slice(7)
    .split(',');
const servers = serversWith(copyProgram(join(folder, 'program')), bareServer, pathToFileURL(schemaFile).href).filter(
    ({ id }) => !only || only.includes(id),
);
const results = [];
for (const size of sizes.filter(({ lines }) => named.length === 0 || named.includes(lines))) {
    process.stderr.write(`${size.lines} lines …\n`);
    results.push({ ...size, rows: await measureSize(size, servers) });
}
const judged = reached(results);
const text = page(results, judged);
process.stdout.write(text);
if (process.argv.includes('--write')) {
    await writeSection('The language server', text);
}
const missed = judged.filter(({ ratio, most }) => ratio > most);
for (const { lines, says, other, most, ratio } of missed) {
    process.stderr.write(
        `Missed: ${says} at ${lines} lines is ${ratio.toFixed(2)} times ${other}’s, wanted at most ${most}.\n`,
    );
}
process.exitCode = missed.length > 0 ? 1 : 0;
