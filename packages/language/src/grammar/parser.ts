import type { IToken, TokenType } from 'chevrotain';
import {
    createParser,
    CstNodeBuilder,
    GrammarAST,
    LangiumParser,
    type AstNode,
    type CstNode,
    type LangiumCoreServices,
    type LeafCstNode,
    type Lexer,
    type LexerResult,
    type ParseResult,
    type ParserOptions,
} from 'langium';
import type { Engine, MistypedWord } from './engine.js';
import { Mistakes } from './mistakes.js';
import { FILE, ReadingPosition } from './reading-position.js';
import { Recovery } from './recovery.js';
import { isWord } from './words.js';

const TOO_MUCH = { message: 'This file is too much to read in one piece. Split it, and join the parts with `use`.' };

/** Closing braces are taken away this often before the text is read as it stands. */
const MOST_ROUNDS = 4;

/** Blocks whose clauses may start with any name, so that a new item of the file must be told by its heading. */
const BLOCKS_OF_NAMES: ReadonlySet<string> = new Set(['Piece', 'Team', 'HouseClause', 'LocalCode']);

/** Spares the framework two searches from the front of a list, one of them before every token, that take long in a long text. */
class QuickTreeBuilder extends CstNodeBuilder {
    override addHiddenNodes(comments: IToken[]): void {
        if (comments.length > 0) {
            super.addHiddenNodes(comments);
        }
    }

    /** A word read as another keeps its own length. */
    override buildLeafNode(token: IToken, feature?: GrammarAST.AbstractElement): LeafCstNode {
        const leaf = super.buildLeafNode(token, feature);
        return Object.assign(leaf, { _length: (token.endOffset ?? token.startOffset) + 1 - token.startOffset });
    }

    override removeNode(node: CstNode): void {
        const siblings = node.container?.content;
        if (siblings?.at(-1) === node) {
            siblings.pop();
        } else {
            super.removeNode(node);
        }
    }
}

export type CoverParseResult<T extends AstNode = AstNode> = ParseResult<T> & {
    readonly mistyped: readonly MistypedWord[];
};

/** Rules whose loop takes any word for a mistyped first word. */
const TAKING_ANY_WORD: ReadonlySet<string> = new Set([FILE, 'Menu', 'Course', 'Bread']);

/** The framework's parser, made to read a text with mistakes as far as it can be read. */
export class CoverParser extends LangiumParser {
    protected override readonly lexer: Lexer;
    private readonly engine: Engine;
    private readonly position: ReadingPosition;
    private readonly mistakes: Mistakes;
    private readonly recovery: Recovery;
    private text = '';
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
    }

    override parse<T extends AstNode = AstNode>(input: string, options?: ParserOptions): CoverParseResult<T> {
        try {
            return this.read<T>(input, options);
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
            GATE: () => (callback.GATE?.() ?? true) && !this.endsBody(),
        });
    }

    override consume(index: number, type: TokenType, feature: GrammarAST.AbstractElement): void {
        super.consume(index, type, feature);
        if (type.name === '}' && !this.isRecording()) {
            this.recovery.closed(this.position.rule());
        }
    }

    /** Whether the next token is no clause of this block, whatever the grammar would make of it. */
    private endsBody(): boolean {
        const { tokenType } = this.engine.LA(1);
        if (this.recovery.isUnopened) {
            return true;
        }
        if (tokenType.name === 'ID') {
            return this.isStrayWord() || this.isSlip();
        }
        return isWord(tokenType) && BLOCKS_OF_NAMES.has(this.position.rule()) && this.isNewItem();
    }

    /**
     * The grammar takes any word for a mistyped `menu`, `course` or `dish` (`misspelt`). Here that is so only where the
     * heading of such a block follows and the word is no slip of another; every other word is a stray, not a block.
     */
    private isStrayWord(): boolean {
        switch (this.position.rule()) {
            case FILE:
                return !(
                    (this.isHeading('text', '{') && this.startsClauseOf('Event', 4)) ||
                    (this.isHeading('{') && this.startsClauseOf('Menu', 3)) ||
                    this.isHeading('plain name', '{') ||
                    this.isHeading('plain name', 'is', 'name')
                );
            case 'Menu':
                return !(this.isHeading('name', '{') || this.isHeading('name', 'text', '{'));
            case 'Course':
            case 'Bread':
                return true;
            default:
                return false;
        }
    }

    /** Whether recovery can tell which word was meant. */
    private isSlip(): boolean {
        const rule = this.position.rule();
        return (
            TAKING_ANY_WORD.has(rule) &&
            this.position.shape.bodiesOf(rule).some((body) => this.recovery.meantWord(body) !== undefined)
        );
    }

    private startsClauseOf(rule: string, distance: number): boolean {
        const { tokenType } = this.engine.LA(distance);
        return isWord(tokenType) && this.position.shape.bodiesOf(rule).some(({ starts }) => starts.has(tokenType));
    }

    /** In a block whose brace is missing the next item of the file would pass for a clause. */
    private isNewItem(): boolean {
        const { position } = this;
        const isItem =
            position.startsLine() &&
            (this.isHeading('text', '{') ||
                this.isHeading('name', '{') ||
                this.isHeading('name', 'is', 'name') ||
                this.isHeading('{'));
        return (
            isItem &&
            position.isClauseOutside(position.next.tokenType) &&
            position.closersAhead() <= position.openBlocks()
        );
    }

    /** Whether these stand behind the next token, on its line. */
    private isHeading(...shapes: readonly ('text' | 'name' | 'plain name' | '{' | 'is' | 'for')[]): boolean {
        return shapes.every((shape, index) => {
            const { image, tokenType } = this.engine.LA(index + 2);
            switch (shape) {
                case 'text':
                    return tokenType.name === 'STRING';
                case 'name':
                    return this.position.isName(tokenType);
                case 'plain name':
                    return this.position.isName(tokenType) && tokenType.name !== 'STRING';
                default:
                    return image === shape;
            }
        });
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
