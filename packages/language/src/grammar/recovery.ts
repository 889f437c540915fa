import { EOF, type IToken, type TokenType } from 'chevrotain';
import { Misreading, NotMended, type Engine, type Round } from './engine.js';
import type { Body } from './grammar-shape.js';
import type { Mistakes } from './mistakes.js';
import { FILE, type ReadingPosition } from './reading-position.js';
import { isKeyword, isWord, nearestWord, wordsOf } from './words.js';

/**
 * Goes on after a mistake, clause by clause: a mistake costs the clause it stands in, a missing or surplus brace costs no
 * block but its own. What is left out and what is put in follows the braces, the lines and the words that start clauses.
 */
export class Recovery {
    /** Closing braces found to be surplus, by offset. The text is to be read again without them. */
    readonly surplus = new Map<number, IToken>();
    /** One a reading, for without it the next may be none. */
    private isSurplusNoted = false;
    private lastClosed = '';
    /** The token after which an opening brace was put in that no closing one goes with. */
    private unopenedAt: number | undefined;

    /** @param valueRules rules that read a single value, such as a name or a time */
    constructor(
        private readonly engine: Engine,
        private readonly position: ReadingPosition,
        private readonly valueRules: ReadonlySet<string>,
        private readonly mistakes: Mistakes,
    ) {
        engine.consumeInternalError = (wanted) => {
            if (wanted.name !== '}') {
                throw mistakes.wanting(() => [wanted]);
            }
            throw this.isUnopened ? mistakes.nothing() : mistakes.braceMissing();
        };
        engine.raiseNoAltException = (occurrence) => {
            const rule = position.rule();
            const wanted = (): ReadonlySet<TokenType> => position.shape.choice(rule, occurrence);
            // A name that the next line was not to give away is missing, whatever stands there.
            const mayBeLost = !mistakes.isTired && rule !== 'Name' && rule !== 'AnyName';
            throw mayBeLost && wanted().has(position.next.tokenType) ? mistakes.threadLost() : mistakes.wanting(wanted);
        };
        engine.raiseEarlyExitException = (occurrence) => {
            throw mistakes.wanting(() => position.shape.round(position.rule(), occurrence));
        };
        engine.tryInRuleRecovery = (wanted, follows) => this.mendToken(wanted, follows);
        engine.invokeRuleCatch = (error) => {
            if (!(error instanceof Misreading && this.endRule())) {
                throw error;
            }
            return undefined;
        };
        engine.attemptInRepetitionRecovery = (_loop, [occurrence, round], goesOn, _kind, _same, _walker, hasMoved) => {
            // Nearly always a block ends where it should: then there is nothing to look up.
            const isAsExpected = this.isUnopened || position.isAtEnd || (position.isAt('}') && position.depth > 1);
            const body = isAsExpected ? undefined : position.shape.body(position.rule(), occurrence);
            if (body) {
                this.readOn(body, round, () => goesOn.call(engine), hasMoved !== false);
            }
        };
    }

    /** Forgets the last text. */
    restart(): void {
        this.mistakes.restart();
        this.isSurplusNoted = false;
        this.lastClosed = '';
        this.unopenedAt = undefined;
    }

    /** Notes which block was closed last. */
    closed(rule: string): void {
        this.lastClosed = rule;
    }

    // ---------------------------------------------------------------- one token, one rule
    /** One token is wanted and another stands there: it is taken for the wanted one, which is put in, or found behind it. */
    private mendToken(wanted: TokenType, follows: readonly TokenType[]): IToken {
        const { engine, position } = this;
        const { next } = position;
        if (wanted.name === '}') {
            this.unopenedAt = undefined;
            return engine.getTokenToInsert(wanted);
        }
        const isOtherWord = next.tokenType.name === 'ID' && !position.startsLine();
        if (isOtherWord && isWord(wanted) && nearestWord(next.image, [wanted.name]) !== undefined) {
            engine.consumeToken();
            return next;
        }
        const standsBehind =
            (isOtherWord && engine.LA(2).tokenType === wanted) ||
            (wanted.name === '{' && this.misplaced((type) => type === wanted) !== undefined);
        if (!standsBehind && (position.isAtEnd || follows.includes(next.tokenType))) {
            return this.putIn(wanted);
        }
        const misplaced = this.misplaced((type) => type === wanted || (isKeyword(type) && follows.includes(type)));
        if (misplaced === undefined) {
            throw new NotMended();
        }
        this.skip(misplaced);
        if (position.next.tokenType !== wanted) {
            return this.putIn(wanted);
        }
        engine.consumeToken();
        return engine.LA(0);
    }

