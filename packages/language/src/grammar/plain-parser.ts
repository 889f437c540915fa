import { keepCompiled } from '../keep-compiled.js';
import type { File } from './generated/ast.js';
import { plainGrammarJson } from './plain/generated/plain-grammar.js';
import type { Places, PlainNode, Span } from './places.js';
import type { Assigned, Choice, PlainGrammar, Step } from './plain-grammar.js';
import { PlainLexer, type Tokens } from './plain-lexer.js';
import { terminalValue } from './terminal-values.js';

// The framework builds its parser out of the grammar each time a program starts, which takes longer than a command may.
// This small machine runs the same grammar, prepared at build time, over texts in which nothing is amiss. It explains
// nothing and recovers from nothing: any other text it leaves to the framework.

interface Machine {
    readonly grammar: PlainGrammar;
    readonly lexer: PlainLexer;
}

let machine: Machine | undefined;

function prepared(): Machine {
    if (machine === undefined) {
        const grammar = JSON.parse(plainGrammarJson) as PlainGrammar;
        machine = { grammar, lexer: new PlainLexer(grammar) };
    }
    return machine;
}

/**
 * The syntax tree of a text in which nothing is amiss, with the same nodes and properties as the framework's, places
 * noted as `places.ts` reads them, and without links to containers; `undefined` for every other text.
 */
export function parsePlainly(text: string): File | undefined {
    return readPlainly(text).tree;
}

/** Where a text ceased to be plain. */
export interface Stop {
    /** UTF-16 offset of the first token that does not fit. */
    readonly offset: number;
    /** The nodes that it stands in, as far as they were read: outermost first. */
    readonly inside: readonly UnfinishedNode[];
}

/** A node of which only the beginning was read. */
export interface UnfinishedNode {
    /** As far as it is known, with the nodes in it that are complete. */
    readonly node: Readonly<Record<string, unknown>>;
    /** -1 where none of its tokens was taken yet. */
    readonly start: number;
}

/** A block that was read before and whose text has not changed: it is not parsed again, and a node stands for it. */
export interface KnownBlock {
    readonly type: string;
    readonly end: number;
    /** What its node carries as `$known`. */
    readonly known: object;
}

/** By where they begin, at the first word of each; UTF-16 offsets. */
export type KnownBlocks = ReadonlyMap<number, KnownBlock>;

/**
 * The tree that `parsePlainly` gives, or where the text ceases to be plain.
 * @param blocks in which nothing is amiss, and which end with a `}`
 */
export function readPlainly(
    text: string,
    blocks?: KnownBlocks,
): { readonly tree: File; readonly stop?: undefined } | { readonly tree?: undefined; readonly stop: Stop } {
    const { grammar, lexer } = prepared();
    const tokens = lexer.tokenize(text);
    const parser = keepCompiled(new PlainParser(grammar, text, tokens, blocks));
    try {
        const tree = parser.parse() as unknown as File;
        return tokens.stop === undefined ? { tree } : { stop: { offset: tokens.stop, inside: [] } };
    } catch (reason) {
        if (reason === NOT_PLAIN) {
            return { stop: parser.stop };
        }
        throw reason;
    }
}

const NOT_PLAIN = new Error('not plain');

function notPlain(): never {
    throw NOT_PLAIN;
}

type Node = Record<string, unknown> & PlainNode;

/** What a rule has made so far. */
interface Frame {
    /** Absent in a rule that joins its tokens to a text. */
    node: Record<string, unknown> | undefined;
    text: string;
    /** -1 until a token was taken. */
    start: number;
    end: number;
    properties: (readonly [string, Span])[];
}

class PlainParser {
    readonly #grammar: PlainGrammar;
    readonly #text: string;
    readonly #tokens: Tokens;
    readonly #endOfText: number;
    /** The rules that are being read, outermost first. */
    readonly #open: Frame[] = [];
    #next = 0;

    constructor(
        grammar: PlainGrammar,
        text: string,
        tokens: Tokens,
        private readonly blocks?: KnownBlocks,
    ) {
        this.#grammar = grammar;
        this.#text = text;
        this.#tokens = tokens;
        this.#endOfText = grammar.tokens.length;
    }

    parse(): Node {
        const { node } = this.#rule(this.#grammar.entry);
        return this.#next < this.#tokens.types.length ? notPlain() : (node as Node);
    }

    /** Once it has given up. */
    get stop(): Stop {
        const { starts, stop } = this.#tokens;
        return {
            offset: starts[this.#next] ?? stop ?? this.#text.length,
            inside: this.#open.flatMap(({ node, start }) => (node === undefined ? [] : [{ node, start }])),
        };
    }

    #tokenAt(index: number): number {
        return this.#tokens.types[index] ?? this.#endOfText;
    }

