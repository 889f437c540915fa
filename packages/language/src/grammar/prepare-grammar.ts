import { EOF, type IToken, type TokenType } from 'chevrotain';
import {
    createDefaultCoreModule,
    createDefaultSharedCoreModule,
    createParser,
    EmptyFileSystem,
    GrammarAST,
    GrammarUtils,
    inject,
    type AstNode,
    type LangiumCoreServices,
    type LangiumSharedCoreServices,
} from 'langium';
import { CoverGeneratedModule, CoverGeneratedSharedModule } from './generated/module.js';
import { CoverCoreModule } from './parse.js';
import type { Assigned, Choice, PlainGrammar, PlainRule, PlainToken, Step } from './plain-grammar.js';

/** Tokens looked ahead before a choice is given up as one the plain parser can't make. */
const FARTHEST = 6;

/** Works out the grammar of the plain parser. Runs when the program is built. */
export function prepareGrammar(): PlainGrammar {
    const shared: LangiumSharedCoreServices = inject(
        createDefaultSharedCoreModule(EmptyFileSystem),
        CoverGeneratedSharedModule,
    );
    const services: LangiumCoreServices = inject(
        createDefaultCoreModule({ shared }),
        CoverGeneratedModule,
        CoverCoreModule,
    );
    shared.ServiceRegistry.register(services);
    const types = Object.values(services.parser.Lexer.definition as Record<string, TokenType>);
    const recorder = new Recorder(services, types);
    createParser(services.Grammar, recorder as never, services.parser.Lexer.definition as never);
    const tokens = types.map((type) => plainToken(type, types, services.Grammar));
    const rules = recorder.rules();
    const entry = services.Grammar.rules.find((rule) => GrammarAST.isParserRule(rule) && rule.entry);
    return {
        tokens,
        startingWith: startingWith(services),
        rules,
        entry: rules.findIndex(({ name }) => name === entry?.name),
        always: alwaysThere(services),
    };
}

// ------------------------------------------------------------------ tokens
function plainToken(type: TokenType, types: readonly TokenType[], grammar: GrammarAST.Grammar): PlainToken {
    const { PATTERN: pattern, LONGER_ALT: longer = [], GROUP: group } = type;
    const rule = grammar.rules.find(({ name }) => name === type.name);
    if (GrammarAST.isTerminalRule(rule) && (rule.type?.name ?? 'string') !== 'string') {
        throw new Error(`The plain parser takes terminals as texts; ${type.name} is none.`);
    }
    const common = {
        longer: [longer].flat().map((other) => types.indexOf(other)),
        isHidden: group !== undefined,
        ...(GrammarAST.isTerminalRule(rule) && { terminal: rule.name }),
    };
    if (typeof pattern === 'string') {
        return { text: pattern, ...common };
    }
    if (pattern instanceof RegExp && pattern.flags === '') {
        return { pattern: pattern.source, ...common };
    }
    throw new Error(`The plain lexer takes words and regular expressions without flags; ${type.name} is neither.`);
}

/** Which tokens can start with each ASCII character, as the framework's lexer has worked out. */
function startingWith({ parser }: LangiumCoreServices): number[][] {
    const { patternIdxToConfig, charCodeToPatternIdxToConfig } = (
        parser.Lexer as unknown as {
            chevrotainLexer: {
                patternIdxToConfig: { defaultMode: readonly object[] };
                charCodeToPatternIdxToConfig: { defaultMode: readonly (readonly object[] | undefined)[] };
            };
        }
    ).chevrotainLexer;
    const tokens = new Map(patternIdxToConfig.defaultMode.map((config, token) => [config, token]));
    return Array.from({ length: 128 }, (_, code) =>
        (charCodeToPatternIdxToConfig.defaultMode[code] ?? []).map((config) => tokens.get(config)!),
    );
}

// ------------------------------------------------------------------ nodes
function alwaysThere({ shared }: LangiumCoreServices): PlainGrammar['always'] {
    const always: Record<string, { lists: string[]; flags: string[] }> = {};
    for (const type of shared.AstReflection.getAllTypes()) {
        const { properties } = shared.AstReflection.getTypeMetaData(type);
        const withDefault = Object.values(properties).filter(({ defaultValue }) => defaultValue !== undefined);
        if (withDefault.length > 0) {
            always[type] = {
                lists: withDefault.filter(({ defaultValue }) => Array.isArray(defaultValue)).map(({ name }) => name),
                flags: withDefault.filter(({ defaultValue }) => defaultValue === false).map(({ name }) => name),
            };
        }
    }
    return always;
}