    /** Where the text has no closing brace to go with an opening one that is put in, the block is an empty one. */
    private putIn(wanted: TokenType): IToken {
        const { engine, position } = this;
        if (wanted.name === '{' && position.closersAhead() <= position.openBlocks()) {
            this.unopenedAt = engine.currIdx;
        }
        return engine.getTokenToInsert(wanted);
    }

    /** Whether the parser stands in a block that has neither brace in the text. */
    get isUnopened(): boolean {
        return this.unopenedAt === this.engine.currIdx;
    }

    /**
     * A rule broke off.
     * @returns whether reading goes on behind it; else the rule that called it is asked
     */
    private endRule(): boolean {
        const { position } = this;
        if (position.depth === 1) {
            this.skip(this.engine.input.length);
            return true;
        }
        if (position.isClause()) {
            this.skipToClause((type) => position.canFollow(type), position.openBlocks(), false);
            return true;
        }
        const { tokenType } = position.next;
        if (!this.valueRules.has(position.rule())) {
            // In a heading: the block at its end is read all the same.
            const isBlock = (type: TokenType): boolean => type.name === '{' && position.canFollow(type);
            const misplaced = this.misplaced(isBlock);
            this.skip(misplaced ?? 0);
            return misplaced !== undefined || isBlock(tokenType);
        }
        // On the same line a word of the language was meant as the name; on the next it starts a clause.
        const goesOn = position.canFollow(tokenType);
        if (position.isAtEnd || (goesOn && (!isWord(tokenType) || position.startsLine()))) {
            return true;
        }
        const misplaced = this.misplaced((type) => isKeyword(type) && position.canFollow(type));
        this.skip(misplaced ?? 0);
        return goesOn || misplaced !== undefined;
    }

    /** How many tokens to leave out on this line to come to one that fits; never a brace. */
    private misplaced(fits: (type: TokenType) => boolean): number | undefined {
        for (let count = 0; ; count++) {
            const token = this.engine.LA(count + 1);
            if (token.tokenType === EOF || token.image === '}' || this.position.startsLine(count + 1)) {
                return undefined;
            }
            if (count > 0 && fits(token.tokenType)) {
                return count;
            }
            if (token.image === '{') {
                return undefined;
            }
        }
    }

    private skip(count: number): void {
        for (let skipped = 0; skipped < count; skipped++) {
            this.engine.SKIP_TOKEN();
        }
    }

    // ---------------------------------------------------------------- the clauses of a block
    /** The clauses of a block, or the items of a file, stop at something that is neither one of them nor the block's end. */
    private readOn(body: Body, round: Round, goesOn: () => boolean, hasMoved: boolean): void {
        const { engine, position } = this;
        const open = body.rule === FILE ? 0 : position.openBlocks() + 1;
        let isSaid = !hasMoved;
        while (!position.isAtEnd && !(open > 0 && position.isAt('}'))) {
            if (!isSaid && this.isClosedTooLate(open)) {
                return;
            }
            const meant = this.meantWord(body);
            if (!isSaid && !(meant && this.isHeading)) {
                this.noteSurplus(open);
                this.mistakes.stray(body);
            }
            if (meant) {
                this.mendWord(meant);
            } else {
                this.skipToClause(() => goesOn() || this.meantWord(body) !== undefined, open, true);
            }
            isSaid = false;
            while (!isSaid && goesOn()) {
                const start = engine.currIdx;
                round.DEF();
                // A clause that breaks off before its first token is over has had its say.
                isSaid = engine.currIdx === start;
            }
        }
    }

