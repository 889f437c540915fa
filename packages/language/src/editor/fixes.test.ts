import { describe, expect, it } from 'vitest';
import type { Origin } from '../plan/origin.js';
import type { Fix, Intention } from '../rules/fixes.js';
import { applyEdits, editsOf } from './fixes.js';

const FILE = 'supper.cover';

/** The place of `words` in the text; `nth` counts from 0. */
function place(text: string, words: string, nth = 0): Origin {
    let start = -1;
    for (let found = 0; found <= nth; found += 1) {
        start = text.indexOf(words, start + 1);
    }
    expect(start, `${words} in the text`).toBeGreaterThanOrEqual(0);
    return { file: FILE, start, end: start + words.length };
}

/** The block that begins with `words` and ends at its brace. */
function block(text: string, words: string): Origin {
    const { start } = place(text, words);
    let depth = 0;
    for (let end = start; end < text.length; end += 1) {
        depth += { '{': 1, '}': -1 }[text[end]!] ?? 0;
        if (text[end] === '}' && depth === 0) {
            return { file: FILE, start, end: end + 1 };
        }
    }
    throw new Error(`${words} opens no block`);
}

function after(text: string, ...changes: Intention[]): string {
    const edits = editsOf({ title: 'Mend it.', safety: 'safe', changes }, (file) => (file === FILE ? text : undefined));
    expect([...edits.keys()]).toEqual([FILE]);
    return applyEdits(text, edits.get(FILE)!);
}

function lines(...all: string[]): string {
    return `${all.join('\n')}\n`;
}

describe('replace', () => {
    it('touches only the words that differ', () => {
        const text = 'served in soup-bowl warmed to 40 °C at 64 °C';
        const fix: Fix = {
            title: 'Warm it.',
            safety: 'safe',
            changes: [{ do: 'replace', at: place(text, text), words: 'served in soup-bowl warmed to 60 °C at 64 °C' }],
        };
        expect(editsOf(fix, () => text).get(FILE)).toEqual([{ start: 30, end: 32, text: '60' }]);
    });

    it('keeps comments between words that stay, come or go', () => {
        const text = 'served in soup-bowl /* the blue one */ at 64 °C';
        const whole = place(text, text);
        expect(after(text, { do: 'replace', at: whole, words: 'served in soup-plate at 64 °C' })).toBe(
            'served in soup-plate /* the blue one */ at 64 °C',
        );
        expect(after(text, { do: 'replace', at: whole, words: 'served in soup-bowl warmed to 60 °C at 64 °C' })).toBe(
            'served in soup-bowl warmed to 60 °C /* the blue one */ at 64 °C',
        );
        expect(after(text, { do: 'replace', at: whole, words: 'served at 64 °C' })).toBe(
            'served /* the blue one */ at 64 °C',
        );
        expect(after(text, { do: 'replace', at: whole, words: 'poured hot' })).toBe('poured hot /* the blue one */');
    });

    it('keeps words apart where one takes the place of a comma, or a comma that of a word', () => {
        const text = 'lay left fish-fork, salad-fork right fish-knife,salad-knife';
        const whole = place(text, text);
        const moved = 'lay left fish-fork right fish-knife, salad-knife, salad-fork';
        expect(after(text, { do: 'replace', at: whole, words: moved })).toBe(moved);
        expect(after(moved, { do: 'replace', at: place(moved, moved), words: text })).toBe(text);
        expect(after(text, { do: 'replace', at: whole, words: 'lay left fish-fork right salad-knife' })).toBe(
            'lay left fish-fork right salad-knife',
        );
    });

    it('breaks the line after a kept line comment', () => {
        const text = lines('    lasts 5 // too short?', '        min', '    contains milk');
        const at = { ...place(text, 'lasts'), end: text.indexOf('min') + 3 };
        expect(after(text, { do: 'replace', at, words: 'lasts 15 h' })).toBe(
            lines('    lasts 15 h // too short?', '    contains milk'),
        );
    });

    it('counts characters as the editor does, after an emoji and accents', () => {
        const text = '/* 🍽️ crème brûlée */ dish "Crème 🍮" { eaten with dessert-frok }';
        expect(after(text, { do: 'replace', at: place(text, 'dessert-frok'), words: 'dessert-fork' })).toBe(
            '/* 🍽️ crème brûlée */ dish "Crème 🍮" { eaten with dessert-fork }',
        );
    });

    it('is no edit where the words are there already', () => {
        const text = 'lasts 15 min';
        const changes: Intention[] = [{ do: 'replace', at: place(text, text), words: 'lasts 15 min' }];
        expect(editsOf({ title: '', safety: 'safe', changes }, () => text).size).toBe(0);
    });
});

