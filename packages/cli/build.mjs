// Bundles the command line, with the language and every package it needs, into one file that starts fast.
// CommonJS, because only a CommonJS script can be given a V8 code cache on Node 20.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

await build({
    absWorkingDir: here,
    entryPoints: { main: 'src/main.ts' },
    outdir: 'dist',
    outExtension: { '.js': '.cjs' },
    bundle: true,
    minify: true,
    // The names of classes and functions are looked up by the language framework.
    keepNames: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20.19',
    mainFields: ['module', 'main'],
    conditions: ['underliner-source'],
    define: { UNDERLINER_VERSION: JSON.stringify(version), 'process.env.NODE_ENV': '"production"' },
    legalComments: 'external',
    logLevel: 'warning',
});
