import { MismatchedTokenException, type IToken, type Rule, type TokenType } from 'chevrotain';
import type { Said } from './messages.js';

/**
 * The parts of the parser library's engine that recovery replaces or reads. It offers no other way to say where reading
 * goes on after a mistake, and its own way, at the next token of a kind that could follow, loses whole courses.
 */
export interface Engine {
    readonly input: IToken[];
    /** The token taken last; -1 at the start. */
    readonly currIdx: number;
    readonly RULE_STACK: readonly number[];
    readonly RULE_OCCURRENCE_STACK: readonly number[];
    readonly shortRuleNameToFull: Readonly<Record<number, string>>;
    readonly tokensMap: Readonly<Record<string, TokenType>>;
    LA(distance: number): IToken;
    SKIP_TOKEN(): IToken;
    consumeToken(): void;
    SAVE_ERROR(error: Error): Error;
    getTokenToInsert(type: TokenType): IToken;
    getGAstProductions(): Record<string, Rule>;

    consumeInternalError(wanted: TokenType, found: IToken): never;
    raiseNoAltException(occurrence: number): never;
    raiseEarlyExitException(occurrence: number): never;
    tryInRuleRecovery(wanted: TokenType, follows: readonly TokenType[]): IToken;
    invokeRuleCatch(error: Error): undefined;
    attemptInRepetitionRecovery(
        loop: unknown,
        loopArguments: readonly [occurrence: number, round: Round],
        goesOn: () => boolean,
        kind: number,
        occurrence: number,
        walker: unknown,
        hasMoved?: boolean,
    ): void;
}

/** One round of a loop. */
export interface Round {
    DEF(): void;
}

/** A place where the text can't be read on, with what to say about it. */
export class Misreading extends MismatchedTokenException {
    constructor(
        readonly said: Said,
        /** The first token that does not fit; the end of the text where it breaks off. */
        found: IToken,
        /** The token before it, `undefined` at the start of the text. */
        readonly before: IToken | undefined,
        readonly sort: 'wanting' | 'stray' | 'brace-missing' | 'brace-surplus',
    ) {
        super(said.message, found, before ?? found);
    }
}

/** A word read as another one that it is a slip of: the first of a block. Offsets into the text. */
export interface MistypedWord {
    readonly word: string;
    readonly meant: string;
    readonly start: number;
    readonly end: number;
}

/** No way was found to go on at this very token; the library knows the error by its name. */
export class NotMended extends Error {
    override readonly name = 'InRuleRecoveryException';
}
