import type { IToken } from 'chevrotain';
import { CstNodeBuilder, type CstNode, type GrammarAST, type LeafCstNode } from 'langium';

/** Spares the framework two searches from the front of a list, one of them before every token, that take long in a long text. */
export class QuickTreeBuilder extends CstNodeBuilder {
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
