// packages/language/src/grammar/plain/generated/plain-grammar.ts: the grammar as the plain parser runs it.
import { loadSource } from './load-source.mjs';

export const plainGrammar = {
    name: 'the plain grammar',
    async outputs() {
        const { prepareGrammar } = await loadSource('packages/language/src/grammar/prepare-grammar.ts');
        // As a text to JSON.parse: an engine reads that faster than an object literal.
        const json = JSON.stringify(JSON.stringify(prepareGrammar()));
        const path = 'packages/language/src/grammar/plain/generated/plain-grammar.ts';
        return [{ path, text: `export const plainGrammarJson = ${json};\n`, isCommitted: false }];
    },
};
