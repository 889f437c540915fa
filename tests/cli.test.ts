import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { readCliScript, runCliScript, writeCliScript } from './support/cli-script.js';

// Each file of tests/cli is a script: a sentence, the files there are, and commands with what they write and return.
// `UPDATE=1` writes what the commands do into the scripts; the difference is looked at before it is committed.

const folder = join(import.meta.dirname, 'cli');
const scripts = readdirSync(folder).filter((name) => name.endsWith('.txt'));

test.each(scripts)('%s', { timeout: 60_000 }, (name) => {
    const path = join(folder, name);
    const written = readFileSync(path, 'utf8');
    const script = readCliScript(written);
    const place = mkdtempSync(join(tmpdir(), `underliner-${basename(name, '.txt')}-`));
    try {
        const actual = writeCliScript(runCliScript(script, place));
        if (process.env.UPDATE) {
            writeFileSync(path, actual);
        } else {
            expect(actual).toBe(written);
        }
    } finally {
        rmSync(place, { recursive: true });
    }
});
