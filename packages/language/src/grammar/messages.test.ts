import { join } from 'node:path';
import type { Rule } from 'chevrotain';
import {
    createDefaultCoreModule,
    createDefaultSharedCoreModule,
    EmptyFileSystem,
    GrammarAST,
    inject,
    type LangiumCoreServices,
} from 'langium';
import { describe, expect, test } from 'vitest';
import { CoverGeneratedModule, CoverGeneratedSharedModule } from './generated/module.js';
import { GrammarShape } from './grammar-shape.js';
import { charactersMessage } from './messages.js';
import { CoverCoreModule, parseText } from './parse.js';
import { blockKey } from './stray-message.js';
import { BLOCKS, CLAUSE_SHAPES, PHRASE_OF_RULE, PHRASES, VALUES } from './words-of-the-language.js';
import { wordsOf } from './words.js';

const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), CoverGeneratedSharedModule);
const services: LangiumCoreServices = inject(
    createDefaultCoreModule({ shared }),
    CoverGeneratedModule,
    CoverCoreModule,
);
const engine = (services.parser.LangiumParser as unknown as { wrapper: { getGAstProductions(): Record<string, Rule> } })
    .wrapper;
const { bodies } = new GrammarShape(engine.getGAstProductions(), 'File');

/** Where a line, a phrase of one or what a block holds may stand. */
const PLACES: Readonly<Record<string, (words: string) => string>> = {
    file: (words) => words,
    event: (words) => `event "Supper" { ${words} }`,
    'guest row': (words) => `event "Supper" { guests 84 { ${words} } }`,
    seating: (words) => `seating { ${words} }`,
    menu: (words) => `menu { ${words} }`,
    course: (words) => `menu { course soup "Soup" { ${words} } }`,
    'heading of a dish': (words) => `menu { course soup "Soup" { dish "Soup" ${words} { } } }`,
    'a piece to eat with': (words) => `menu { course soup "Soup" { eaten with ${words} } }`,
    'how it is served': (words) => `menu { course soup "Soup" { served ${words} } }`,
    sauce: (words) => `menu { course soup "Soup" { sauce "Cream" ${words} } }`,
    pour: (words) => `menu { course soup "Soup" { pour "Cider" 90 ml { ${words} } } }`,
    house: (words) => `house "Hall" { ${words} }`,
    laying: (words) => `house "Hall" { laying { ${words} } }`,
    washing: (words) => `house "Hall" { washing { ${words} } }`,
    equipment: (words) => `house "Hall" { own 2 warmer { ${words} } }`,
    room: (words) => `room "Hall" { ${words} }`,
    team: (words) => `team { ${words} }`,
    setup: (words) => `setup { ${words} }`,
    'rate of a role': (words) => `team { plating-lines 2 at ${words} }`,
    kind: (words) => `kind soup { ${words} }`,
    piece: (words) => `fork crab-fork { ${words} }`,
    substance: (words) => `allergen milk { ${words} }`,
    diet: (words) => `diet vegan { ${words} }`,
    code: (words) => `code here { ${words} }`,
    source: (words) => `diet vegan { excludes meat ${words} }`,
};

function placesOf(words: string): string[] {
    return Object.keys(PLACES).filter((place) => parseText(PLACES[place]!(words)).problems.length === 0);
}