    /** The closing brace is missing: the next line goes on with a clause of a block outside, or with a new item. */
    private isClosedTooLate(open: number): boolean {
        const { position } = this;
        return (
            open > 0 &&
            position.startsLine() &&
            position.closersAhead() < open &&
            position.isClauseOutside(position.next.tokenType)
        );
    }

    /** The brace before was one too many if what follows belongs inside the block it closed. */
    private noteSurplus(open: number): void {
        const { before, shape } = this.position;
        const next = this.position.next.tokenType;
        const isBehindBlock = before?.image === '}' && this.position.closersAhead() > open;
        if (
            !this.isSurplusNoted &&
            isBehindBlock &&
            isWord(next) &&
            shape.bodiesOf(this.lastClosed).some(({ starts }) => starts.has(next))
        ) {
            this.surplus.set(before.startOffset, before);
            this.isSurplusNoted = true;
        }
    }

    /** Reads the next token as the word it is a slip of. */
    private mendWord(meant: TokenType): void {
        const { input, currIdx } = this.engine;
        const { next } = this.position;
        if (this.isHeading) {
            const end = next.startOffset + next.image.length;
            this.mistakes.mistyped.push({ word: next.image, meant: meant.name, start: next.startOffset, end });
        }
        input[currIdx + 1] = { ...next, image: meant.name, tokenType: meant, tokenTypeIdx: meant.tokenTypeIdx! };
    }

    /** Whether a block is opened on the line of the next token. */
    private get isHeading(): boolean {
        const { engine, position } = this;
        for (let distance = 2; engine.LA(distance).tokenType !== EOF && !position.startsLine(distance); distance++) {
            if (/^[{}]$/.test(engine.LA(distance).image)) {
                return engine.LA(distance).image === '{';
            }
        }
        return false;
    }

    /** The word that can start a clause here and that the next token is a slip of, if there is just one. */
    meantWord({ starts }: Body): TokenType | undefined {
        const { image, tokenType } = this.position.next;
        if (tokenType.name !== 'ID' || this.mistakes.isTired) {
            return undefined;
        }
        const word = nearestWord(image, wordsOf(starts));
        return word === undefined ? undefined : [...starts].find(({ name }) => name === word);
    }

    /**
     * Leaves out tokens up to the next clause of the block, its end, or the end of the text. Blocks inside are left out whole.
     * @param starts whether the next token, of this type, can start a clause that may stand here
     * @param isNextBad whether the token that stands next is known not to
     */
    private skipToClause(starts: (type: TokenType) => boolean, open: number, isNextBad: boolean): void {
        const { engine, position } = this;
        // An opening brace that no closing one goes with opens nothing.
        let inside = isNextBad && position.isAt('{') && position.closersAhead() < open ? -1 : 0;
        for (let mayStop = !isNextBad; !position.isAtEnd; mayStop = true) {
            const { tokenType, image } = position.next;
            if (inside === 0 && image === '}' && open > 0) {
                return;
            }
            if (mayStop && this.isNextClause(starts, open, inside)) {
                return;
            }
            inside += image === '{' ? 1 : image === '}' && inside > 0 ? -1 : 0;
            engine.SKIP_TOKEN();
            // An opening brace without a heading is left out alone where a clause follows it.
            const { tokenType: behind } = position.next;
            if (!mayStop && tokenType.name === '{' && isWord(behind) && starts(behind)) {
                return;
            }
        }
    }

    private isNextClause(starts: (type: TokenType) => boolean, open: number, inside: number): boolean {
        const { position } = this;
        const { tokenType } = position.next;
        const isLineStart = position.startsLine();
        if (inside === 0 && starts(tokenType) && (isLineStart || position.isFirmWord(tokenType))) {
            return true;
        }
        if (inside === 0 && isLineStart && tokenType.name === 'ID' && position.isInListOfTexts()) {
            return true;
        }
        const isUnclosed = isLineStart && position.closersAhead() < open + inside;
        return isUnclosed && (position.isClauseOutside(tokenType) || (isWord(tokenType) && starts(tokenType)));
    }
}
