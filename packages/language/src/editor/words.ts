import { AstUtils, GrammarAST } from 'langium';
import type { LangiumServices } from 'langium/lsp';

/** Which words the language keeps for itself. */
export class Words {
    private readonly plain: ReadonlySet<string>;
    private readonly rules: ReadonlyMap<string, GrammarAST.AbstractRule>;

    constructor(private readonly services: LangiumServices) {
        this.rules = new Map(services.Grammar.rules.map((rule) => [rule.name, rule]));
        this.plain = this.wordsOf('PlainName');
    }

    /** The words that a rule which makes a text can begin with. */
    wordsOf(name: string): ReadonlySet<string> {
        const rule = this.rules.get(name);
        const words = new Set<string>();
        for (const part of rule ? AstUtils.streamAllContents(rule) : []) {
            if (GrammarAST.isKeyword(part)) {
                words.add(part.value);
            } else if (GrammarAST.isRuleCall(part) && GrammarAST.isParserRule(part.rule.ref)) {
                this.wordsOf(part.rule.ref.name).forEach((word) => words.add(word));
            }
        }
        return words;
    }

    /** A word of the language, wherever it may stand. */
    isWord(text: string): boolean {
        const [token, ...more] = this.services.parser.Lexer.tokenize(text).tokens;
        return (
            token !== undefined &&
            more.length === 0 &&
            token.image === text &&
            typeof token.tokenType.PATTERN === 'string'
        );
    }

    /** Whether a text is a name without quotes wherever a name is wanted. */
    isBareName(text: string): boolean {
        const { tokens, errors } = this.services.parser.Lexer.tokenize(text);
        const [token, ...more] = tokens;
        return (
            errors.length === 0 &&
            more.length === 0 &&
            token?.image === text &&
            (token.tokenType.name === 'ID' || this.plain.has(text))
        );
    }

    /** The name as it is written where a name is wanted. */
    written(name: string): string {
        return this.isBareName(name) ? name : `"${name}"`;
    }
}
