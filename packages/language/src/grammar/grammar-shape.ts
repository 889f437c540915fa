import {
    Alternation,
    NonTerminal,
    Option,
    Repetition,
    RepetitionMandatory,
    Terminal,
    type IProduction,
    type Rule,
    type TokenType,
} from 'chevrotain';
import { wordsOf } from './words.js';

/** The clauses between a block's braces, or the items of a file. */
export class Body {
    private known: ReadonlySet<TokenType> | undefined;

    constructor(
        readonly rule: string,
        /** Tells the bodies of one rule apart. */
        readonly occurrence: number,
        private readonly findStarts: () => ReadonlySet<TokenType>,
    ) {}

    /** Every token that can start one of its clauses. */
    get starts(): ReadonlySet<TokenType> {
        return (this.known ??= this.findStarts());
    }

    /** Whether each of its lines begins with a text, as in a guest list. */
    get isOfTexts(): boolean {
        return wordsOf(this.starts).length === 0 && [...this.starts].some(({ name }) => name === 'STRING');
    }
}

/** What may stand next where a rule has been called. */
export interface Following {
    readonly tokens: ReadonlySet<TokenType>;
    /** Whether the calling rule may end there, so that what follows *it* may stand next too. */
    readonly mayEnd: boolean;
}

const NOTHING: Following = { tokens: new Set(), mayEnd: true };

function join(first: Following, then: Following): Following {
    return first.mayEnd ? { tokens: new Set([...first.tokens, ...then.tokens]), mayEnd: then.mayEnd } : first;
}

/** Rule names carry an invisible mark inside the parser; here they are as in the grammar. */
export function plainRuleName(name: string): string {
    return name.replace(/\u200B$/, '');
}

/** A call is told by the rule called, its place in the calling rule, and the calling rule. */
export function callKey(called: string, occurrence: number, caller: string): string {
    return `${called} ${occurrence} ${caller}`;
}

/**
 * What the grammar says about the start and the end of its parts, read off the rules that the parser recorded.
 * Recovery stands on it: where a block's clauses are, which words start them and which may come next.
 */
export class GrammarShape {
    readonly bodies: readonly Body[];
    /** The calls that read one clause of a body, as keys. */
    readonly clauseCalls: ReadonlySet<string>;
    private readonly bodiesByRule = new Map<string, Body[]>();
    private readonly starts = new Map<string, Following>();
    private follows: Map<string, Following> | undefined;

    constructor(
        private readonly rules: Readonly<Record<string, Rule>>,
        entry: string,
    ) {
        const clauseCalls = new Set<string>();
        for (const rule of Object.values(rules)) {
            const name = plainRuleName(rule.name);
            for (const loop of name === entry ? loopsOf(rule.definition) : bodyLoops(rule.definition)) {
                const body = new Body(name, loop.idx, () => this.first(loop.definition).tokens);
                this.bodiesByRule.set(name, [...(this.bodiesByRule.get(name) ?? []), body]);
                for (const call of callsOf(loop.definition)) {
                    clauseCalls.add(callKey(plainRuleName(call.nonTerminalName), call.idx, name));
                }
            }
        }
        this.bodies = [...this.bodiesByRule.values()].flat();
        this.clauseCalls = clauseCalls;
    }

    body(rule: string, occurrence: number): Body | undefined {
        return this.bodiesByRule.get(rule)?.find((body) => body.occurrence === occurrence);
    }

    /** The bodies of one rule; most have one, many none. */
    bodiesOf(rule: string): readonly Body[] {
        return this.bodiesByRule.get(rule) ?? [];
    }

    /** The tokens that can start a rule. */
    startsOf(rule: string): ReadonlySet<TokenType> {
        const found = Object.values(this.rules).find(({ name }) => plainRuleName(name) === rule);
        return this.first(found?.definition ?? []).tokens;
    }

    /** What may stand after a call, within the calling rule. */
    after(key: string): Following {
        if (!this.follows) {
            this.follows = new Map();
            for (const rule of Object.values(this.rules)) {
                this.follow(this.follows, rule.definition, NOTHING, plainRuleName(rule.name));
            }
        }
        return this.follows.get(key) ?? NOTHING;
    }

