// Bundles the extension and its language server, for an editor with a machine of its own and for one in a browser.
import { copyFileSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

const shared = {
    absWorkingDir: here,
    outdir: 'dist',
    bundle: true,
    minify: true,
    conditions: ['underliner-source'],
    define: { UNDERLINER_VERSION: JSON.stringify(version), 'process.env.NODE_ENV': '"production"' },
    legalComments: 'external',
    logLevel: 'warning',
};

const onDesktop = { platform: 'node', format: 'cjs', target: 'node20.19', mainFields: ['module', 'main'] };

/**
 * The names of classes and functions are looked up by the language framework, so they stay as they are. To keep them beside
 * shorter ones costs a call for each function that is made, a fifth of what a key takes.
 */
const withNames = { minify: false, minifyWhitespace: true, minifySyntax: true };

rmSync(new URL('dist', import.meta.url), { recursive: true, force: true });
const builds = [
    {
        ...onDesktop,
        entryPoints: ['src/desktop.ts'],
        external: ['vscode'],
    },
    {
        ...onDesktop,
        entryPoints: ['src/desktop-server.ts'],
        external: ['./server.js'],
    },
    {
        entryPoints: ['src/web.ts'],
        platform: 'browser',
        format: 'cjs',
        target: 'es2022',
        external: ['vscode'],
    },
    {
        // The script of the panels' pages.
        entryPoints: { panel: 'src/panels/page/panel.ts' },
        platform: 'browser',
        format: 'iife',
        target: 'es2022',
    },
    {
        // The server, for both: a worker's script, which runs as it is.
        ...withNames,
        entryPoints: ['src/server.ts'],
        platform: 'browser',
        format: 'iife',
        target: 'es2022',
    },
];
for (const each of builds) {
    const { warnings } = await build({ ...shared, ...each });
    // A build says nothing, or it has failed.
    if (warnings.length > 0) {
        process.exitCode = 1;
    }
}

// The schema by which the editor checks compiled plans.
mkdirSync(new URL('schema', import.meta.url), { recursive: true });
copyFileSync(
    new URL('../language/schema/plan.schema.json', import.meta.url),
    new URL('schema/plan.schema.json', import.meta.url),
);
