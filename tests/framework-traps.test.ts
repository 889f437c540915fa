import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { GrammarAST, AstUtils } from 'langium';
import { describe, expect, it } from 'vitest';
import { CoverGrammar } from '../packages/language/src/grammar/generated/grammar.js';
import { readText } from '../packages/language/src/plan/read-text.js';
import { createCoverServices } from '../packages/language/src/editor/services.js';
import { filesBelow } from './support/samples.js';

// What the language framework does otherwise than one expects, kept out of the grammar and the bundles.

const grammar = CoverGrammar();
const all = AstUtils.streamAllContents(grammar).toArray();

describe('the grammar', () => {
    it('has its clauses in loops, not in groups without an order, which report no member that is missing', () => {
        expect(all.filter(GrammarAST.isUnorderedGroup)).toEqual([]);
    });

    it('has no flag on a terminal: the longest word would no longer win', () => {
        const flagged = all.filter(GrammarAST.isRegexToken).filter(({ regex }) => /\/[a-z]+$/.test(regex));
        expect(flagged.map(({ regex }) => regex)).toEqual([]);
        const menu = (name: string) => readText('plan.cover', `menu {\n    course ${name} {\n    }\n}\n`).syntax;
        for (const name of ['dishes', 'atrium', 'for-two', 'menu-à-deux', 'course\u0301e']) {
            expect(menu(name), name).toEqual([]);
        }
    });

    it('reads a rule that may be left out at its call: no rule begins with all of itself left out', () => {
        const mayBeEmpty = (element: GrammarAST.AbstractElement): boolean => {
            if (element.cardinality === '?' || element.cardinality === '*') {
                return true;
            }
            if (GrammarAST.isGroup(element)) {
                return element.elements.every(mayBeEmpty);
            }
            return GrammarAST.isAlternatives(element) && element.elements.some(mayBeEmpty);
        };
        const rules = grammar.rules.filter(GrammarAST.isParserRule).filter(({ entry }) => !entry);
        expect(rules.filter(({ definition }) => mayBeEmpty(definition)).map(({ name }) => name)).toEqual([]);
    });
});

describe('one slip of the finger', () => {
    // A clause whose first word has two letters exchanged; a block whose first word has.
    const text = filesBelow('examples/saltmarsh-hall')['examples/saltmarsh-hall/lantern-supper.cover']!;
    const lines = text.split('\n');
    const slips = lines.flatMap((line, index) => {
        const [, indent, word] = /^(\s+)([a-z]{4,}) /.exec(line) ?? [];
        if (indent === undefined || word === undefined) {
            return [];
        }
        const slipped = word[1]! + word[0]! + word.slice(2);
        const changed = lines.with(index, line.replace(word, slipped)).join('\n');
        return slipped === word ? [] : [[`${index + 1}: ${slipped}`, changed] as const];
    });

    it('is tried at many places', () => expect(slips.length).toBeGreaterThan(30));

    it.each(slips)('is one mistake, in line %s', (_, changed) => {
        const { syntax, misspelt } = readText('plan.cover', changed);
        expect([...syntax, ...misspelt]).toHaveLength(1);
    });
});

describe('the bundles', () => {
    it.each(['packages/cli/dist/lsp.cjs', 'packages/cli/dist/framework.cjs', 'packages/extension/dist/server.js'])(
        '%s calls nothing that Node 20 does not know',
        (path) => {
            const bundle = readFileSync(fileURLToPath(new URL(`../${path}`, import.meta.url)), 'utf8');
            expect(bundle).not.toMatch(/Object\.groupBy|Map\.groupBy|Promise\.withResolvers/);
        },
    );

    it('start where the framework is not in production mode, too', () => {
        expect(createCoverServices().cover.parser.LangiumParser.parse('').parserErrors).toEqual([]);
    });
});
