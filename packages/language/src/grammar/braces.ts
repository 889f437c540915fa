/** What is needed of a token to match braces. Lines and columns start at 1, offsets at 0. */
export interface Placed {
    readonly image: string;
    readonly startOffset: number;
    readonly startLine?: number;
    readonly startColumn?: number;
    readonly endLine?: number;
}

/** A block, as its braces tell. Offsets are those of the braces; the heading starts with the first word of its line. */
export interface Block {
    readonly open: number;
    /** `undefined` where the closing brace is missing. */
    readonly close: number | undefined;
    readonly heading: number;
    readonly depth: number;
}

interface Open {
    readonly token: Placed;
    /** The first token of the line the brace stands on. */
    readonly lineStart: Placed;
    /** The block it becomes, by its place in the list of blocks. */
    readonly place: number;
    readonly depth: number;
}

/**
 * Pairs braces. Where they don't come out even, the column of a closing brace that starts its line says which block it
 * was meant to close: the blocks opened inside that one are the unclosed ones.
 * @returns the blocks in the order of their opening braces
 */
export function matchBraces(tokens: readonly Placed[]): Block[] {
    const blocks: Block[] = [];
    const open: Open[] = [];
    const end = (opened: Open, close: number | undefined): void => {
        const heading = Math.min(opened.lineStart.startOffset, opened.token.startOffset);
        blocks[opened.place] = { open: opened.token.startOffset, close, heading, depth: opened.depth };
    };
    const isEven = tokens.reduce((sum, { image }) => sum + (image === '{' ? 1 : image === '}' ? -1 : 0), 0) === 0;
    let lineStart: Placed | undefined;
    let place = 0;
    let previous: Placed | undefined;
    for (const token of tokens) {
        if (!lineStart || token.startLine !== previous?.endLine) {
            lineStart = token;
        }
        previous = token;
        if (token.image === '{') {
            open.push({ token, lineStart, place: place++, depth: open.length });
        } else if (token.image === '}') {
            if (!isEven && lineStart === token) {
                const meant = open.findLastIndex((each) => each.lineStart.startColumn === token.startColumn);
                for (const unclosed of meant < 0 ? [] : open.splice(meant + 1)) {
                    end(unclosed, undefined);
                }
            }
            const closed = open.pop();
            if (closed) {
                end(closed, token.startOffset);
            }
        }
    }
    for (const unclosed of open) {
        end(unclosed, undefined);
    }
    return blocks;
}

/** The innermost block around an offset; its heading counts as outside. */
export function blockAround(blocks: readonly Block[], offset: number): Block | undefined {
    return blocks.findLast(({ open, close }) => open < offset && (close === undefined || offset <= close));
}
