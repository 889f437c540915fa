// Bundles the public entry points of the language package into dist/, its packages left as imports.
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));

rmSync(new URL('dist', import.meta.url), { recursive: true, force: true });
const { warnings } = await build({
    absWorkingDir: here,
    entryPoints: ['src/index.ts', 'src/editor/index.ts', 'src/node.ts'],
    outdir: 'dist',
    outbase: 'src',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'neutral',
    target: 'es2022',
    packages: 'external',
    external: ['node:*'],
    sourcemap: 'linked',
    sourcesContent: false,
    logLevel: 'warning',
});
// A build says nothing, or it has failed.
if (warnings.length > 0) {
    process.exitCode = 1;
}