describe('what messages are made of', () => {
    test('names every block, and the words that start its clauses', () => {
        expect(bodies.map(blockKey).filter((key) => !(key in BLOCKS))).toEqual([]);
        expect(Object.keys(BLOCKS).filter((key) => !bodies.some((body) => blockKey(body) === key))).toEqual([]);
        for (const body of bodies) {
            const { words } = BLOCKS[blockKey(body)]!;
            expect(words.filter((word) => !wordsOf(body.starts).includes(word))).toEqual([]);
            expect(words.length > 0 || blockKey(body) in CLAUSE_SHAPES, blockKey(body)).toBe(true);
        }
    });

    test('names every value', () => {
        const values = services.Grammar.rules
            .filter((rule) => GrammarAST.isParserRule(rule) && rule.dataType !== undefined)
            .map(({ name }) => name);
        expect(values.filter((name) => !(name in VALUES))).toEqual([]);
    });

    test.each([...PHRASES, ...Object.values(PHRASE_OF_RULE), ...Object.values(CLAUSE_SHAPES)])(
        'shows true words: %s',
        (phrase) => {
            const words = phrase.replaceAll('`', '').replace('{ … }', '{ }').replace('"…"', '"why"');
            expect(placesOf(words)).not.toEqual([]);
        },
    );

    test('shows values that can be read', () => {
        const examples = Object.values(VALUES).flatMap(({ example }) =>
            example.includes('`') ? [...example.matchAll(/`([^`]+)`/g)].map(([, words]) => words!) : [example],
        );
        const holders = [
            'room "Hall" { aisle @ }',
            'room "Hall" { at @ }',
            'kind soup { portion @ }',
            'house "Hall" { spare @ }',
        ];
        const others = [
            ...['course soup "S" { lasts @ }', 'course soup "S" { contains @ }', 'course soup "S" { lay @ plate-x }'],
            ...['course soup "S" { dish "S" @ { } }', 'course soup "S" { served @ }'],
        ].map((each) => `menu { ${each} }`);
        const more = [
            ...[
                'event "S" { date @ }',
                'event "S" { seated @ }',
                'event "S" { zone @ }',
                'event "S" { guests 9 { 2 @ } }',
            ],
            ...[
                'team { a 2 at @ }',
                'house "Hall" { own @ }',
                'house "Hall" { laying { @ } }',
                'house "Hall" { laying { x: @ } }',
            ],
            ...[
                'fork @ { }',
                '@ crab { }',
                'room "Hall" { aisle 4 @ }',
                'team { a 2 at 3 x per @ }',
                'kind soup { portion 4 @ }',
            ],
        ];
        for (const example of examples.flatMap((each) =>
            each.includes(', ') && !each.includes('per') ? each.split(/, | or /) : [each],
        )) {
            const read = [...holders, ...others, ...more].filter(
                (holder) => parseText(holder.replace('@', example)).problems.length === 0,
            );
            expect(read, example).not.toEqual([]);
        }
    });
});

// ---------------------------------------------------------------- what is said, in full

/** Lines as a chef leaves them half way, by the block they stand in; `@` is the line. */
const HALF_TYPED: readonly (readonly [around: string, lines: readonly string[]])[] = [
    [
        'menu {\n    course soup "Soup" {\n        @\n        lasts 15 min\n    }\n}\n',
        [
            ...[
                'served',
                'served in',
                'served on',
                'served at',
                'served in soup-bowl warmed to',
                'served in soup bowl at 64 °C',
            ],
            ...[
                'served onn dinner-plate',
                'served on dinner-plate 60 °C',
                'served on dinner-plate @ 60 °C',
                'served in soup-bowl at 64 ºC',
            ],
            ...[
                'eaten',
                'eaten with',
                'eaten soup-spoon',
                'eaten with soup-spoon, brought',
                'eaten with soup-spoon brought the course',
            ],
            ...['lasts', 'lasts about 20 min', 'lasts 20 mni', 'lats 20 min', 'lasts 20 min;', '20 min'],
            ...[
                'contains',
                'contains milk,',
                'contains milk and cream',
                'contains milk cream',
                'contains course',
                'contains milk, butter',
            ],
            ...[
                'suits',
                'recipe',
                'recipe soup.md',
                'held',
                'held at',
                'leaves pass at 80 °C',
                'leaves the pass',
                'leaves the pass at',
            ],
            ...[
                'cook',
                'cook 74 °C',
                'cook to',
                'cook 3',
                'reheat',
                'cooled to 21 °C',
                'measured',
                'carried',
                'preset 10 min',
                'preset 10 min before',
            ],
            ...[
                'garnish parsley',
                'sauce "Cream" poured',
                'left off for guests without milk',
                'pour',
                'pour Dry riesling 4 fl oz',
                'pour "Dry riesling" into',
            ],
            ...[
                'pour "Dry riesling" 90 ml topped up',
                'pour "Dry riesling" 90 ml int white-wine-glass',
                'pour "Dry riesling" { instead }',
            ],
            ...[
                'lay',
                'lay left',
                'lay under plate',
                'lay on saucer teaspoon',
                'waive',
                'waive three-per-side because',
                'dish',
                'dish "Squash"',
            ],
            ...[
                'dish Squash for everyone { contains milk }',
                'dish "Squash" for vegetarian, vegan { contains milk }',
                'dish "Squash" for',
                'date 2026-10-17',
                'bread on bread-plate',
                'course main "Sirloin" { lasts 30 min }',
            ],
            ...['"Soup"', '{', ', milk', 'on dinner-plate', 'to 60 °C', 'wild words', '🍴'],
        ],
    ],
    [
        'menu {\n    @\n    coffee after dessert\n}\n',
        [
            ...[
                'itme',
                'course',
                'course {',
                'course soup',
                'course soup {',
                'bread from',
                'coffee',
                'coffee dessert',
                'water sparkling or still',
            ],
            ...['toast to the harbour', 'toast "Host" after main, 4 min', 'speech lasts', 'lasts 20 min', '}'],
        ],
    ],
    [
        'event "Supper" {\n    @\n    revision 4\n}\n',
        [
            ...[
                'date',
                'date Saturday',
                'zone',
                'zone "America/Halifax"',
                'doors',
                'seated late',
                'seated 5.30 pm',
                'guests',
                'guests many',
                'guests 84 guaranteed',
            ],
            ...[
                'guests 84 set 90',
                'guests 84 { vegetarian 6 }',
                'guests 84 { 6 without }',
                'guests 84 {',
                'replications 200',
                'crew 12 at',
                'reference',
                'notice',
                'local',
                'local code',
            ],
            ...['revision four', 'course soup "Soup" { }'],
        ],
    ],
    [
        'house "Hall" {\n    @\n    spare 5 %\n}\n',
        [
            ...[
                'own',
                'own 110',
                'own dinner-fork',
                'own 110 dinner fork',
                'own 110 dinner-fork 20 fish-fork',
                'own 2 plate-warmer { 60 plates }',
                'spare',
                'spare 5 % of',
            ],
            ...[
                'laying { limit 3 per side }',
                'laying { limit: }',
                'laying { limit: 3 per }',
                'laying limit: 3',
                'washing { 45 racks hour }',
                'washing { racks 45 per hour }',
            ],
            ...[
                'rule',
                'rule three-per-side',
                'rule three-per-side is',
                'rule three-per-side is silent',
                'rule three-per-side is off because',
            ],
        ],
    ],
    [
        'room "Hall" {\n    @\n    aisle 1 m\n}\n',
        [
            ...[
                'table',
                'table T1 round 60 inch',
                'table T1:',
                'table T1: 60 inch',
                'table T1: round',
                'table T1: round 60 inch, 8',
                'table T1 - T9: round 60 inch',
                'at',
            ],
        ],
    ],
    [
        'team {\n    @\n    servers 7\n}\n',
        ['captain', '1 captain', 'captain one', 'plating-lines 2 at', 'plating-lines 2 at 12 plates'],
    ],
    [
        'seating {\n    @\n    "B. Fenn" at T3\n}\n',
        [
            'A. Reed at T3',
            '"A. Reed" at T3 seat',
            'at T1 seat 2',
            '"A. Reed" at T3, vegetarian',
            '"A. Reed" T3 seat 2',
            '"A. Reed" at T3, no nuts',
            '"A. Reed" at T3, allergic to nuts',
            '"A. Reed" at T3, "Squash"',
        ],
    ],
    ['setup {\n    @\n}\n', ['task "Chairs" takes', 'task "Chairs" takes 20 min, by 2']],
    [
        'fork crab-fork {\n    @\n    length 150 mm\n}\n',
        [
            'tines',
            'tines 3 to',
            'for',
            'for crab,',
            'on',
            'pairs',
            'pairs with',
            'called',
            'width 4 mm source',
            '150 mm',
            'is dinner-fork',
        ],
    ],
    [
        'kind soup {\n    @\n    hot\n}\n',
        [
            'eaten',
            'in',
            'in soup-bowl or',
            'at',
            'at 60 °C to',
            'of',
            'usually',
            'usually contains',
            'follows',
            'portion',
            'strength',
            'cook',
        ],
    ],
    ['allergen milk {\n    @\n    called "milk"\n}\n', ['required', 'required in', 'called', 'milk']],
    ['diet vegan {\n    @\n    called "vegan"\n}\n', ['excludes', 'stated', 'term', 'mark V', 'excludes meat fish']],
    ['code here {\n    @\n    called "Here"\n}\n', ['zones', 'hot-holding', '60 °C']],
    [
        '@\nteam { servers 7 }\n',
        [
            ...[
                'use',
                'use house.cover',
                'event',
                'event "Supper"',
                'event Lantern night { revision 4 }',
                'event { revision 4 }',
                'menu',
                'house',
                'room',
                'room "Hall" 18 m by',
                'seating',
            ],
            ...[
                'kind',
                'kind soup is',
                'fresh',
                'fresh soup',
                'allergen',
                'diet',
                'hello',
                'hello "world"',
                '{ revision 4 }',
                '7',
                '"Supper" { revision 4 }',
                '}',
                'course soup { }',
            ],
        ],
    ],
];

/** What is said of a line half typed, the words it is said of first. */
function saidOf(around: string, line: string): string[] {
    const text = around.replace('@', line);
    return parseText(text).problems.map(({ start, end, message, hint, suggestion }) => {
        const words = text.slice(start, end).replace(/\s+/g, ' ');
        return [`    ${words}  <-  ${message}`, hint, suggestion === undefined ? '' : `[${suggestion}]`]
            .filter(Boolean)
            .join(' ');
    });
}

test('every line half typed gets a message of use', async () => {
    const recorded = HALF_TYPED.map(([around, lines]) => {
        const heading =
            around === HALF_TYPED.at(-1)![0]
                ? 'top of a file'
                : around
                      .split('\n')
                      .filter((line) => line.includes('{') && !line.includes('}'))
                      .at(-1)!
                      .trim();
        return [`== ${heading}`, ...lines.flatMap((line) => [line, ...saidOf(around, line)]), ''].join('\n');
    }).join('\n');
    const silent = HALF_TYPED.flatMap(([around, lines]) => lines.filter((line) => saidOf(around, line).length === 0));
    expect(silent).toEqual([]);
    await expect(recorded).toMatchFileSnapshot(join(import.meta.dirname, 'half-typed-lines.txt'));
});

describe('characters outside the language', () => {
    test.each([
        ['&', '`&` means nothing outside a text in quotes.'],
        ['ở-', '`ở-` means nothing outside a text in quotes. A name with such letters is put in quotes, all of it.'],
        ['º', '`º` is not the character it looks like. Write `°`.'],
        ['\u0007', 'There are characters here that can’t be shown. Delete them.'],
        ['\uD83C', 'There are characters here that can’t be shown. Delete them.'],
    ])('%j', (characters, message) => expect(charactersMessage(characters)).toBe(message));
});
