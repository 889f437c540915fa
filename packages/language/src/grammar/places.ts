/** Where nodes and their properties stand in the text, for the framework's trees and for the plain parser's. */
import type { AstNode, CstNode } from 'langium';

/** UTF-16 offsets. */
export interface Span {
    readonly offset: number;
    readonly end: number;
}

/** What the plain parser notes on each node: its own place, and those of its properties in the order of the text. */
export interface Places extends Span {
    readonly properties: readonly (readonly [property: string, place: Span])[];
}

export interface PlainNode {
    readonly $places: Places;
    /** What was read of it before, where it was not parsed again. */
    readonly $known?: object;
    /** Something in it was read by the framework. */
    $isMistaken?: boolean;
}

/** What was read before of a block that was not parsed again. */
export function knownOf(node: AstNode): object | undefined {
    return (node as Partial<PlainNode>).$known;
}

/** True of a node of the plain parser that is whole: the same text is read as the same again. */
export function isPlain(node: AstNode): boolean {
    return placesOf(node) !== undefined && (node as Partial<PlainNode>).$isMistaken !== true;
}

export function spanOf(node: AstNode): Span | undefined {
    return placesOf(node) ?? node.$cstNode;
}

/** Every place where a property was written, in the order of the text. */
export function spansOfProperty(node: AstNode, property: string): Span[] {
    const places = placesOf(node);
    if (places !== undefined) {
        return places.properties.filter(([name]) => name === property).map(([, place]) => place);
    }
    return node.$cstNode ? childrenOf(node.$cstNode).flatMap((child) => propertyNodes(child, property, node)) : [];
}

/** The tokens of a whole tree with its comments. None for a plain tree, in which nothing is amiss. */
export function* leavesOf(node: AstNode): Iterable<CstNode> {
    if (node.$cstNode) {
        yield* leaves(node.$cstNode);
    }
}

function* leaves(node: CstNode): Iterable<CstNode> {
    const children = childrenOf(node);
    if (children.length === 0) {
        yield node;
    }
    for (const child of children) {
        yield* leaves(child);
    }
}

function placesOf(node: AstNode): Places | undefined {
    return (node as Partial<PlainNode>).$places;
}

function propertyNodes(node: CstNode, property: string, owner: AstNode): CstNode[] {
    if (assignedProperty(node) === property) {
        return [node];
    }
    // The parts of a node that were read by rules of their own belong to it, those of its children don't.
    return node.astNode === owner ? childrenOf(node).flatMap((child) => propertyNodes(child, property, owner)) : [];
}

function assignedProperty(node: CstNode): string | undefined {
    let source: AstNode | undefined = node.grammarSource;
    while (source !== undefined && source.$type !== 'Assignment') {
        source = source.$container;
    }
    return (source as { feature?: string } | undefined)?.feature;
}

function childrenOf(node: CstNode): readonly CstNode[] {
    return 'content' in node ? (node.content as readonly CstNode[]) : [];
}
