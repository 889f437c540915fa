import { EOF, type IToken, type TokenType } from 'chevrotain';
import type { Engine } from './engine.js';
import { callKey, GrammarShape, plainRuleName } from './grammar-shape.js';
import { isWord, wordsOf } from './words.js';

/** The rule of a whole file, whose items have no braces around them. */
export const FILE = 'File';

/** Where the parser stands in the text and in the grammar, and what may stand there. */
export class ReadingPosition {
    private readonly ruleNames = new Map<number, string>();
    private knownShape: GrammarShape | undefined;
    private knownNames: ReadonlySet<TokenType> | undefined;
    /** For each token, how many more blocks are closed than opened from it to the end. */
    private closers: Int32Array | undefined;

    constructor(private readonly engine: Engine) {}

    /** Forgets what was worked out about the last text. */
    restart(): void {
        this.closers = undefined;
    }

    // ---------------------------------------------------------------- in the grammar
    get shape(): GrammarShape {
        return (this.knownShape ??= new GrammarShape(this.engine.getGAstProductions(), FILE));
    }

    /** How many rules are being read, one inside the other. */
    get depth(): number {
        return this.engine.RULE_STACK.length;
    }

    /** The rule being read, or one of those that called it. */
    rule(above = 0): string {
        const { RULE_STACK: stack, shortRuleNameToFull: names } = this.engine;
        const short = stack[stack.length - 1 - above] ?? -1;
        let name = this.ruleNames.get(short);
        if (name === undefined) {
            name = plainRuleName(names[short] ?? '');
            this.ruleNames.set(short, name);
        }
        return name;
    }

    private call(above: number): string {
        const { RULE_OCCURRENCE_STACK: occurrences } = this.engine;
        return callKey(this.rule(above), occurrences[occurrences.length - 1 - above] ?? 0, this.rule(above + 1));
    }

    /** Whether the rule reads one clause of a block, or one item of the file. */
    isClause(above = 0): boolean {
        return this.shape.clauseCalls.has(this.call(above));
    }

    /** Whether every line of the block being read begins with a text: a name at a line's start is one without its quotes. */
    isInListOfTexts(): boolean {
        const block = this.isClause() ? this.rule(1) : this.rule();
        return this.shape.bodiesOf(block).some((body) => body.isOfTexts);
    }

    /** How many blocks are open around the clause being read. */
    openBlocks(): number {
        let open = 0;
        for (let above = 0; above < this.depth - 1; above++) {
            open += this.isClause(above) && this.rule(above + 1) !== FILE ? 1 : 0;
        }
        return open;
    }

    /** Whether a token may stand next once the rule being read has ended. */
    canFollow(type: TokenType): boolean {
        for (let above = 0; above < this.depth - 1; above++) {
            const { tokens, mayEnd } = this.shape.after(this.call(above));
            if (tokens.has(type)) {
                return true;
            }
            if (!mayEnd) {
                return false;
            }
        }
        return type === EOF;
    }

    /** Whether a word starts a clause of a block around the one being read, or an item of the file. */
    isClauseOutside(type: TokenType): boolean {
        if (!isWord(type)) {
            return false;
        }
        for (let above = 0; above < this.depth - 1; above++) {
            const bodies = this.isClause(above) ? this.shape.bodiesOf(this.rule(above + 1)) : [];
            if (bodies.some(({ starts }) => starts.has(type))) {
                return true;
            }
        }
        return false;
    }

    /** The tokens that can be names, some of them not everywhere. */
    get names(): ReadonlySet<TokenType> {
        return (this.knownNames ??= this.shape.startsOf('AnyName'));
    }

    isName(type: TokenType): boolean {
        return this.names.has(type);
    }

    /** A word of the language that is never a name without quotes. */
    isFirmWord(type: TokenType): boolean {
        return isWord(type) && !this.isName(type);
    }

    firmWords(): readonly string[] {
        return wordsOf(Object.values(this.engine.tokensMap).filter((type) => this.isFirmWord(type)));
    }

    // ---------------------------------------------------------------- in the text
    get next(): IToken {
        return this.engine.LA(1);
    }

    /** The token taken last. */
    get before(): IToken | undefined {
        const before = this.engine.LA(0);
        return before.tokenType === EOF ? undefined : before;
    }

    get beforeThat(): IToken | undefined {
        const token = this.engine.LA(-1);
        return token.tokenType === EOF ? undefined : token;
    }

    get isAtEnd(): boolean {
        return this.next.tokenType === EOF;
    }

    isAt(image: string): boolean {
        return this.next.image === image;
    }

    /** Whether a token ahead is the first of its line. */
    startsLine(distance = 1): boolean {
        return this.engine.LA(distance - 1).endLine !== this.engine.LA(distance).startLine;
    }

    /** How many blocks the rest of the text closes beyond those it opens itself. */
    closersAhead(): number {
        const { input, currIdx } = this.engine;
        if (!this.closers) {
            this.closers = new Int32Array(input.length + 1);
            for (let at = input.length - 1; at >= 0; at--) {
                const image = input[at]!.image;
                this.closers[at] = this.closers[at + 1]! + (image === '}' ? 1 : image === '{' ? -1 : 0);
            }
        }
        return this.closers[Math.min(currIdx + 1, input.length)]!;
    }
}
