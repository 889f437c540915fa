// The colouring grammar of the extension, from the words of the language's own grammar. Names are coloured by what they
// stand for, which only the language server knows; here a name is only kept from being taken for the words inside it.
import { loadSource } from './load-source.mjs';

export const colouring = {
    name: 'colouring',
    async outputs() {
        const { CoverGrammar } = await loadSource('packages/language/src/grammar/generated/grammar.ts');
        const text = `${JSON.stringify(colouringOf(CoverGrammar()), undefined, 4)}\n`;
        return [{ path: 'packages/extension/syntaxes/cover.tmLanguage.json', text, isCommitted: false }];
    },
};

/** Words that state something by themselves. */
const CONSTANTS = ['nothing', 'everyone', 'off', 'error', 'warning', 'info', 'hint'];

function colouringOf(grammar) {
    const rules = new Map(grammar.rules.map((rule) => [rule.name, rule]));
    const startsOf = (names) => new Set(names.flatMap((name) => [...firstWords(rules.get(name).definition)]));
    const all = new Set([...rules.values()].flatMap((rule) => keywordsIn(rule)).filter((word) => /^\p{L}/u.test(word)));
    const units = new Set(['UnitWord', 'MistypedUnit'].flatMap((name) => keywordsIn(rules.get(name))));
    const blocks = without(new Set(['use', ...startsOf(['Item', 'MenuEntry', 'Dish'])]), CONSTANTS);
    const clauseRules = [...rules.keys()].filter((name) => /Clause$|^PieceFact$/.test(name));
    const clauses = without(startsOf(clauseRules), [
        ...blocks,
        ...units,
        ...CONSTANTS,
        'in',
        'on',
        'at',
        'to',
        'for',
        'of',
    ]);
    const joints = without(all, [...blocks, ...clauses, ...units, ...CONSTANTS]);
    return {
        name: 'Service plan',
        scopeName: 'source.cover',
        patterns: [
            { name: 'comment.line.double-slash.cover', match: '//.*$' },
            { name: 'comment.block.cover', begin: '/\\*', end: '\\*/' },
            { name: 'string.quoted.double.cover', match: '"[^"\\r\\n]*"?' },
            { name: 'string.quoted.other.cover', match: '[“”„][^“”"\\r\\n]*[“”"]?' },
            { name: 'constant.numeric.date.cover', match: `${START}\\d{4}-\\d{1,2}-\\d{1,2}${END}` },
            { name: 'constant.numeric.time.cover', match: `${START}\\d{1,2}:\\d{2}${END}` },
            {
                match: `${START}([-−]?\\d+(?:[.,]\\d+)?(?:[ \\t]+\\d+/\\d+)?)[ \\t]*(%|°[CF]?|(?:imp[ \\t]+)?fl[ \\t]+oz${END}|sq[ \\t]+(?:ft|m)${END}|(?:${longestFirst(units)})${END})`,
                captures: {
                    1: { name: 'constant.numeric.cover' },
                    2: { name: 'keyword.other.unit.cover' },
                },
            },
            { name: 'constant.numeric.cover', match: `${START}[-−]?\\d+(?:[.,]\\d+)?(?![\\p{L}\\d])` },
            // The name of a custom, before its value.
            {
                name: 'support.type.property-name.cover',
                match: `${START}(?<!\\btable )(?<!\\bto )[\\p{L}_][\\p{L}\\p{M}\\p{N}_-]*(?=[ \\t]*:)`,
            },
            { name: 'keyword.operator.word.cover', match: `${START}with[ \\t]+the[ \\t]+course${END}` },
            word('keyword.control.cover', blocks),
            word('keyword.other.clause.cover', clauses),
            word('constant.language.cover', new Set(CONSTANTS)),
            word('keyword.operator.word.cover', joints),
        ],
    };
}

// A hyphen joins the parts of a name, so `salad-fork` holds no word of the language.
const START = '(?<![\\p{L}\\p{M}\\p{N}_-])';
const END = '(?![\\p{L}\\p{M}\\p{N}_-])';

function word(name, words) {
    return { name, match: `${START}(?:${longestFirst(words)})${END}` };
}

function longestFirst(words) {
    const ordered = [...words].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
    return ordered.map((each) => each.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|');
}

function without(words, others) {
    const left = new Set(words);
    for (const other of others) {
        left.delete(other);
    }
    return left;
}

// ------------------------------------------------------------------ the grammar
function keywordsIn(element) {
    if (element === null || typeof element !== 'object') {
        return [];
    }
    if (element.$type === 'Keyword') {
        return [element.value];
    }
    return Object.entries(element).flatMap(([key, value]) =>
        key.startsWith('$') || key === 'rule'
            ? []
            : Array.isArray(value)
              ? value.flatMap(keywordsIn)
              : keywordsIn(value),
    );
}

/** The words that an element of the grammar can begin with. */
function firstWords(element) {
    switch (element.$type) {
        case 'Keyword':
            return new Set(/^\p{L}/u.test(element.value) ? [element.value] : []);
        case 'Assignment':
            return firstWords(element.terminal);
        case 'RuleCall':
            return element.rule.ref?.definition && !/Name|Word|Soft/.test(element.rule.ref.name)
                ? firstWords(element.rule.ref.definition)
                : new Set();
        case 'Alternatives':
            return new Set(element.elements.flatMap((each) => [...firstWords(each)]));
        case 'Group': {
            const words = [];
            for (const each of element.elements.filter(({ $type }) => $type !== 'Action')) {
                words.push(...firstWords(each));
                if (!['?', '*'].includes(each.cardinality)) {
                    break;
                }
            }
            return new Set(words);
        }
        default:
            return new Set();
    }
}
