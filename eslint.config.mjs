import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

export default defineConfig(
    // The floor and the bare server are generated and built by the benchmarks themselves.
    globalIgnores(['**/dist/', '**/generated/', '**/fixtures/', 'tests/bench/floor/', 'tests/bench/bare/']),
    {
        linterOptions: { reportUnusedDisableDirectives: 'error', reportUnusedInlineConfigs: 'error' },
        rules: {
            curly: 'error',
            eqeqeq: 'error',
            'no-var': 'error',
            'object-shorthand': 'error',
            'prefer-const': 'error',
        },
    },
    {
        files: ['**/*.ts'],
        extends: [tseslint.configs.recommendedTypeChecked, tseslint.configs.stylisticTypeChecked],
        languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
        rules: {
            '@typescript-eslint/consistent-type-imports': 'error',
            // Both have their place: an interface for a thing that has parts, a type for a choice.
            '@typescript-eslint/consistent-type-definitions': 'off',
            '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
            '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
        },
    },
    {
        // The core must give the same bytes on the same input: no clock, no chance, no talk, no process.
        files: ['packages/language/src/{plan,service,rules,output}/**/*.ts'],
        ignores: ['**/*.test.ts'],
        rules: {
            'no-console': 'error',
            'no-restricted-globals': [
                'error',
                'process',
                'Buffer',
                'setTimeout',
                'setInterval',
                'fetch',
                'performance',
            ],
            'no-restricted-properties': [
                'error',
                { object: 'Math', property: 'random', message: 'Same input, same bytes: use the seeded generator.' },
                { object: 'Date', property: 'now', message: 'Same input, same bytes: times come from the plan.' },
                { object: 'Temporal', property: 'Now', message: 'Same input, same bytes: times come from the plan.' },
            ],
            'no-restricted-syntax': [
                'error',
                {
                    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
                    message: 'Same input, same bytes: times come from the plan.',
                },
                {
                    selector: 'CallExpression[callee.property.name=/^toLocale/]',
                    message: 'Same input, same bytes: the text must not depend on the reader’s locale.',
                },
                {
                    selector: "CallExpression[callee.property.name='localeCompare'][arguments.length<2]",
                    message: 'Same input, same bytes: name the locale, or compare with < and >.',
                },
            ],
        },
    },
);