    #rule(index: number): Frame {
        const { makes, type, steps } = this.#grammar.rules[index]!;
        const start = this.#tokens.starts[this.#next];
        const block = start === undefined ? undefined : this.blocks?.get(start);
        if (block !== undefined && block.type === type) {
            return this.#pass(block, start!);
        }
        const frame: Frame = {
            node: makes === 'node' ? { $type: type } : undefined,
            text: '',
            start: -1,
            end: 0,
            properties: [],
        };
        this.#open.push(frame);
        this.#run(steps, frame);
        this.#open.pop();
        if (frame.node !== undefined) {
            this.#finish(frame.node, frame);
        }
        return frame;
    }

    #pass({ type, end, known }: KnownBlock, start: number): Frame {
        const { starts } = this.#tokens;
        while (this.#next < starts.length && starts[this.#next]! < end) {
            this.#next++;
        }
        const $places: Places = { offset: start, end, properties: [] };
        return { node: { $type: type, $known: known, $places }, text: '', start, end, properties: [] };
    }

    #finish(node: Record<string, unknown>, { start, end, properties }: Frame): void {
        const always = this.#grammar.always[node.$type as string];
        for (const list of always?.lists ?? []) {
            node[list] ??= [];
        }
        for (const flag of always?.flags ?? []) {
            node[flag] ??= false;
        }
        node.$places = { offset: Math.max(0, start), end, properties } satisfies Places;
    }

    #run(steps: readonly Step[], frame: Frame): void {
        for (const step of steps) {
            switch (step[0]) {
                case 'token':
                    this.#takeToken(step[1], step[2], frame);
                    break;
                case 'rule':
                    this.#takeRule(step[1], step[2], frame);
                    break;
                case 'type':
                    frame.node!.$type = step[1];
                    break;
                case 'choice':
                    this.#run(step[2][this.#choose(step[1]) ?? notPlain()]!, frame);
                    break;
                case 'maybe':
                    if (this.#choose(step[1]) === 0) {
                        this.#run(step[2], frame);
                    }
                    break;
                case 'some':
                    this.#run(step[2], frame);
                    this.#repeat(step[1], step[2], frame);
                    break;
                case 'any':
                    this.#repeat(step[1], step[2], frame);
                    break;
            }
        }
    }

    #repeat(choice: Choice, steps: readonly Step[], frame: Frame): void {
        for (let before = -1; before < this.#next && this.#choose(choice) === 0;) {
            before = this.#next;
            this.#run(steps, frame);
        }
    }

    #choose(choice: Choice): number | undefined {
        let found: number | Choice | undefined = choice;
        for (let ahead = this.#next; typeof found === 'object'; ahead++) {
            found = found.on[this.#tokenAt(ahead)] ?? found.otherwise;
        }
        return found;
    }

    #takeToken(token: number, assigned: Assigned | undefined, frame: Frame): void {
        if (this.#tokenAt(this.#next) !== token) {
            notPlain();
        }
        // The grammar takes any word for a mistyped one; whether it is one is the framework's to say.
        if (assigned?.[0] === 'misspelt') {
            notPlain();
        }
        const offset = this.#tokens.starts[this.#next]!;
        const end = this.#tokens.ends[this.#next]!;
        this.#next++;
        const image = this.#text.slice(offset, end);
        const { terminal } = this.#grammar.tokens[token]!;
        const value = terminal === undefined ? image : terminalValue(terminal, image);
        widen(frame, offset, end);
        if (assigned !== undefined) {
            assign(frame, assigned, value, { offset, end });
        } else if (frame.node === undefined) {
            frame.text += value;
        }
    }

    #takeRule(rule: number, assigned: Assigned | undefined, frame: Frame): void {
        const { makes, steps } = this.#grammar.rules[rule]!;
        if (makes === 'part') {
            this.#run(steps, frame);
            return;
        }
        const made = this.#rule(rule);
        if (made.start < 0) {
            return;
        }
        widen(frame, made.start, made.end);
        const value = made.node ?? made.text;
        if (assigned !== undefined) {
            assign(frame, assigned, value, { offset: made.start, end: made.end });
        } else if (frame.node === undefined) {
            frame.text += made.text;
        } else if (made.node !== undefined) {
            // The rule's node stands for the caller's, with what the caller had already.
            frame.node = joined(made.node, frame.node);
            frame.properties.push(...made.properties);
        }
    }
}

function widen(frame: Frame, start: number, end: number): void {
    if (frame.start < 0) {
        frame.start = start;
    }
    frame.end = end;
}

function assign(frame: Frame, [property, operator]: Assigned, value: unknown, place: Span): void {
    const node = frame.node!;
    switch (operator) {
        case '=':
            node[property] = value;
            break;
        case '?=':
            node[property] = true;
            break;
        case '+=':
            if (Array.isArray(node[property])) {
                node[property].push(value);
            } else {
                node[property] = [value];
            }
            break;
    }
    frame.properties.push([property, place]);
}

function joined(made: Record<string, unknown>, before: Readonly<Record<string, unknown>>): Record<string, unknown> {
    for (const [name, value] of Object.entries(before)) {
        if (made[name] === undefined) {
            made[name] = value;
        } else if (Array.isArray(made[name]) && Array.isArray(value)) {
            made[name] = [...(value as unknown[]), ...(made[name] as unknown[])];
        }
    }
    return made;
}
