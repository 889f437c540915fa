import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// The examples of docs/api.md, run as those would who take the package into a program of their own: against the build.

const root = fileURLToPath(new URL('../', import.meta.url));
const browserExample = join(root, 'examples/embedding/browser');
let folder: string;
beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'underliner-embedding-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('in Node', () => {
    const run = (...args: string[]) =>
        spawnSync(process.execPath, ['examples/embedding/node/check-and-draw.mjs', ...args], {
            cwd: root,
            encoding: 'utf8',
        });

    it('parses, checks, compiles and draws a plan with the files it uses', () => {
        const { stdout, stderr, status } = run('examples/first-plan.cover', folder);
        expect(stderr).toBe('');
        expect(status).toBe(0);
        const [title, finding] = stdout.split('\n');
        expect(title).toBe('Harbour supper, 4 courses.');
        expect(finding).toContain('examples/first-plan.cover:13:5: warning: The cover has 4 pieces left of the plate');
        const plan = JSON.parse(readFileSync(join(folder, 'first-plan.plan.json'), 'utf8')) as { file: string };
        expect(plan.file).toBe('examples/first-plan.cover');
        expect(readFileSync(join(folder, 'first-plan.svg'), 'utf8')).toMatch(/^<svg .*<\/svg>\n$/s);
    });

    it('says what is wrong in place of a plan', () => {
        const refused = run('examples/wrong-plans/croutons-for-the-coeliac.cover', folder);
        expect(refused.status).toBe(1);
        expect(refused.stdout).toContain(': error: ');
        expect(existsSync(join(folder, 'croutons-for-the-coeliac.plan.json'))).toBe(false);
        const missing = run('examples/gone.cover', folder);
        expect({ status: missing.status, said: missing.stderr }).toEqual({
            status: 2,
            said: 'examples/gone.cover can’t be read.\n',
        });
    });
});

