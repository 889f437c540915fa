import type { IOrAlt, IToken, TokenType } from 'chevrotain';
import {
    createParser,
    GrammarAST,
    LangiumParser,
    type AstNode,
    type LangiumCoreServices,
    type Lexer,
    type LexerResult,
    type ParseResult,
    type ParserOptions,
} from 'langium';
import { Misreading, type Engine, type MistypedWord } from './engine.js';
import { Headings } from './headings.js';
import { Mistakes } from './mistakes.js';
import { ReadingPosition } from './reading-position.js';
import { Recovery } from './recovery.js';
import { QuickTreeBuilder } from './tree-builder.js';

const TOO_MUCH = { message: 'This file is too much to read in one piece. Split it, and join the parts with `use`.' };

/** Closing braces are taken away this often before the text is read as it stands. */
const MOST_ROUNDS = 4;

export type CoverParseResult<T extends AstNode = AstNode> = ParseResult<T> & {
    readonly mistyped: readonly MistypedWord[];
};

/** The lines on which something can't be read. */
function mistakenLines({ parserErrors }: CoverParseResult): number {
    const lines = parserErrors.map((error) => (error instanceof Misreading ? lineOf(error) : 0));
    return new Set(lines).size;
}

/** Where something is missing at the end of a line, that line. */
function lineOf({ token, before, sort }: Misreading): number | undefined {
    return sort === 'wanting' ? before?.endLine : token.startLine;
}

/** The framework's parser, made to read a text with mistakes as far as it can be read. */
export class CoverParser extends LangiumParser {
    protected override readonly lexer: Lexer;
    private readonly engine: Engine;
    private readonly position: ReadingPosition;
    private readonly mistakes: Mistakes;
    private readonly recovery: Recovery;
    private readonly headings: Headings;
    private text = '';
    /** Whether a rule for names has been entered whose choice is next. */
    private startsName = false;
    /** Whether a name may be the first word of a line that could start a clause as well; and whether one was. */
    private takesNextLine = true;
    private tookNextLine = false;
    private comments: readonly IToken[] = [];
    private nextComment = 0;

    constructor(services: LangiumCoreServices) {
        super(services);
        const lexer = services.parser.Lexer;
        this.lexer = {
            definition: lexer.definition,
            tokenize: (text, options) => this.prepared(lexer.tokenize(text, options)),
        };
        const valueRules = services.Grammar.rules.filter(
            (rule) => GrammarAST.isParserRule(rule) && rule.dataType !== undefined,
        );
        Object.assign(this, {
            nodeBuilder: new QuickTreeBuilder(),
            extractHiddenTokens: (token: IToken) => this.commentsBefore(token),
        });
        this.engine = this.wrapper as unknown as Engine;
        this.position = new ReadingPosition(this.engine);
        this.mistakes = new Mistakes(this.engine, this.position, (token) => this.looseWords(token));
        this.recovery = new Recovery(
            this.engine,
            this.position,
            new Set(valueRules.map(({ name }) => name)),
            this.mistakes,
        );
        this.headings = new Headings(this.engine, this.position, this.recovery);
    }

    override parse<T extends AstNode = AstNode>(input: string, options?: ParserOptions): CoverParseResult<T> {
        try {
            return this.readCarefully<T>(input, options);
        } catch (error) {
            if (!(error instanceof RangeError)) {
                throw error;
            }
            // The stack ran over; what the framework had on its own stack is of no use any more.
            Object.assign(this, { stack: [] });
            return {
                ...this.read<T>('', options),
                lexerErrors: [{ ...TOO_MUCH, offset: 0, length: 0, line: undefined, column: undefined }],
            };
        }
    }

    /**
     * A line may break anywhere, so that a name that was left out at the end of a line takes the first word of the next one
     * for itself, if it can be a name. Where that may have led to a mistake the text is read again without it.
     */
    private readCarefully<T extends AstNode>(input: string, options?: ParserOptions): CoverParseResult<T> {
        this.takesNextLine = true;
        this.tookNextLine = false;
        const first = this.read<T>(input, options);
        if (!this.tookNextLine || first.parserErrors.length === 0) {
            return first;
        }
        this.takesNextLine = false;
        const second = this.read<T>(input, options);
        return mistakenLines(second) <= mistakenLines(first) ? second : first;
    }

