import type { IToken } from 'chevrotain';
import { AstUtils, GrammarAST, GrammarUtils, type AstNode } from 'langium';
import { findFirstFeatures, findNextFeatures, type NextFeature } from 'langium/lsp';
import type { CoverServices } from './services.js';

/** What the grammar lets stand next. */
export interface Next {
    /** Words of clauses and phrases, each with the words that must follow it: `leaves the pass at`. */
    readonly phrases: readonly string[];
    /** A name may stand here, or a figure's unit, or a text. */
    readonly takesName: boolean;
    /** The words of a unit, its first or, after `fl`, its next. */
    readonly units: ReadonlySet<string>;
    readonly takesText: boolean;
    /** The rules of the grammar of which a figure may stand here. */
    readonly figuresOf: ReadonlySet<string>;
    /** The places in the grammar that the name or text may take, such as `glass` or `vessel`. */
    readonly properties: ReadonlySet<string>;
    /** Words that are names here without quotes, though they are words of the language elsewhere. */
    readonly nameWords: ReadonlySet<string>;
}

/** Rules that list words which are units, or names. */
const UNIT_RULES: ReadonlySet<string> = new Set(['Unit', 'UnitWord', 'LengthUnit', 'MistypedUnit']);
const NAME_RULES: ReadonlySet<string> = new Set([
    'Soft',
    'ClauseWord',
    'PlainName',
    'Name',
    'AnyName',
    'CustomWord',
    'FactName',
]);

/** Asks the framework's completion parser what may stand after a text. */
export function nextAfter(text: string, services: CoverServices): Next {
    const features = featuresAfter(text, services);
    const phrases = new Set<string>();
    const nameWords = new Set<string>();
    const properties = new Set<string>();
    const units = new Set<string>();
    const figuresOf = new Set<string>();
    const takes = { name: false, text: false };
    for (const { feature, property } of features) {
        const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? '';
        const isUnit = UNIT_RULES.has(rule) && (property === undefined || property === 'unit');
        if (GrammarAST.isRuleCall(feature) && GrammarAST.isTerminalRule(feature.rule.ref)) {
            const terminal = feature.rule.ref.name;
            // A mistyped block's word is no name.
            if (property === 'misspelt') {
                continue;
            }
            takes.name ||= terminal === 'ID';
            takes.text ||= terminal === 'STRING';
            if (terminal === 'NUMBER') {
                figuresOf.add(rule);
            }
            if (property !== undefined && (terminal === 'ID' || terminal === 'STRING')) {
                properties.add(property);
            }
        } else if (GrammarAST.isKeyword(feature)) {
            if (isUnit) {
                units.add(feature.value);
            } else if (NAME_RULES.has(rule) || UNIT_RULES.has(rule)) {
                nameWords.add(feature.value);
            } else if (/^\p{L}/u.test(feature.value)) {
                phrases.add(phraseFrom(feature));
            }
        }
    }
    return {
        phrases: [...phrases],
        takesName: takes.name,
        units,
        takesText: takes.text,
        figuresOf,
        properties,
        nameWords,
    };
}

/** Whether every word of a text fits, as far as it goes. */
export function isReadable(text: string, { follow }: Pick<CoverServices, 'follow'>): boolean {
    const { tokens, tokenIndex } = follow(text);
    return tokenIndex === tokens.length;
}

/** As many words before the cursor are read in every way the grammar allows. */
const MOST_LOOSE = 10;

/**
 * Where two phrases begin alike, the parser takes one of them before the cursor has said which is meant: after
 * `, 8` in a table's line, seats or places for wheelchairs. So the text is also parsed up to the clause's line only, and
 * the words from there on are followed through the grammar in every way. That takes words of the language for names
 * too, so what it finds counts only where the parser can go on with it.
 */
function featuresAfter(text: string, services: CoverServices): NextFeature[] {
    const { tokens } = services.follow(text);
    const line = tokens.at(-1)?.endLine;
    const loose = tokens.filter(({ endLine }) => endLine === line).slice(-MOST_LOOSE);
    const firm = featuresWith(text, [], services);
    const known = new Set(firm.map(({ feature }) => feature));
    const more = loose.length < 2 ? [] : featuresWith(text.slice(0, loose[0]!.startOffset), loose, services);
    const goesOn = new Map<string, boolean>();
    return [
        ...firm,
        ...more.filter(({ feature }) => {
            const word = GrammarAST.isKeyword(feature) ? feature.value : 'zz';
            if (!known.has(feature) && !goesOn.has(word)) {
                goesOn.set(word, isReadable(`${text} ${word}`, services));
            }
            return !known.has(feature) && goesOn.get(word);
        }),
    ];
}

function featuresWith(text: string, loose: readonly IToken[], { follow, cover }: CoverServices): NextFeature[] {
    const { tokens, tokenIndex, elementStack } = follow(text);
    if (tokenIndex > 0) {
        return findNextFeatures(
            [elementStack.map((feature) => ({ feature }))],
            [...tokens.slice(tokenIndex), ...loose],
        );
    }
    const entry = GrammarUtils.getEntryRule(cover.Grammar)!;
    return tokens.length + loose.length > 0 ? [] : findFirstFeatures(entry.definition).map((stack) => stack.at(-1)!);
}

/** The word with those that must stand after it in its clause. */
function phraseFrom(word: GrammarAST.Keyword): string {
    const group: AstNode | undefined = word.$container;
    const words = [word.value];
    if (GrammarAST.isGroup(group) && word.cardinality === undefined) {
        for (const next of group.elements.slice(group.elements.indexOf(word) + 1)) {
            if (!GrammarAST.isKeyword(next) || next.cardinality !== undefined || !/^[\p{L}-]+$/u.test(next.value)) {
                break;
            }
            words.push(next.value);
        }
    }
    return words.join(' ');
}
