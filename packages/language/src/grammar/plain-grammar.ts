/**
 * The grammar as `plain-parser.ts` runs it: worked out from the framework's own parser when the program is built
 * (`prepare-grammar.ts`), so that the two can't differ. Plain data; tokens and rules are numbers into its lists.
 */
export interface PlainGrammar {
    /** In the order in which they are tried; the number after the last stands for the end of the text. */
    readonly tokens: readonly PlainToken[];
    /** Which tokens can start with each ASCII character, by its code. With any other character, all are tried. */
    readonly startingWith: readonly (readonly number[])[];
    readonly rules: readonly PlainRule[];
    readonly entry: number;
    /** For each type of node, the properties that are there even when nothing was written. */
    readonly always: Readonly<Record<string, { readonly lists: readonly string[]; readonly flags: readonly string[] }>>;
}

export interface PlainToken {
    /** A fixed text, or the source of a regular expression. */
    readonly text?: string;
    readonly pattern?: string;
    /** Tokens taken instead where they match more characters. */
    readonly longer: readonly number[];
    /** White space and comments. */
    readonly isHidden: boolean;
    /** The terminal rule that says what the token means; absent for words and marks of the language. */
    readonly terminal?: string;
}

export interface PlainRule {
    readonly name: string;
    /** `node` makes a node of `type`, `text` joins its tokens, `part` goes on with the caller's node. */
    readonly makes: 'node' | 'text' | 'part';
    readonly type?: string;
    readonly steps: readonly Step[];
}

/** What becomes of a token or of a rule's result: the property, and whether it is set, added to a list or made true. */
export type Assigned = readonly [property: string, operator: '=' | '+=' | '?='];

export type Step =
    | readonly ['token', token: number, assigned?: Assigned]
    | readonly ['rule', rule: number, assigned?: Assigned]
    | readonly ['type', type: string]
    | readonly ['choice', choice: Choice, alternatives: readonly (readonly Step[])[]]
    /** The steps are taken where the choice is 0: at most once, any number of times, at least once. */
    | readonly ['maybe' | 'any' | 'some', choice: Choice, steps: readonly Step[]];

/** Number of the alternative that the next token calls for, or how the token after it decides. */
export interface Choice {
    readonly on: Readonly<Record<number, number | Choice>>;
    /** For tokens not in `on`; absent where none of the alternatives can follow. */
    readonly otherwise?: number | Choice;
}
