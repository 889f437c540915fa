import fc, { type GeneratorValue } from 'fast-check';
import { GrammarAST } from 'langium';
import { CoverGrammar } from '../../packages/language/src/grammar/generated/grammar.js';

// Plans that no chef would write, made from the grammar rule by rule: every clause there is, in every order.

const NAMES = ['milk', 'salad-fork', 'soup', 'crème-brûlée', 'T3', 'round', 'dry-white-wine', 'x_1'];
const TERMINALS: Readonly<Record<string, readonly string[]>> = {
    ID: NAMES,
    NUMBER: ['4', '12', '3.5', '-10', '\u221210', '5 1/2', '1/2'],
    STRING: ['"Roast squash"', '“Curly quotes”', '""', '"two // slashes"', '"{ } /* */"', '"course"'],
    DATE: ['2026-10-17', '17 October 2026', '3/4/2026'],
    TIME: ['19:00', '7:30 pm', '19h00'],
};
const GAPS = [' ', ' ', ' ', '\n', '\n', '\n    ', '  ', '\t', '\n\n\n', '\u00A0'];
const COMMENTS = [
    ' // note\n',
    '\n// a line of its own  \n',
    ' /* note */ ',
    '\n/* two\n   lines */\n',
    ' /**/ ',
    '\n\n// far\n\n',
];

const rules = new Map(CoverGrammar().rules.map((rule) => [rule.name, rule]));

/** The words of a file, made by choices that shrink. */
export function randomWords(choose: GeneratorValue): string[] {
    let budget = choose(fc.integer, { min: 30, max: 200 });
    const oneOf = (words: readonly string[]): string => words[choose(fc.nat, { max: words.length - 1 })]!;
    const times = (most: number): number => (budget-- > 0 ? choose(fc.nat, { max: most }) : 0);

    const write = (element: GrammarAST.AbstractElement): string[] => {
        switch (element.cardinality) {
            case '?':
                return times(1) === 1 ? writeOnce(element) : [];
            case '*':
                return Array.from({ length: times(4) }, () => writeOnce(element)).flat();
            case '+':
                return Array.from({ length: 1 + times(2) }, () => writeOnce(element)).flat();
            default:
                return writeOnce(element);
        }
    };

    const writeOnce = (element: GrammarAST.AbstractElement): string[] => {
        if (GrammarAST.isKeyword(element)) {
            return [element.value];
        }
        if (GrammarAST.isAssignment(element)) {
            return write(element.terminal);
        }
        if (GrammarAST.isAlternatives(element)) {
            const choices = element.elements.filter((choice) => !takesMistypedWord(choice));
            return write(choices[choose(fc.nat, { max: choices.length - 1 })]!);
        }
        if (GrammarAST.isGroup(element)) {
            return element.elements.flatMap(write);
        }
        if (GrammarAST.isRuleCall(element)) {
            const rule = rules.get(element.rule.$refText)!;
            return GrammarAST.isTerminalRule(rule)
                ? [oneOf(TERMINALS[rule.name]!)]
                : write((rule as GrammarAST.ParserRule).definition);
        }
        return [];
    };

    const file = (rules.get('File') as GrammarAST.ParserRule).definition;
    const rounds = choose(fc.integer, { min: 1, max: 4 });
    return Array.from({ length: rounds }, () => writeOnce(file)).flat();
}

function takesMistypedWord(element: GrammarAST.AbstractElement): boolean {
    const first = GrammarAST.isGroup(element) ? element.elements[0] : element;
    return first !== undefined && GrammarAST.isAssignment(first) && first.feature === 'misspelt';
}

/** The words with any white space and comments between them. */
export function randomText(choose: GeneratorValue): string {
    const gap = (): string => {
        const gaps = choose(fc.nat, { max: 9 }) === 0 ? COMMENTS : GAPS;
        return gaps[choose(fc.nat, { max: gaps.length - 1 })]!;
    };
    return randomWords(choose)
        .map((word, index, words) => {
            // Two numbers on one line can read as one: `4 1/2`.
            const isApart = /^\d/.test(word) && /\d$/.test(words[index - 1] ?? '');
            return (isApart ? '\n' : gap()) + word;
        })
        .join('');
}