describe('append', () => {
    it('stands before a comment, and takes a comma without a blank', () => {
        const text = 'served in soup-bowl // blue';
        const at = place(text, 'served in soup-bowl');
        expect(after(text, { do: 'append', at, words: 'warmed to 60 °C' })).toBe(
            'served in soup-bowl warmed to 60 °C // blue',
        );
        expect(after(text, { do: 'append', at, words: ', portion 250 ml' })).toBe(
            'served in soup-bowl, portion 250 ml // blue',
        );
    });
});

describe('remove', () => {
    it('takes a clause with its line', () => {
        const text = lines('course soup {', '    lasts 15 min', '    recipe "a.md"', '}');
        expect(after(text, { do: 'remove', at: place(text, 'lasts 15 min') })).toBe(
            lines('course soup {', '    recipe "a.md"', '}'),
        );
    });

    it('takes CRLF with the line, and the line end before it at the end of the file', () => {
        const text = 'course soup {\r\n\tlasts 15 min\r\n\trecipe "a.md"\r\n}';
        expect(after(text, { do: 'remove', at: place(text, 'lasts 15 min') })).toBe(
            'course soup {\r\n\trecipe "a.md"\r\n}',
        );
        const last = 'use "a.cover"\r\nuse "b.cover"';
        expect(after(last, { do: 'remove', at: place(last, 'use "b.cover"') })).toBe('use "a.cover"');
    });

    it('leaves comments beside and inside', () => {
        const text = lines('{', '    lasts 15 min   // as rehearsed', '    pour "Red" /* cellar 4 */ 5 fl oz', '}');
        expect(after(text, { do: 'remove', at: place(text, 'lasts 15 min') })).toBe(
            lines('{', '    // as rehearsed', '    pour "Red" /* cellar 4 */ 5 fl oz', '}'),
        );
        expect(after(text, { do: 'remove', at: place(text, 'pour "Red" /* cellar 4 */ 5 fl oz') })).toBe(
            lines('{', '    lasts 15 min   // as rehearsed', '    /* cellar 4 */', '}'),
        );
    });

    it('closes up a block on one line', () => {
        const text = 'course soup { lasts 15 min   contains milk }';
        expect(after(text, { do: 'remove', at: place(text, 'lasts 15 min') })).toBe('course soup { contains milk }');
        expect(after(text, { do: 'remove', at: place(text, 'contains milk') })).toBe('course soup { lasts 15 min }');
        expect(
            after(
                text,
                { do: 'remove', at: place(text, 'contains milk') },
                { do: 'remove', at: place(text, 'lasts 15 min') },
            ),
        ).toBe('course soup {  }');
    });

    it('takes the comma of an item, first, middle or last', () => {
        const text = '    lay left salad-fork, fish-fork, dinner-fork // three';
        expect(after(text, { do: 'remove', at: place(text, 'salad-fork') })).toBe(
            '    lay left fish-fork, dinner-fork // three',
        );
        expect(after(text, { do: 'remove', at: place(text, 'fish-fork') })).toBe(
            '    lay left salad-fork, dinner-fork // three',
        );
        expect(after(text, { do: 'remove', at: place(text, 'dinner-fork') })).toBe(
            '    lay left salad-fork, fish-fork // three',
        );
    });

    it('takes several items of one list together', () => {
        const text = 'lay left salad-fork, fish-fork, dinner-fork';
        const removed = (...pieces: string[]) =>
            after(text, ...pieces.map((piece) => ({ do: 'remove' as const, at: place(text, piece) })));
        expect(removed('salad-fork', 'fish-fork')).toBe('lay left dinner-fork');
        expect(removed('dinner-fork', 'fish-fork')).toBe('lay left salad-fork');
        expect(removed('salad-fork', 'dinner-fork')).toBe('lay left fish-fork');
    });

    it('takes the word that joins an item', () => {
        const text = 'eaten with fish-fork and fish-knife';
        expect(after(text, { do: 'remove', at: place(text, 'fish-knife') })).toBe('eaten with fish-fork');
        expect(after(text, { do: 'remove', at: place(text, 'fish-fork') })).toBe('eaten with fish-knife');
    });

    it('joins a list over lines, but never into a comment', () => {
        const text = lines('own 4 salad-fork,  // polished', '    6 fish-fork,', '    9 soup-spoon');
        expect(after(text, { do: 'remove', at: place(text, '6 fish-fork') })).toBe(
            lines('own 4 salad-fork,  // polished', '    9 soup-spoon'),
        );
        expect(after(text, { do: 'remove', at: place(text, '4 salad-fork') })).toBe(
            lines('own // polished', '    6 fish-fork,', '    9 soup-spoon'),
        );
        const last = lines('eaten with fish-fork // silver', '    and fish-knife', '    lasts 15 min');
        expect(after(last, { do: 'remove', at: place(last, 'fish-knife') })).toBe(
            lines('eaten with fish-fork // silver', '    lasts 15 min'),
        );
    });
});

