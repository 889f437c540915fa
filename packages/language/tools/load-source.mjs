// Lets a plain Node script import the TypeScript sources, without a loader and without a build having run.
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/**
 * Bundles one TypeScript module and imports the result.
 * @param path from the root of the repository, such as `packages/language/src/rules/index.ts`
 * @returns the module's exports
 */
export async function loadSource(path) {
    // Inside node_modules, so that the packages left outside the bundle are found.
    const folder = join(root, 'node_modules', '.underliner', 'load');
    mkdirSync(folder, { recursive: true });
    const outfile = join(folder, `${path.replace(/\W+/g, '-')}-${process.pid}.mjs`);
    await build({
        absWorkingDir: root,
        entryPoints: [path],
        outfile,
        bundle: true,
        format: 'esm',
        platform: 'node',
        target: 'node20.19',
        packages: 'external',
        conditions: ['underliner-source'],
        logLevel: 'error',
    });
    try {
        return await import(pathToFileURL(outfile).href);
    } finally {
        rmSync(outfile, { force: true });
    }
}
