import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createVSIX, listFiles, PackageManager } from '@vscode/vsce';
import { BLOCK_SNIPPETS } from '../packages/language/src/editor/block-snippets.js';
import { describe, expect, it } from 'vitest';

// The extension as it is shipped: its manifest, what it names, and how large it is.

const extension = fileURLToPath(new URL('../packages/extension', import.meta.url));
const read = (path: string): string => readFileSync(join(extension, path), 'utf8');

interface Manifest {
    readonly version: string;
    readonly engines: { readonly vscode: string };
    readonly main: string;
    readonly browser: string;
    readonly icon: string;
    readonly activationEvents: readonly string[];
    readonly capabilities: unknown;
    readonly contributes: {
        readonly commands: readonly { readonly command: string; readonly title: string; readonly category: string }[];
        readonly menus: Readonly<Record<string, readonly { readonly command: string }[]>>;
        readonly configuration: { readonly properties: Readonly<Record<string, Setting>> };
        readonly walkthroughs: readonly { readonly steps: readonly Step[] }[];
        readonly problemMatchers: readonly { readonly pattern: Readonly<Record<string, string | number>> }[];
        readonly taskDefinitions: readonly {
            readonly properties: { readonly verb: { readonly enum: readonly string[] } };
        }[];
    };
}
interface Setting {
    readonly type: string;
    readonly default: unknown;
    readonly description?: string;
    readonly markdownDescription?: string;
}
interface Step {
    readonly id: string;
    readonly description: string;
    readonly completionEvents: readonly string[];
}

