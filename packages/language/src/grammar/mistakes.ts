import { EOF, type IToken, type TokenType } from 'chevrotain';
import { Misreading, type Engine, type MistypedWord } from './engine.js';
import type { Body } from './grammar-shape.js';
import { MISSING_BRACE, SURPLUS_BRACE, type Said } from './messages.js';
import type { ReadingPosition } from './reading-position.js';
import { strayMessage } from './stray-message.js';
import { lostThreadMessage, wantingMessage } from './wanting-message.js';

const MOST_MISTAKES = 300;
const PASSED_OVER: Said = { message: 'This can’t be read.' };

/** Notes what can't be read where the parser stands, with what is said about it. */
export class Mistakes {
    /** First words of blocks that were read as what they are a slip of. A finding of their own: the block is read whole. */
    readonly mistyped: MistypedWord[] = [];
    private count = 0;
    private passedOver: Misreading | undefined;

    /** @param textFrom the words from a token on that may be meant as a text */
    constructor(
        private readonly engine: Engine,
        private readonly position: ReadingPosition,
        private readonly textFrom: (token: IToken) => string,
    ) {}

    restart(): void {
        this.count = 0;
        this.mistyped.length = 0;
    }

    /** Nobody reads so many messages: from here on mistakes are passed over without a word. */
    get isTired(): boolean {
        return this.count >= MOST_MISTAKES;
    }

    braceMissing(): Error {
        return this.isTired ? this.nothing() : this.note(MISSING_BRACE, 'brace-missing');
    }

    /** A rule breaks off over a mistake that was noted before. One error for all, as it costs much to make. */
    nothing(): Misreading {
        return (this.passedOver ??= new Misreading(PASSED_OVER, this.position.next, undefined, 'wanting'));
    }

    /** One of these tokens must stand here. */
    wanting(wanted: () => Iterable<TokenType>): Error {
        const { position } = this;
        if (this.isTired) {
            return this.nothing();
        }
        const said = wantingMessage({
            rule: position.rule(),
            caller: position.rule(1),
            wanted: [...wanted()],
            found: position.isAtEnd ? undefined : position.next,
            before: position.before,
            beforeThat: position.beforeThat,
            isOnSameLine: !position.startsLine(),
            goesOn: position.isFirmWord(position.next.tokenType) && position.canFollow(position.next.tokenType),
            words: position.isAtEnd ? '' : this.textFrom(position.next),
        });
        return this.note(said, 'wanting');
    }

    /** The next token may stand where it stands, but no alternative goes on with the one after it. */
    threadLost(): Error {
        const { position } = this;
        const after = this.engine.LA(2);
        const isAtEnd = after.tokenType === EOF;
        const said = lostThreadMessage(
            position.next,
            position.before,
            isAtEnd ? undefined : after,
            !position.startsLine(2),
        );
        return this.note(said, 'wanting', after, position.next);
    }

    /** The next token starts none of the clauses that may stand here. */
    stray(body: Body): void {
        const { position } = this;
        if (this.isTired) {
            return;
        }
        const said = strayMessage({
            body,
            found: position.next,
            before: position.before,
            isOnSameLine: !position.startsLine(),
            bodies: position.shape.bodies,
            keywords: position.firmWords(),
            isName: (type) => position.isName(type),
            words: this.textFrom(position.next),
        });
        this.note(said, position.isAt('}') ? 'brace-surplus' : 'stray');
    }

    /** What is said about a brace that was taken away. */
    braceSurplus(brace: IToken): Misreading {
        return new Misreading(SURPLUS_BRACE, brace, undefined, 'brace-surplus');
    }

    private note(
        said: Said,
        sort: Misreading['sort'],
        found = this.position.next,
        before = this.position.before,
    ): Error {
        this.count++;
        return this.engine.SAVE_ERROR(new Misreading(said, found, before, sort));
    }
}
