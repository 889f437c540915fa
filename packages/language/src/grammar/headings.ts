import type { Engine } from './engine.js';
import { FILE, type ReadingPosition } from './reading-position.js';
import type { Recovery } from './recovery.js';
import { isWord } from './words.js';

/** Blocks whose clauses may start with any name, so that a new item of the file must be told by its heading. */
const BLOCKS_OF_NAMES: ReadonlySet<string> = new Set(['Piece', 'Team', 'HouseClause', 'LocalCode']);

/** Rules whose loop takes any word for a mistyped first word. */
const TAKING_ANY_WORD: ReadonlySet<string> = new Set([FILE, 'Menu', 'Course', 'Bread']);

/** Tells the heading of a block from words that only look like a clause, where the grammar alone can't. */
export class Headings {
    constructor(
        private readonly engine: Engine,
        private readonly position: ReadingPosition,
        private readonly recovery: Recovery,
    ) {}

    /** Whether the next token is no clause of this block, whatever the grammar would make of it. */
    endsBody(): boolean {
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
    private isHeading(...shapes: readonly ('text' | 'name' | 'plain name' | '{' | 'is')[]): boolean {
        return shapes.every((shape, index) => {
            const { image, tokenType } = this.engine.LA(index + 2);
            if (this.position.startsLine(index + 2)) {
                return false;
            }
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
}