// ------------------------------------------------------------------ rules
type Repetition = { DEF: (args: object) => void; GATE?: unknown };
type Alternative = { ALT: (args: object) => void; GATE?: unknown };
type Feature = GrammarAST.AbstractElement;

/**
 * Stands in for a parser while the framework builds one: the rules tell it step by step what they would do.
 * Its methods are those that the framework's own rules call.
 */
class Recorder {
    readonly #types: readonly TokenType[];
    readonly #lookahead: Lookahead;
    readonly #recorded: { rule: GrammarAST.ParserRule; run: (args: object) => void }[] = [];
    #steps: Step[] = [];
    #current = '';

    constructor(services: LangiumCoreServices, types: readonly TokenType[]) {
        this.#types = types;
        this.#lookahead = new Lookahead(services, types);
    }

    rules(): PlainRule[] {
        return this.#recorded.map(({ rule, run }) => {
            this.#current = rule.name;
            const steps = this.#record(() => run({}));
            if (rule.fragment) {
                return { name: rule.name, makes: 'part', steps };
            }
            if (GrammarUtils.isDataTypeRule(rule)) {
                return { name: rule.name, makes: 'text', steps };
            }
            return { name: rule.name, makes: 'node', type: GrammarUtils.getTypeName(rule), steps };
        });
    }

    rule(rule: GrammarAST.AbstractRule, run: (args: object) => void): string {
        if (!GrammarAST.isParserRule(rule) || rule.parameters.length > 0) {
            throw new Error(`The plain parser does not know rules such as ${rule.name}.`);
        }
        this.#recorded.push({ rule, run });
        return rule.name;
    }

    getRule(name: string): string {
        return name;
    }

    isRecording(): boolean {
        return true;
    }

    consume(_: number, type: TokenType, feature: Feature): void {
        this.#push(['token', this.#types.indexOf(type)], assignment(feature));
    }

    subrule(_: number, rule: string, isFragment: boolean, feature: Feature): void {
        const index = this.#recorded.findIndex((recorded) => recorded.rule.name === rule);
        this.#push(['rule', index], isFragment ? undefined : assignment(feature));
    }

    #push([sort, index]: readonly ['token' | 'rule', number], assigned: Assigned | undefined): void {
        this.#steps.push(assigned === undefined ? [sort, index] : [sort, index, assigned]);
    }

    action(type: string, action: GrammarAST.Action): void {
        if (action.feature !== undefined) {
            throw new Error(`The plain parser does not turn trees around; ${this.#current} does.`);
        }
        this.#steps.push(['type', type]);
    }

    alternatives(occurrence: number, alternatives: readonly Alternative[]): void {
        const steps = alternatives.map(({ ALT, GATE }) => this.#record(() => ALT({}), GATE));
        this.#steps.push(['choice', this.#lookahead.ahead(this.#current, 'choice', occurrence), steps]);
    }

    optional(occurrence: number, { DEF, GATE }: Repetition): void {
        const steps = this.#record(() => DEF({}), GATE);
        this.#steps.push(['maybe', this.#lookahead.ahead(this.#current, 'maybe', occurrence), steps]);
    }

    many(occurrence: number, { DEF, GATE }: Repetition): void {
        const steps = this.#record(() => DEF({}), GATE);
        this.#steps.push(['any', this.#lookahead.ahead(this.#current, 'any', occurrence), steps]);
    }

    atLeastOne(occurrence: number, { DEF, GATE }: Repetition): void {
        const steps = this.#record(() => DEF({}), GATE);
        this.#steps.push(['some', this.#lookahead.ahead(this.#current, 'some', occurrence), steps]);
    }

    #record(run: () => void, gate?: unknown): Step[] {
        if (gate !== undefined) {
            throw new Error(`The plain parser does not know conditions; ${this.#current} has one.`);
        }
        const outside = this.#steps;
        this.#steps = [];
        run();
        const steps = this.#steps;
        this.#steps = outside;
        return steps;
    }
}

