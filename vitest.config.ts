import { defineConfig } from 'vitest/config';

export default defineConfig({
    // Tests of one package import the sources of another, not its build.
    resolve: { conditions: ['underliner-source'] },
    ssr: { resolve: { conditions: ['underliner-source', 'module', 'node', 'development|production'] } },
    cacheDir: 'node_modules/.underliner/vite',
    test: {
        include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
        reporters: ['default', './.ci/counts-reporter.mjs'],
        maxWorkers: 2,
        // A slow machine is not a mistake: time is for the benchmark.
        testTimeout: 120_000,
        hookTimeout: 120_000,
    },
});