describe('add a clause', () => {
    const clause = 'contains milk';
    const added = (text: string, head = 'course soup') =>
        after(text, { do: 'add-clause', to: block(text, head), clause });

    it('is the last line, indented like its siblings', () => {
        expect(added(lines('course soup {', '  lasts 15 min // as rehearsed', '}'))).toBe(
            lines('course soup {', '  lasts 15 min // as rehearsed', '  contains milk', '}'),
        );
        expect(added('course soup {\r\n\tlasts 15 min\r\n}\r\n')).toBe(
            'course soup {\r\n\tlasts 15 min\r\n\tcontains milk\r\n}\r\n',
        );
    });

    it('comes after inner blocks and last comments, and before empty lines', () => {
        expect(
            added(
                lines(
                    'menu {',
                    '    course soup {',
                    '        dish "A" {',
                    '            lasts 1 min',
                    '        }',
                    '        // later',
                    '',
                    '    }',
                    '}',
                ),
            ),
        ).toBe(
            lines(
                'menu {',
                '    course soup {',
                '        dish "A" {',
                '            lasts 1 min',
                '        }',
                '        // later',
                '        contains milk',
                '',
                '    }',
                '}',
            ),
        );
    });

    it('is not led astray by clauses over several lines or beside the brace', () => {
        expect(added(lines('course soup {', '    served in soup-bowl', '        at 64 °C }'))).toBe(
            lines('course soup {', '    served in soup-bowl', '        at 64 °C', '    contains milk }'),
        );
        expect(added(lines('course soup { lasts 15 min', '}'))).toBe(
            lines('course soup { lasts 15 min', '    contains milk', '}'),
        );
    });

    it('stays on the line of a block on one line', () => {
        expect(added('course soup { lasts 15 min }')).toBe('course soup { lasts 15 min   contains milk }');
        expect(added('course soup { lasts 15 min /* or so */}')).toBe(
            'course soup { lasts 15 min /* or so */   contains milk }',
        );
    });

    it('fills an empty block', () => {
        expect(added('course soup {}')).toBe('course soup { contains milk }');
        expect(added('course soup { }')).toBe('course soup { contains milk }');
        expect(added(lines('menu {', '\tcourse soup {', '\t}', '}'))).toBe(
            lines('menu {', '\tcourse soup {', '\t\tcontains milk', '\t}', '}'),
        );
        expect(added(lines('course soup { // to come', '}'))).toBe(
            lines('course soup { // to come', '    contains milk', '}'),
        );
    });

    it('is not misled by braces in quotes and comments', () => {
        const text = 'course soup "}{" { /* } */ lasts 15 min }';
        expect(after(text, { do: 'add-clause', to: place(text, text), clause })).toBe(
            'course soup "}{" { /* } */ lasts 15 min   contains milk }',
        );
    });

    it('gives a block to a thing that has none', () => {
        const text = lines('    pour "Red" 5 fl oz into red-wine-glass // cellar 4');
        const to = place(text, 'pour "Red" 5 fl oz into red-wine-glass');
        expect(after(text, { do: 'add-clause', to, clause })).toBe(
            lines('    pour "Red" 5 fl oz into red-wine-glass { contains milk } // cellar 4'),
        );
        expect(after(text, { do: 'add-clause', to, clause }, { do: 'add-clause', to, clause: 'strength 13 %' })).toBe(
            lines('    pour "Red" 5 fl oz into red-wine-glass { contains milk   strength 13 % } // cellar 4'),
        );
    });

    it('does nothing to a block that is still open', () => {
        const text = 'course soup { lasts 15 min';
        const changes: Intention[] = [{ do: 'add-clause', to: place(text, text), clause }];
        expect(editsOf({ title: '', safety: 'safe', changes }, () => text).size).toBe(0);
    });
});