/** Nothing, or what the nearest assignment around a part of the grammar does with it. */
function assignment(feature: Feature): Assigned | undefined {
    for (let part: AstNode | undefined = feature; part !== undefined; part = part.$container) {
        if (GrammarAST.isAssignment(part)) {
            if (GrammarAST.isCrossReference(part.terminal)) {
                throw new Error(`The plain parser does not know references; ${part.feature} is one.`);
            }
            return [part.feature, part.operator];
        }
    }
    return undefined;
}

// ------------------------------------------------------------------ choices
type Decide = (this: {
    LA: (ahead: number) => Pick<IToken, 'tokenTypeIdx' | 'tokenType'>;
}) => number | boolean | undefined;

/** The sorts of decision as the framework's parser numbers them. */
const SORT = { choice: 1, maybe: 2, any: 3, some: 4 } as const;
const BITS_FOR_OCCURRENCE = 8;

/** A decision looked beyond the tokens it was shown. */
class NeedsMore extends Error {}

/** How each decision of the framework's parser comes out, found by asking it with every token there is. */
class Lookahead {
    readonly #decisions: ReadonlyMap<number, Decide>;
    readonly #ruleKeys: Readonly<Record<string, number>>;
    /** With the end of the text last. */
    readonly #types: readonly TokenType[];

    constructor(services: LangiumCoreServices, types: readonly TokenType[]) {
        // The parser keeps its decisions to itself. Looked at while building only.
        const { wrapper } = services.parser.LangiumParser as unknown as {
            wrapper: { lookAheadFuncsCache: Map<number, Decide>; fullRuleNameToShort: Record<string, number> };
        };
        this.#decisions = wrapper.lookAheadFuncsCache;
        this.#ruleKeys = wrapper.fullRuleNameToShort;
        this.#types = [...types, EOF];
    }

    /** @returns for a choice the number of the alternative; for the others 0 where the steps are to be taken */
    ahead(rule: string, sort: keyof typeof SORT, occurrence: number): Choice {
        const key = this.#ruleKeys[`${rule}\u200B`]! | (SORT[sort] << BITS_FOR_OCCURRENCE) | occurrence;
        const decide = this.#decisions.get(key);
        if (decide === undefined) {
            throw new Error(`The framework's parser has no decision ${occurrence} of sort ${sort} in ${rule}.`);
        }
        return this.#after([], decide, rule);
    }

    #after(seen: readonly TokenType[], decide: Decide, rule: string): Choice {
        if (seen.length === FARTHEST) {
            throw new Error(`The plain parser looks ${FARTHEST} tokens ahead; ${rule} needs more.`);
        }
        const on: Record<number, number | Choice> = {};
        for (const [token, type] of this.#types.entries()) {
            const shown = [...seen, type];
            const answer = ask(decide, shown);
            const found = answer === 'more' ? this.#after(shown, decide, rule) : answer;
            if (typeof found === 'number' || (found !== undefined && Object.keys(found.on).length > 0)) {
                on[token] = found;
            }
        }
        return seen.length === 0 ? { on } : shortened(on, this.#types.length);
    }
}

function ask(decide: Decide, shown: readonly TokenType[]): number | undefined | 'more' {
    const LA = (ahead: number) => {
        const tokenType = shown[ahead - 1];
        if (tokenType === undefined) {
            throw new NeedsMore();
        }
        return { tokenType, tokenTypeIdx: tokenType.tokenTypeIdx! };
    };
    try {
        const answer = decide.call({ LA });
        return typeof answer === 'boolean' ? (answer ? 0 : undefined) : answer;
    } catch (reason) {
        if (reason instanceof NeedsMore) {
            return 'more';
        }
        throw reason;
    }
}

/**
 * Says once what holds for most tokens, where every token was an answer or none of the alternatives takes it anyway.
 */
function shortened(on: Readonly<Record<number, number | Choice>>, tokens: number): Choice {
    const counts = new Map<string, number>();
    for (const found of Object.values(on)) {
        const key = JSON.stringify(found);
        counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    const [most] = [...counts].sort(([, a], [, b]) => b - a);
    if (most === undefined || Object.keys(on).length < tokens) {
        return { on };
    }
    const rest = Object.entries(on).filter(([, found]) => JSON.stringify(found) !== most[0]);
    return { on: Object.fromEntries(rest), otherwise: JSON.parse(most[0]) as number | Choice };
}