const manifest = JSON.parse(read('package.json')) as Manifest;
const { contributes } = manifest;
const commands = contributes.commands.map(({ command }) => command);
const sources = readdirSync(join(extension, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.test.ts'))
    .map((path) => read(join('src', path)))
    .join('\n');
const readme = read('README.md');
const packed = await listFiles({ cwd: extension, packageManager: PackageManager.None });

/** Every text of the manifest that looks like a path. */
function pathsIn(value: unknown): string[] {
    if (typeof value === 'string') {
        return /^(\.\/)?(dist|media|schema|snippets|syntaxes|language-configuration)\b.*\.[a-z]+$/i.test(value)
            ? [value.replace(/^\.\//, '')]
            : [];
    }
    return typeof value === 'object' && value !== null ? Object.values(value).flatMap(pathsIn) : [];
}

/** Of two colours, by their relative luminance (WCAG 2.1). */
function contrast(one: string, other: string): number {
    const [darker, lighter] = [one, other]
        .map((colour) =>
            [0, 2, 4]
                .map((at) => parseInt(colour.slice(at, at + 2), 16) / 255)
                .map((share) => (share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4))
                .reduce((sum, share, index) => sum + share * [0.2126, 0.7152, 0.0722][index]!, 0),
        )
        .sort((a, b) => a - b);
    return (lighter! + 0.05) / (darker! + 0.05);
}

describe('the manifest of the extension', () => {
    it('names files that are there and are packed', () => {
        const named = pathsIn(manifest);
        expect(named.length).toBeGreaterThan(12);
        expect(named.filter((path) => !packed.includes(path))).toEqual([]);
    });

    it('names commands that are registered, and no others', () => {
        const registered = [...sources.matchAll(/register\(\s*'(\w+)'/g)].map(([, name]) => `underliner.${name}`);
        expect([...registered].sort()).toEqual([...commands].sort());
        const used = [
            ...Object.values(contributes.menus).flatMap((items) => items.map(({ command }) => command)),
            ...[...JSON.stringify(contributes.walkthroughs).matchAll(/ommand:(underliner\.\w+)/g)].map(
                ([, name]) => name!,
            ),
            ...[...sources.matchAll(/'(underliner\.(?!summary)\w+)'/g)].map(([, name]) => name!),
        ];
        expect(used.filter((command) => !commands.includes(command))).toEqual([]);
    });

    it('has every command and setting explained in the readme', () => {
        const titles = contributes.commands.map(({ category, title }) => `${category}: ${title}`);
        expect(titles.filter((title) => !readme.includes(`| ${title} `))).toEqual([]);
        const settings = Object.entries(contributes.configuration.properties);
        expect(settings.filter(([name]) => !readme.includes(`\`${name}\``))).toEqual([]);
        for (const [name, setting] of settings) {
            expect(setting.description ?? setting.markdownDescription, name).toMatch(/\.$/);
            expect(setting.default, name).toBeDefined();
        }
        const told = [...readme.matchAll(/^\| `(underliner\.[\w.]+)`/gm)].map(([, name]) => name);
        expect(told).toEqual(settings.map(([name]) => name));
    });

    it('keeps programs out of the settings, for they come with folders that nobody trusts', () => {
        const names = Object.keys(contributes.configuration.properties);
        expect(names.filter((name) => /path|command|program|executable|server\.args/i.test(name))).toEqual([]);
        expect(manifest.capabilities).toEqual({ untrustedWorkspaces: { supported: true }, virtualWorkspaces: true });
    });

    it('wakes for its language alone, and for its own panels that a window brings back', () => {
        const panels = [...sources.matchAll(/register\('show\w+', '(\w+)'/g)].map(([, kind]) => kind);
        expect(panels).toEqual(['table', 'evening', 'pull']);
        expect(manifest.activationEvents).toEqual([
            'onLanguage:cover',
            ...panels.map((kind) => `onWebviewPanel:underliner.${kind}`),
        ]);
    });

    it('opens each panel from the palette, the title of an editor and the explorer', () => {
        for (const command of ['underliner.showTable', 'underliner.showEvening', 'underliner.showPull']) {
            for (const menu of ['commandPalette', 'editor/title', 'explorer/context']) {
                expect(contributes.menus[menu]!.map((item) => item.command)).toContain(command);
            }
        }
    });

    it('accepts the editors that it is tested in', () => {
        expect(manifest.engines.vscode).toBe('^1.91.0');
    });

    it('has the version of the command line and the language', () => {
        for (const other of ['cli', 'language']) {
            const { version } = JSON.parse(read(`../${other}/package.json`)) as { version: string };
            expect(version, other).toBe(manifest.version);
        }
    });

    it('teaches in five steps', () => {
        expect(contributes.walkthroughs.map(({ steps }) => steps.length)).toEqual([5]);
    });

    it('teaches in words that a step can show, with buttons that work while no text is in sight', () => {
        for (const { description, completionEvents } of contributes.walkthroughs.flatMap(({ steps }) => steps)) {
            expect(description).not.toContain('`');
            // An editor's own commands do nothing beside an editor, and a step is done when something has come of it.
            expect(description).not.toContain('command:editor.');
            expect(completionEvents.filter((event) => event.startsWith('onCommand:underliner.'))).toEqual([]);
            for (const [, key] of completionEvents.join(' ').matchAll(/onContext:(\S+)/g)) {
                expect(sources).toContain(`'setContext', '${key}', true`);
            }
        }
        for (const page of readdirSync(join(extension, 'media/walkthrough'))) {
            const samples =
                read(`media/walkthrough/${page}`)
                    .match(/(?<=^```cover\n)[^`]+/gm)
                    ?.join('') ?? '';
            expect(samples.split('\n').filter((line) => line.length > 45)).toEqual([]);
        }
    });

    // In a light theme of high contrast the editor takes the icon that is for dark ones.
    it('has an icon for dark themes that is seen on white as well', () => {
        const inks = [...read('media/cover-dark.svg').matchAll(/stroke="#([0-9a-f]{6})"/g)].map(([, ink]) => ink!);
        expect(inks.length).toBeGreaterThan(2);
        // WCAG 2.1, 1.4.11: what is to be recognised stands out by 3 to 1.
        for (const paper of ['ffffff', '1f1f1f', '000000']) {
            expect(inks.filter((ink) => contrast(ink, paper) < 3)).toEqual([]);
        }
    });

    it('reads every line that the command line reports', () => {
        const program = join(extension, '../cli/bin/underliner.cjs');
        const plans = join(extension, '../../examples/wrong-plans');
        const { stdout } = spawnSync(process.execPath, [program, 'check', plans, '--show', 'hint'], {
            encoding: 'utf8',
        });
        const { regexp, severity, code } = contributes.problemMatchers[0]!.pattern;
        const reported = stdout.split('\n').filter((line) => /^\S.*\.cover:\d+:\d+: /.test(line));
        expect(reported.length).toBeGreaterThan(15);
        for (const line of reported) {
            const match = new RegExp(regexp as string).exec(line);
            expect(match?.[severity as number], line).toMatch(/^(error|warning|info|hint)$/);
            expect(match?.[code as number], line).toMatch(/^[a-z-]+$/);
        }
    });

    it('has tasks whose verbs the command line knows', () => {
        for (const verb of contributes.taskDefinitions[0]!.properties.verb.enum) {
            expect(statSync(join(extension, `../cli/src/${verb}.ts`)).isFile()).toBe(true);
        }
    });
});

describe('the snippets of the extension', () => {
    // One with a prefix would be offered by the editor at every place, also where the language does not let it stand.
    it('are the blocks that completion offers, and are offered nowhere by themselves', () => {
        const snippets = JSON.parse(read('snippets/cover.json')) as Record<string, { readonly body: string[] }>;
        expect(Object.entries(snippets).map(([label, { body }]) => [label, body.join('\n')])).toEqual(
            BLOCK_SNIPPETS.map(({ label, body }) => [label, body]),
        );
        expect(Object.values(snippets).filter((snippet) => 'prefix' in snippet)).toEqual([]);
    });
});

describe('the patterns of the language configuration', () => {
    const configuration = JSON.parse(read('language-configuration.json')) as {
        readonly wordPattern: { readonly pattern: string; readonly flags: string };
        readonly indentationRules: Readonly<Record<string, string>>;
    };

    it('take a name as one word', () => {
        const { pattern, flags } = configuration.wordPattern;
        const words = 'served in crème-brûlée-dish at 64.5 °C, 2026-10-17 19:00'.match(
            new RegExp(pattern, `g${flags}`),
        );
        expect(words).toEqual(['served', 'in', 'crème-brûlée-dish', 'at', '64.5', 'C', '2026-10-17', '19:00']);
    });

    it('indent after a brace that opens, but not after one in a text or a comment', () => {
        const opens = new RegExp(configuration.indentationRules.increaseIndentPattern!);
        expect(['menu {', 'course soup "A {" {', 'guests 84 {'].filter((line) => !opens.test(line))).toEqual([]);
        expect(['contains "{"', 'a { b }', '// menu {', 'event "open {'].filter((line) => opens.test(line))).toEqual(
            [],
        );
        const closes = new RegExp(configuration.indentationRules.decreaseIndentPattern!);
        expect(closes.test('    }')).toBe(true);
    });
});

describe('the package of the extension', () => {
    it('is under 2 MB and holds nothing but what is shipped', async () => {
        const folder = mkdtempSync(join(tmpdir(), 'underliner-package-'));
        try {
            const packagePath = join(folder, 'underliner.vsix');
            const log = console.log;
            console.log = () => undefined;
            await createVSIX({
                cwd: extension,
                packagePath,
                dependencies: false,
                allowMissingRepository: true,
                rewriteRelativeLinks: false,
            }).finally(() => (console.log = log));
            expect(statSync(packagePath).size).toBeLessThan(2_000_000);
        } finally {
            rmSync(folder, { recursive: true });
        }
        expect(packed).toEqual(expect.arrayContaining(['dist/panel.js', 'media/panels/panel.css']));
        expect(packed.filter((path) => /^(src|tools)\/|\.map$|\.ts$|\.mjs$/.test(path))).toEqual([]);
    });

    it('brings the pictures of its readme along, small ones', () => {
        const pictures = [...readme.matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(([, path]) => path!);
        expect(pictures.length).toBeGreaterThan(3);
        expect(pictures.filter((path) => !packed.includes(path))).toEqual([]);
        expect(pictures.filter((path) => statSync(join(extension, path)).size > 150_000)).toEqual([]);
    });

    it('has panels with one script, one style and nothing from elsewhere', () => {
        const shell = read('src/panels/shell.ts');
        const policy = /`(default-src [^`]+)`/.exec(shell)![1]!.split('; ');
        expect(policy).toEqual([
            "default-src 'none'",
            'style-src ${webview.cspSource}',
            "script-src 'nonce-${nonce}'",
            "base-uri 'none'",
            "form-action 'none'",
        ]);
        const page = shell.slice(shell.indexOf('<!doctype'));
        expect(page.match(/<(?:script|link|style|iframe|img)\b[^>]*>/g)).toEqual([
            '<link rel="stylesheet" href="${style}">',
            '<script nonce="${nonce}" src="${script}">',
        ]);
        expect(page).not.toMatch(/\son\w+=|\sstyle=|https?:/);
        const styles = read('media/panels/panel.css');
        expect(styles).not.toMatch(/@import|url\(/);
        // Of their own, styles have only the inks of drawings, to put the theme's in their place.
        const colours = [...styles.matchAll(/#[0-9a-f]{3,8}\b(?!\w)/g)].map(([colour]) => colour);
        expect(colours.every((colour) => styles.includes(`='${colour}']`))).toBe(true);
        expect(read('dist/panel.js')).not.toMatch(/\beval\(|new Function|fetch\(|XMLHttpRequest|WebSocket|import\(/);
    });

    it('needs nothing of Node in the browser', () => {
        for (const bundle of ['dist/web.js', 'dist/server.js']) {
            const asked = [...read(bundle).matchAll(/(?<![.\w])require\("([^"]+)"\)/g)].map(([, name]) => name);
            expect(
                asked.filter((name) => name !== 'vscode'),
                bundle,
            ).toEqual([]);
            expect(read(bundle)).not.toMatch(/from"node:|import\("node:/);
        }
    });

    it('is thin: under 800 lines of code beside the panels', () => {
        const files = readdirSync(join(extension, 'src'), { recursive: true, encoding: 'utf8' });
        const lines = files
            .filter((path) => path.endsWith('.ts') && !path.endsWith('.test.ts') && !path.startsWith('panels'))
            .flatMap((path) => read(join('src', path)).split('\n'))
            .filter((line) => !/^\s*($|\/\/|\/?\*)/.test(line));
        expect(lines.length).toBeLessThan(800);
    });
});