    /** The tokens that can start the alternatives of one choice. */
    choice(rule: string, occurrence: number): ReadonlySet<TokenType> {
        const found = this.find(rule, (part) => part instanceof Alternation && part.idx === occurrence);
        return found ? this.first([found]).tokens : new Set();
    }

    /** The tokens that can start one round of a loop that must run at least once. */
    round(rule: string, occurrence: number): ReadonlySet<TokenType> {
        const found = this.find(rule, (part) => part instanceof RepetitionMandatory && part.idx === occurrence);
        return found ? this.first([found]).tokens : new Set();
    }

    private find(rule: string, wanted: (part: IProduction) => boolean): IProduction | undefined {
        const definition = Object.values(this.rules).find(({ name }) => plainRuleName(name) === rule)?.definition;
        return definition && partsOf(definition).find(wanted);
    }

    private first(parts: readonly IProduction[]): Following {
        return parts.reduce<Following>((sum, part) => (sum.mayEnd ? join(sum, this.firstOf(part)) : sum), NOTHING);
    }

    private firstOf(part: IProduction): Following {
        if (part instanceof Terminal) {
            return { tokens: new Set([part.terminalType]), mayEnd: false };
        }
        if (part instanceof NonTerminal) {
            const name = part.nonTerminalName;
            let known = this.starts.get(name);
            if (!known) {
                this.starts.set(name, NOTHING);
                known = this.first(this.rules[name]?.definition ?? []);
                this.starts.set(name, known);
            }
            return known;
        }
        if (part instanceof Alternation) {
            const choices = childrenOf(part).map((choice) => this.first(childrenOf(choice)));
            return {
                tokens: new Set(choices.flatMap(({ tokens }) => [...tokens])),
                mayEnd: choices.some(({ mayEnd }) => mayEnd),
            };
        }
        const inside = this.first(childrenOf(part));
        const mayBeAbsent = part instanceof Option || part instanceof Repetition;
        return mayBeAbsent ? { ...inside, mayEnd: true } : inside;
    }

    private follow(follows: Map<string, Following>, parts: readonly IProduction[], end: Following, rule: string): void {
        let next = end;
        for (const part of [...parts].reverse()) {
            if (part instanceof NonTerminal) {
                follows.set(callKey(plainRuleName(part.nonTerminalName), part.idx, rule), next);
            } else if (part instanceof Alternation) {
                for (const choice of childrenOf(part)) {
                    this.follow(follows, childrenOf(choice), next, rule);
                }
            } else if (!(part instanceof Terminal)) {
                const inside = childrenOf(part);
                const repeats = part instanceof Repetition || part instanceof RepetitionMandatory;
                const after = repeats ? join({ ...this.first(inside), mayEnd: true }, next) : next;
                this.follow(follows, inside, after, rule);
            }
            next = join(this.firstOf(part), next);
        }
    }
}

/** The parts of a part within the same rule; a call is not looked into. */
function childrenOf(part: IProduction): readonly IProduction[] {
    return 'definition' in part && !(part instanceof NonTerminal) ? (part.definition as IProduction[]) : [];
}

function partsOf(parts: readonly IProduction[]): IProduction[] {
    return parts.flatMap((part) => [part, ...partsOf(childrenOf(part))]);
}

function callsOf(parts: readonly IProduction[]): NonTerminal[] {
    return partsOf(parts).filter((part) => part instanceof NonTerminal);
}

function loopsOf(parts: readonly IProduction[]): Repetition[] {
    return parts.filter((part) => part instanceof Repetition);
}

/** The loops that stand right before a closing brace. */
function bodyLoops(parts: readonly IProduction[]): Repetition[] {
    return parts.flatMap((part, index) => {
        const next = parts[index + 1];
        const isBody = part instanceof Repetition && next instanceof Terminal && next.terminalType.name === '}';
        return isBody ? [part] : bodyLoops(childrenOf(part));
    });
}