describe('in a browser', () => {
    const bundle = async (entry: string, contents?: string) => {
        const stdin =
            contents === undefined ? undefined : { contents, resolveDir: browserExample, loader: 'ts' as const };
        const { outputFiles, warnings } = await build({
            absWorkingDir: root,
            ...(stdin ? { stdin } : { entryPoints: [entry] }),
            bundle: true,
            format: 'iife',
            globalName: 'example',
            platform: 'browser',
            target: 'es2022',
            write: false,
            logLevel: 'silent',
        });
        expect(warnings).toEqual([]);
        return outputFiles[0]!.text;
    };

    it('needs nothing of Node', async () => {
        const script = await bundle('', "export * from 'underliner-language';");
        // What every browser and worker has, and nothing else.
        const context = createContext({
            console,
            crypto,
            TextDecoder,
            TextEncoder,
            URL,
            setTimeout,
            clearTimeout,
            queueMicrotask,
        });
        runInContext(script, context);
        const said = runInContext(
            `(() => {
                const text = 'menu { course soup "Leek" { served in soup-bowll } }';
                const { calendar, parse, check, compile, draw, filesInMemory, listOf, listText } = example;
                const event = 'event "A" { date 2026-10-17 zone America/Halifax seated 19:00 ends 23:00 guests 2 } ';
                const files = filesInMemory({ 'a.cover': text, 'b.cover': text + ' }', 'c.cover': event + text });
                return JSON.stringify({
                    courses: parse('a.cover', text).menus[0].courses.length,
                    findings: check('a.cover', files).findings.map(({ rule }) => rule),
                    unread: parse('b.cover', text + ' }').syntax.length,
                    compiled: compile('a.cover', files).text,
                    picture: draw(check('a.cover', files), { of: 'cover' }).slice(0, 4),
                    list: listText(listOf(check('c.cover', files), 'pull'), 'csv').split(',')[0],
                    calendar: calendar(check('c.cover', files)).text.split('\\r\\n')[0],
                });
            })()`,
            context,
        ) as string;
        expect(JSON.parse(said)).toMatchObject({
            courses: 1,
            unread: 1,
            picture: '<svg',
            list: 'Store',
            calendar: 'BEGIN:VCALENDAR',
        });
        expect((JSON.parse(said) as { findings: string[] }).findings).toContain('unknown-name');
    });

    const browser = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(existsSync);

    // A machine without a browser still runs the bundle, above.
    it.skipIf(browser === undefined)('checks a plan while it is typed, and draws it', async () => {
        const html = readFileSync(join(browserExample, 'index.html'), 'utf8');
        const script = await bundle('examples/embedding/browser/page.ts');
        const window = await chromium.launch({ executablePath: browser, args: ['--no-sandbox', '--disable-gpu'] });
        try {
            const page = await window.newPage({ viewport: { width: 1280, height: 900 } });
            const failures: string[] = [];
            page.on('pageerror', (error) => failures.push(error.message));
            page.on('console', (message) => (message.type() === 'error' ? failures.push(message.text()) : undefined));
            await page.route('**/*', (route) => {
                const isScript = route.request().url().endsWith('/page.js');
                return route.fulfill({
                    contentType: isScript ? 'text/javascript' : 'text/html; charset=utf-8',
                    body: isScript ? script : html,
                });
            });
            await page.goto('http://saltmarsh.example/');
            expect(await page.textContent('#event')).toBe('Harbour supper');
            const findings = page.locator('#findings li');
            await findings.filter({ hasText: 'does not say what allergens it contains' }).waitFor();
            expect(await page.locator('#picture svg').count()).toBe(1);
            const before = await page.locator('#picture').innerHTML();

            const plan = page.locator('#plan');
            const text = await plan.inputValue();
            await plan.fill(
                text.replace(
                    'at 8 °C\n        lasts 15 min\n    }',
                    'at 8 °C\n        lasts 15 min\n        contains nothing\n    }',
                ),
            );
            expect(await findings.filter({ hasText: 'allergens' }).count()).toBe(0);
            await plan.fill(
                text.replace('served on dessert-plate', 'eaten with dessert-spoon\n        served on dessert-plate'),
            );
            expect(await page.locator('#picture').innerHTML()).not.toBe(before);
            await plan.fill(text.slice(0, -20));
            await findings.filter({ hasText: 'error' }).first().waitFor();
            expect(JSON.parse((await page.textContent('#compiled'))!)).toMatchObject({ file: 'plan.cover' });
            expect(failures).toEqual([]);
        } finally {
            await window.close();
        }
    });
});

describe('the reference', () => {
    interface Entry {
        readonly name: string;
        readonly sections: readonly {
            readonly items: readonly {
                readonly name: string;
                readonly documentation: { readonly text: string; readonly returns?: string };
            }[];
        }[];
    }
    const generator = pathToFileURL(join(root, 'packages/language/tools/generate-api.mjs')).href;
    const page = readFileSync(join(root, 'docs/api.md'), 'utf8');

    it('has words for everything that is public', async () => {
        const { readEntries } = (await import(generator)) as { readEntries: (root: string) => readonly Entry[] };
        const entries = readEntries(root);
        expect(entries.map(({ name }) => name)).toEqual([
            'underliner-language',
            'underliner-language/node',
            'underliner-language/editor',
        ]);
        const items = entries.flatMap(({ sections }) => sections.flatMap(({ items: each }) => each));
        expect(items.length).toBeGreaterThan(50);
        const silent = items.filter(({ documentation: { text, returns = '' } }) => text + returns === '');
        expect(silent.map(({ name }) => name)).toEqual([]);
        expect(items.filter(({ name }) => !page.includes(`#### \`${name}\`\n`)).map(({ name }) => name)).toEqual([]);
    });

    it('links to headings and files that are there', () => {
        const links = [...page.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target!);
        const headings = [...page.matchAll(/^#+ `?([\w/-]+)`?$/gm)].map(([, title]) => title!.toLowerCase());
        const isThere = (target: string): boolean =>
            target.startsWith('#') ? headings.includes(target.slice(1)) : existsSync(join(root, 'docs', target));
        expect(links.filter((target) => !isThere(target))).toEqual([]);
    });
});
