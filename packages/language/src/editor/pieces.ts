import { type AstNode, type CompositeCstNode, type CstNode, type LeafCstNode } from 'langium';

/** A block in braces. */
export interface PlacedBlock {
    /** The syntax node it belongs to, such as `Course`. */
    readonly type: string;
    /** Its braces, by their place among the pieces. */
    open: number;
    close: number;
    readonly isInAnother: boolean;
    holdsBlock: boolean;
    /** Whether it is laid out on one line. */
    isFlat: boolean;
}

/** A word, sign or comment of a text, with what its place in the tree means for the layout. */
export interface Piece {
    readonly sort: 'word' | 'line-comment' | 'block-comment';
    readonly text: string;
    readonly start: number;
    readonly end: number;
    /** The first word of an item of the file or of a clause in a block. */
    readonly startsClause: boolean;
    /** The block whose brace it is. */
    readonly block: PlacedBlock | undefined;
}

/**
 * The pieces of a text that was read without a problem, in its order.
 * @param parts those of each of its trees, and where in the text that begins
 */
export function piecesOf(parts: readonly { readonly pieces: readonly Piece[]; readonly start: number }[]): Piece[] {
    const all = parts.flatMap(({ pieces, start }) =>
        start === 0
            ? pieces
            : pieces.map((piece) => ({ ...piece, start: piece.start + start, end: piece.end + start })),
    );
    all.forEach(({ block, text }, index) => {
        if (block) {
            block[text === '{' ? 'open' : 'close'] = index;
        }
    });
    return all;
}

/** Of a tree, from where it begins, and as if it were the only one. */
export function piecesIn(tree: AstNode): readonly Piece[] {
    const pieces: Piece[] = [];
    if (tree.$cstNode) {
        collect(tree.$cstNode as CompositeCstNode, undefined, true, pieces);
    }
    return pieces.sort((a, b) => a.start - b.start);
}

/** @param holdsClauses whether the nodes inside are items or clauses, until a brace says otherwise */
function collect(
    node: CompositeCstNode,
    around: PlacedBlock | undefined,
    holdsClauses: boolean,
    pieces: Piece[],
): void {
    let block = around;
    let isInside = holdsClauses;
    for (const child of node.content) {
        if (isComposite(child)) {
            const first = pieces.length;
            collect(child, block, false, pieces);
            if (isInside) {
                markClause(pieces, first);
            }
            continue;
        }
        const leaf = child as LeafCstNode;
        const opens = leaf.text === '{' && !leaf.hidden;
        const closes = leaf.text === '}' && !leaf.hidden;
        if (opens) {
            if (around) {
                around.holdsBlock = true;
            }
            const isInAnother = around !== undefined;
            block = { type: node.astNode.$type, open: 0, close: 0, isInAnother, holdsBlock: false, isFlat: false };
        }
        pieces.push(pieceOf(leaf, opens || closes ? block : undefined));
        if (opens || closes) {
            isInside = opens;
            block = opens ? block : around;
        }
    }
}

function markClause(pieces: Piece[], from: number): void {
    for (let index = from; index < pieces.length; index++) {
        if (pieces[index]!.sort === 'word') {
            pieces[index] = { ...pieces[index]!, startsClause: true };
            return;
        }
    }
}

function pieceOf({ text, offset, end, hidden }: LeafCstNode, block: PlacedBlock | undefined): Piece {
    const sort = !hidden ? 'word' : text.startsWith('//') ? 'line-comment' : 'block-comment';
    return { sort, text, start: offset, end, startsClause: false, block };
}

function isComposite(node: CstNode): node is CompositeCstNode {
    return 'content' in node;
}
