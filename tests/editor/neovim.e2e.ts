import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Talk } from '../support/talk.js';

// Another editor than the one the extension is for: Debian's Neovim with its own client, over stdio.

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

interface Told {
    readonly words: string;
    readonly message: string;
    readonly severity: number;
    readonly code: string;
}
interface Out {
    readonly found: readonly Told[];
    readonly fixes: readonly string[];
    readonly left: readonly Told[];
    readonly text: string;
    readonly failure: string | null;
}

let folder: string;
let out: Out;
beforeAll(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'underliner-neovim-')));
    cpSync(path('../talk/hall'), folder, { recursive: true });
    const env = {
        ...process.env,
        NODE: process.execPath,
        PROGRAM: path('../../packages/cli/bin/underliner.cjs'),
        PLAN: join(folder, 'supper.cover'),
        OUT: join(folder, 'out.json'),
    };
    const args = ['--headless', '--clean', '-c', `luafile ${path('neovim.lua')}`, '-c', 'qall!'];
    const { status, stderr } = spawnSync('nvim', args, {
        env,
        encoding: 'utf8',
        timeout: 60_000,
        stdio: ['ignore', 'pipe', 'pipe'],
    });
    if (status !== 0) {
        throw new Error(`Neovim left with exit code ${status}: ${stderr}`);
    }
    out = JSON.parse(readFileSync(env.OUT, 'utf8')) as Out;
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('in Neovim', () => {
    it('the same is found and mended as by a plain client', async () => {
        expect(out.failure).toBeNull();
        const { talk } = await Talk.start(folder);
        try {
            await talk.open('supper.cover');
            await talk.type('supper.cover', 'soup-spoon', 'soup-spon');
            const told = await talk.findings('supper.cover', (all) => all.some(({ code }) => code === 'unknown-name'));
            const plain = told.map(({ range, message, severity, code }) => ({
                words: talk
                    .text('supper.cover')
                    .slice(talk.offset('supper.cover', range.start), talk.offset('supper.cover', range.end)),
                message,
                severity,
                code,
            }));
            expect(out.found).toEqual(plain);
            const fixes = await talk.fixes('supper.cover', 'soup-spon', 'quickfix');
            expect(out.fixes).toEqual(expect.arrayContaining(fixes.map(({ title }) => title)));
        } finally {
            talk.kill();
        }
        expect(out.left).toEqual([]);
        expect(out.text).toBe(readFileSync(path('../talk/hall/supper.cover'), 'utf8'));
    });
});