describe('set a custom', () => {
    const set = (text: string, parts: { laying?: Origin; custom?: Origin }) =>
        after(text, { do: 'set-custom', house: block(text, 'house'), ...parts, name: 'limit', value: '4 per side' });

    it('changes the custom where it is', () => {
        const text = 'house "Hall" { laying { limit: 3 per side   dessert: above } }';
        const expected = 'house "Hall" { laying { limit: 4 per side   dessert: above } }';
        expect(set(text, { laying: block(text, 'laying'), custom: place(text, 'limit: 3 per side') })).toBe(expected);
        expect(set(text, { laying: block(text, 'laying'), custom: place(text, '3 per side') })).toBe(expected);
    });

    it('adds it to the laying block, or makes one', () => {
        const text = lines('house "Hall" {', '\tlaying { dessert: above }', '}');
        expect(set(text, { laying: block(text, 'laying') })).toBe(
            lines('house "Hall" {', '\tlaying { dessert: above   limit: 4 per side }', '}'),
        );
        expect(set(lines('house "Hall" {', '\tspare 5 %', '}'), {})).toBe(
            lines('house "Hall" {', '\tspare 5 %', '\tlaying { limit: 4 per side }', '}'),
        );
    });

    it('makes one block for several customs', () => {
        const text = 'house "Hall" {}';
        const house = block(text, 'house');
        expect(
            after(
                text,
                { do: 'set-custom', house, name: 'limit', value: '4 per side' },
                { do: 'set-custom', house, name: 'dessert', value: 'above' },
            ),
        ).toBe('house "Hall" { laying { limit: 4 per side   dessert: above } }');
    });
});

describe('move a block', () => {
    it('goes with its comments and the empty line before it', () => {
        const text = lines(
            'menu {',
            '    course soup { }',
            '',
            '    // cold',
            '    course fish { } // or meat',
            '',
            '    course main { }',
            '}',
        );
        expect(
            after(text, { do: 'move-before', block: block(text, 'course fish'), before: block(text, 'course soup') }),
        ).toBe(
            lines(
                'menu {',
                '    // cold',
                '    course fish { } // or meat',
                '',
                '    course soup { }',
                '',
                '    course main { }',
                '}',
            ),
        );
        expect(
            after(text, { do: 'move-before', block: block(text, 'course soup'), before: block(text, 'course main') }),
        ).toBe(
            lines(
                'menu {',
                '    // cold',
                '    course fish { } // or meat',
                '',
                '    course soup { }',
                '',
                '    course main { }',
                '}',
            ),
        );
    });

    it('moves within a line', () => {
        const text = 'menu { course soup { } course fish { } course main { } }';
        expect(
            after(text, { do: 'move-before', block: block(text, 'course main'), before: block(text, 'course soup') }),
        ).toBe('menu { course main { } course soup { } course fish { } }');
        expect(
            after(text, { do: 'move-before', block: block(text, 'course soup'), before: block(text, 'course main') }),
        ).toBe('menu { course fish { } course soup { } course main { } }');
    });
});

