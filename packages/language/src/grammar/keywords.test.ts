import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, test } from 'vitest';
import { CoverGrammar } from './generated/grammar.js';
import { parseText } from './parse.js';

// Any word may be a name in quotes, and most without. The words are read off the grammar, so that a new one is tried as well.

const grammar = CoverGrammar();

function keywordsIn(rules: readonly GrammarAST.AbstractRule[]): string[] {
    const words = rules.flatMap((rule) =>
        AstUtils.streamAllContents(rule)
            .filter(GrammarAST.isKeyword)
            .map(({ value }) => value)
            .toArray(),
    );
    return [...new Set(words)].filter((word) => /^\p{L}/u.test(word)).sort();
}

/** The keywords of a rule that reads values, and of those it calls. */
function wordsOf(name: string): string[] {
    const rule = grammar.rules.find((each) => each.name === name)!;
    const called = AstUtils.streamAllContents(rule)
        .filter(GrammarAST.isRuleCall)
        .map((call) => call.rule.$refText)
        .filter((each) => GrammarAST.isParserRule(grammar.rules.find((other) => other.name === each)))
        .toArray();
    return [...new Set([...keywordsIn([rule]), ...called.flatMap(wordsOf)])].sort();
}

const all = keywordsIn(grammar.rules);
/** Names without quotes wherever a name is wanted. */
const soft = wordsOf('Soft');
/** Names without quotes where no list of names can stand. */
const clauseWords = wordsOf('ClauseWord');
const firm = all.filter((word) => !soft.includes(word) && !clauseWords.includes(word));

const course = (clause: string): string =>
    `menu {\n    course soup "Soup" {\n        ${clause}\n        lasts 15 min\n    }\n}\n`;
const menu = (entry: string): string => `menu {\n    ${entry}\n    toast "To the harbour"\n}\n`;
const house = (clause: string): string => `house "Hall" {\n    ${clause}\n    spare 5 %\n}\n`;
const event = (clause: string): string => `event "Supper" {\n    ${clause}\n    revision 4\n}\n`;

/** Places of a name that any soft word may take. */
const NAME_SLOTS: Readonly<Record<string, (name: string) => string>> = {
    'a vessel': (name) => course(`served in ${name} at 60 °C`),
    'a piece': (name) => course(`eaten with ${name} warmed, brought with the course`),
    'the second piece': (name) => course(`eaten with soup-spoon or ${name}`),
    'the last of what it contains': (name) => course(`contains milk, ${name}`),
    'the first of what it contains': (name) => course(`contains ${name}, milk`),
    'a diet that it suits': (name) => course(`suits vegan, ${name}`),
    'the last piece laid': (name) => course(`lay left dinner-fork, ${name} right dinner-knife`),
    'a glass': (name) => course(`pour "Cider" 90 ml into ${name} at 9 °C`),
    'a kind of drink': (name) => course(`pour "Cider" 90 ml, is ${name}, refill 1`),
    'a bread plate': (name) => menu(`bread from soup on ${name} with butter-spreader`),
    'a cup': (name) => menu(`coffee after dessert, in ${name} with teaspoon`),
    'a piece owned': (name) => house(`own 4 dinner-fork, 6 ${name}, 3 soup-spoon`),
    'a piece spared': (name) => house(`spare 5 % of ${name}`),
    'a custom': (name) => house(`laying { limit: 3 per side   ${name}: reported   dessert: above }`),
    'a local code': (name) => house(`local code ${name}`),
    'a rule': (name) => house(`rule ${name} is off because "why"`),
    'a rule waived': (name) => course(`waive ${name} because "why"`),
    'what guests go without': (name) => event(`guests 9 { 2 without milk and ${name} }`),
    'a table': (name) => event(`guests 9 { 2 vegan at ${name} seat 4 }`),
    'a role': (name) => `team {\n    ${name} 2 at 12 plates per min\n    servers 7\n}\n`,
    'a shape': (name) => `room "Hall" {\n    table T1 to T4: ${name} 60 inch, 8 seats\n    aisle 1 m\n}\n`,
    'a parent of a piece': (name) => `fork crab-fork is ${name} { length 150 mm }\n`,
    'what a piece is for': (name) => `fork crab-fork {\n    for crab, ${name}\n    length 150 mm\n}\n`,
    'a fact without a figure': (name) => `glass tumbler {\n    ${name}\n    for cider\n}\n`,
    'a diet': (name) => `diet ${name} { excludes meat }\n`,
    'a figure of a code': (name) => `code here { ${name} 60 °C }\n`,
};