    private read<T extends AstNode>(input: string, options?: ParserOptions): CoverParseResult<T> {
        const { surplus } = this.recovery;
        this.text = input;
        surplus.clear();
        for (let round = 1; ; round++) {
            const known = surplus.size;
            this.position.restart();
            this.recovery.restart();
            const result = super.parse<T>(input, options);
            if (surplus.size === known || round === MOST_ROUNDS) {
                this.text = '';
                const braces = [...surplus.values()].map((brace) => this.mistakes.braceSurplus(brace));
                return {
                    ...result,
                    parserErrors: [...result.parserErrors, ...braces],
                    mistyped: [...this.mistakes.mistyped],
                };
            }
        }
    }

    override many(occurrence: number, callback: { DEF(): void; GATE?: () => boolean }): void {
        super.many(occurrence, {
            DEF: () => callback.DEF(),
            GATE: () => (callback.GATE?.() ?? true) && !this.headings.endsBody(),
        });
    }

    override rule(
        rule: GrammarAST.ParserRule,
        read: Parameters<LangiumParser['rule']>[1],
    ): ReturnType<LangiumParser['rule']> {
        const isName = rule.name === 'Name' || rule.name === 'AnyName';
        return super.rule(rule, (args) => {
            this.startsName = isName;
            // eslint-disable-next-line @typescript-eslint/no-unsafe-return -- the framework says no more of it
            return read(args);
        });
    }

    override alternatives(index: number, choices: IOrAlt<unknown>[]): void {
        const isName = this.startsName;
        this.startsName = false;
        const GATE = (): boolean => this.isNameHere();
        super.alternatives(index, isName ? choices.map(({ ALT }) => ({ ALT, GATE })) : choices);
    }

    /** Whether the next word, which can be a name, is not rather the first of the next clause. */
    private isNameHere(): boolean {
        const { position } = this;
        const startsClause = position.startsLine() && position.isClauseOutside(position.next.tokenType);
        this.tookNextLine ||= startsClause;
        return this.takesNextLine || !startsClause;
    }

    override consume(index: number, type: TokenType, feature: GrammarAST.AbstractElement): void {
        super.consume(index, type, feature);
        if (type.name === '}' && !this.isRecording()) {
            this.recovery.closed(this.position.rule());
        }
    }

    /** The words from a token on that may be meant as a text: up to a word of the language, a figure, a brace, the line's end. */
    private looseWords(from: IToken): string {
        const line = /^[^\n\r{}",]*/.exec(this.text.slice(from.startOffset, from.startOffset + 200))?.[0] ?? '';
        const words = line
            .replace(/\/[/*].*$/, '')
            .trimEnd()
            .split(/(?=\s)/);
        const firm = new Set(this.position.firmWords());
        const end = words.findIndex((word) => firm.has(word.trim()) || /^\s*[^\p{L}\s]/u.test(word));
        return words
            .slice(0, end < 0 ? undefined : end)
            .join('')
            .trimEnd();
    }

    /** The comments before a token. The framework cuts them off the front of a list, which takes long in a long text. */
    private commentsBefore({ startOffset }: IToken): IToken[] {
        const first = this.nextComment;
        while ((this.comments[this.nextComment]?.startOffset ?? Infinity) < startOffset) {
            this.nextComment++;
        }
        return this.comments.slice(first, this.nextComment);
    }

    private prepared(result: LexerResult): LexerResult {
        const { surplus } = this.recovery;
        const { hidden, tokens } = result;
        const left = (): IToken[] => this.comments.slice(this.nextComment);
        this.comments = hidden;
        this.nextComment = 0;
        return {
            ...result,
            tokens: surplus.size === 0 ? tokens : tokens.filter(({ startOffset }) => !surplus.has(startOffset)),
            get hidden() {
                return left();
            },
        };
    }
}

export function createCoverParser(services: LangiumCoreServices): CoverParser {
    const parser = new CoverParser(services);
    createParser(services.Grammar, parser, services.parser.Lexer.definition);
    parser.finalize();
    return parser;
}
