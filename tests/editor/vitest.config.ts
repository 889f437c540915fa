import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The tests in a real editor: `npm run test:editor` makes the machine ready for them.
export default defineConfig({
    root: fileURLToPath(new URL('../..', import.meta.url)),
    resolve: { conditions: ['underliner-source'] },
    ssr: { resolve: { conditions: ['underliner-source', 'module', 'node', 'development|production'] } },
    cacheDir: 'node_modules/.underliner/vite-editor',
    test: {
        include: ['tests/editor/**/*.e2e.ts', 'tests/sheets/**/*.test.ts'],
        globalSetup: ['tests/editor/support/global-setup.ts'],
        reporters: ['default', './.ci/counts-reporter.mjs'],
        // One editor after the other: each wants the machine to itself.
        fileParallelism: false,
        // A loaded machine is not a mistake: what is waited for is waited for long.
        expect: { poll: { timeout: 60_000, interval: 100 } },
        testTimeout: 300_000,
        // A key that is pressed while the editor opens something goes astray, as a person's does. The report tells each.
        retry: 1,
        hookTimeout: 300_000,
    },
});