/** Places that no list of names can follow, so that words that start clauses are names there too. */
const ANY_NAME_SLOTS: Readonly<Record<string, (name: string) => string>> = {
    'a kind of course': (name) => `menu {\n    course ${name} "Soup" { lasts 15 min }\n    toast "To the harbour"\n}\n`,
    'a kind of dish': (name) => course(`dish "Sirloin" is ${name} for the rest { lasts 5 min }`),
    'a course that bread comes with': (name) => menu(`bread from ${name} until ${name} on bread-plate`),
    'a course before the coffee': (name) => menu(`coffee after ${name}, on request`),
    'a course before a toast': (name) => menu(`toast "To the harbour" after ${name}, lasts 4 min`),
    'a course until which glasses are topped up': (name) =>
        course(`pour "Cider" 90 ml topped up until ${name}, refill 1`),
    'a kind': (name) => `kind ${name} is ${name} { hot }\n`,
    'a name of a piece': (name) => `fork ${name} { length 150 mm }\n`,
    'an allergen': (name) => `allergen ${name} is milk { called "x" }\n`,
    'a choice of a custom': (name) => house(`laying { overflow: ${name}   dessert: above }`),
};

function meaningOf(text: string): unknown {
    const { tree, problems } = parseText(text);
    expect(problems, text).toEqual([]);
    return JSON.parse(
        JSON.stringify(tree, (key: string, value: unknown) => (/^\$(?!type)/.test(key) ? undefined : value)),
    );
}

/** What the text means with a name like any other, that name exchanged. */
function expected(text: (name: string) => string, word: string): unknown {
    return JSON.parse(JSON.stringify(meaningOf(text('quite-another'))).replaceAll('quite-another', word));
}

describe('the words of the language', () => {
    test('are known, each in one sort', () => {
        expect(all.length).toBeGreaterThan(200);
        expect(soft.filter((word) => clauseWords.includes(word))).toEqual([]);
        expect([...soft, ...clauseWords].filter((word) => !all.includes(word))).toEqual([]);
    });
});

describe.each(Object.entries({ ...NAME_SLOTS, ...ANY_NAME_SLOTS }))('as %s', (slot, text) => {
    test('every word in quotes', () => {
        for (const word of all) {
            expect(meaningOf(text(`"${word}"`)), word).toEqual(expected(text, word));
        }
    });

    test('every soft word without', () => {
        for (const word of slot in ANY_NAME_SLOTS ? [...soft, ...clauseWords] : soft) {
            expect(meaningOf(text(word)), word).toEqual(expected(text, word));
        }
    });
});

describe('a word that needs its quotes', () => {
    test.each(firm)('%s', (word) => {
        // Where the word goes on after a name, the name is what is missing.
        const said = [
            (name: string) => course(`suits ${name} `),
            (name: string) => course(`contains milk, ${name}`),
        ].map((text) => parseText(text(word)).problems);
        expect(said.every(({ length }) => length > 0)).toBe(true);
        const quotes = said.flat().some(({ suggestion }) => suggestion === `"${word}"`);
        const missing = said
            .flat()
            .every(({ message }) => / is expected (before|here|after)|starts nothing|can’t stand/.test(message));
        expect(quotes || missing, JSON.stringify(said)).toBe(true);
    });
});