describe('add a block', () => {
    const dish = 'dish "Squash" for vegetarian {\n    contains nothing\n}';

    it('stands beside its neighbour, in the indentation of the file', () => {
        const text = lines('course main {', '\t// the roast', '\tdish "Beef" { } // rare', '}');
        const beside = block(text, 'dish "Beef"');
        expect(after(text, { do: 'add-block', beside, where: 'after', block: dish })).toBe(
            lines(
                'course main {',
                '\t// the roast',
                '\tdish "Beef" { } // rare',
                '\tdish "Squash" for vegetarian {',
                '\t\tcontains nothing',
                '\t}',
                '}',
            ),
        );
        expect(after(text, { do: 'add-block', beside, where: 'before', block: dish })).toBe(
            lines(
                'course main {',
                '\tdish "Squash" for vegetarian {',
                '\t\tcontains nothing',
                '\t}',
                '\t// the roast',
                '\tdish "Beef" { } // rare',
                '}',
            ),
        );
    });

    it('stands apart at the top of a file, and keeps CRLF', () => {
        const text = 'event "Supper" {\r\n}';
        expect(after(text, { do: 'add-block', beside: block(text, 'event'), where: 'after', block: 'menu {\n}' })).toBe(
            'event "Supper" {\r\n}\r\n\r\nmenu {\r\n}',
        );
    });

    it('stays on one line with its neighbour', () => {
        const text = 'course main { dish "Beef" { } }';
        expect(after(text, { do: 'add-block', beside: block(text, 'dish'), where: 'after', block: dish })).toBe(
            'course main { dish "Beef" { } dish "Squash" for vegetarian { contains nothing } }',
        );
    });
});

describe('a fix that cannot be written', () => {
    it('is no edit at all: in the standard cupboard, in a file that is not there, over words another change wants', () => {
        const text = 'lasts 15 min';
        const at = place(text, text);
        const edits = (...changes: Intention[]) =>
            editsOf({ title: '', safety: 'safe', changes }, (file) => (file === FILE ? text : undefined)).size;
        expect(edits({ do: 'remove', at: { ...at, file: 'cupboard/forks.cover' } })).toBe(0);
        expect(edits({ do: 'remove', at }, { do: 'remove', at: { ...at, file: 'gone.cover' } })).toBe(0);
        expect(
            edits(
                { do: 'replace', at, words: 'lasts 1 h' },
                { do: 'replace', at: place(text, '15 min'), words: '2 h' },
            ),
        ).toBe(0);
        expect(edits({ do: 'remove', at: { ...at, end: 99 } })).toBe(0);
    });
});

describe('several changes', () => {
    it('are made in the order of the text, over files', () => {
        const texts: Record<string, string> = { a: 'one two three', b: 'four' };
        const at = (file: string, words: string): Origin => ({ ...place(texts[file]!, words), file });
        const changes: Intention[] = [
            { do: 'append', at: at('a', 'three'), words: 'more' },
            { do: 'replace', at: at('b', 'four'), words: '4' },
            { do: 'replace', at: at('a', 'one'), words: '1' },
        ];
        const edits = editsOf({ title: '', safety: 'safe', changes }, (file) => texts[file]);
        expect(applyEdits(texts.a!, edits.get('a')!)).toBe('1 two three more');
        expect(applyEdits(texts.b!, edits.get('b')!)).toBe('4');
    });
});
