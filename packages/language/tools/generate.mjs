// Writes everything that is derived from the sources: the parser and its syntax tree, then what each generator makes.
//   npm run generate              writes what has changed
//   npm run generate -- --check   writes nothing and fails when a committed file is stale
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { generators } from './generators.mjs';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const isCheck = process.argv.includes('--check');

/** Runs the parser generator; its talk is shown only when it has something to say. */
function generateParser() {
    const command = join(root, 'node_modules', 'langium-cli', 'bin', 'langium.js');
    try {
        const talk = execFileSync(process.execPath, [command, 'generate'], { cwd: root, stdio: 'pipe' }).toString();
        if (/warn|error|ambigu/i.test(talk)) {
            process.stderr.write(talk);
        }
    } catch (failure) {
        process.stderr.write(`${failure.stdout ?? ''}${failure.stderr ?? ''}`);
        process.stderr.write('The grammar was not generated.\n');
        process.exit(1);
    }
}

/** The grammar stands in the program as JSON: its line breaks and indents are more than half of it. */
function tightenGrammar() {
    const path = join(root, 'packages/language/src/grammar/generated/grammar.ts');
    const text = readFileSync(path, 'utf8');
    writeFileSync(
        path,
        text.replace(/`\{.*\}`/s, (json) => json.replace(/\n\s*/g, '')),
    );
}

/** @returns true when the file on disk differs from `text` */
function isStale(path, text) {
    return !existsSync(path) || readFileSync(path, 'utf8') !== text;
}

generateParser();
tightenGrammar();
const stale = [];
for (const generator of generators) {
    for (const output of await generator.outputs({ root })) {
        const path = join(root, output.path);
        if (!isStale(path, output.text)) {
            continue;
        }
        if (isCheck && output.isCommitted) {
            stale.push(relative(root, path).split(sep).join('/'));
            continue;
        }
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(path, output.text);
    }
}
if (stale.length > 0) {
    process.stderr.write(`Stale generated files; run \`npm run generate\` and commit them:\n  ${stale.join('\n  ')}\n`);
    process.exit(1);
}
