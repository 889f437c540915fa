import { describe, expect, test } from 'vitest';
import { standardCupboard } from '../cupboard/standard.js';
import { Declarations } from './declarations.js';
import { mergeCupboards } from './merge.js';
import { readText } from './read-text.js';

const merged = (...texts: readonly string[]) =>
    mergeCupboards(
        texts.map((text, level) => [readText(`level-${level}.cover`, text)]),
        standardCupboard(),
    );

/** The pieces a kind is eaten with, first choices only. */
const eatenWith = (kind: string, ...texts: readonly string[]) =>
    merged(...texts)
        .cupboard.kinds.get(kind)
        ?.eaten?.map(([first]) => first?.piece.name);

describe('laying declarations over each other', () => {
    test('what is redeclared keeps what it does not state', () => {
        const { pieces } = merged('bowl soup-bowl { holds 380 ml }').cupboard;
        const standard = standardCupboard().pieces.get('soup-bowl');
        expect(pieces.get('soup-bowl')?.measures.holds?.low).toBe(380);
        expect(pieces.get('soup-bowl')?.measures.across).toEqual(standard?.measures.across);
    });
    test('`fresh` starts empty', () => {
        const { pieces } = merged('fresh bowl soup-bowl { holds 380 ml }').cupboard;
        expect(Object.keys(pieces.get('soup-bowl')?.measures ?? {})).toEqual(['holds']);
    });
    test('the nearer file wins', () => {
        expect(
            eatenWith('soup', 'kind soup { eaten with teaspoon }', 'kind soup { eaten with dessert-spoon }'),
        ).toEqual(['dessert-spoon']);
    });
    test('a kind redeclared hands on to the kinds that are of it', () => {
        // `bisque is cream-soup` states no pieces of its own.
        expect(eatenWith('bisque')).toEqual(eatenWith('cream-soup'));
        expect(eatenWith('bisque', 'kind cream-soup { eaten with teaspoon }')).toEqual(['teaspoon']);
    });
    test('a circle of parents ends where it closes, whichever is asked first', () => {
        const circle = 'kind one is two { eaten with teaspoon }\nkind two is one { hot }';
        const first = merged(circle).cupboard.kinds;
        const second = merged(circle).cupboard.kinds;
        expect([first.get('one'), first.get('two')]).toEqual([second.get('two'), second.get('one')].reverse());
        expect(first.get('two')?.eaten).toEqual(first.get('one')?.eaten);
    });
    test('a name declared twice at one level is said, and the first counts', () => {
        const { twice } = merged('fork fork-a { tines 3 }\nfork fork-a { tines 4 }');
        expect(twice.map(({ what, name }) => [what, name])).toEqual([['piece', 'fork-a']]);
    });
});

test('declarations are made once, when they are asked for, in the order of their names', () => {
    const made: string[] = [];
    const lengths = new Declarations(['fork', 'spoon'], (name) => {
        made.push(name);
        return name.length;
    });
    expect([lengths.size, lengths.has('spoon'), lengths.has('knife'), [...lengths.keys()]]).toEqual([
        2,
        true,
        false,
        ['fork', 'spoon'],
    ]);
    expect(made).toEqual([]);
    expect([lengths.get('spoon'), lengths.get('spoon'), lengths.get('knife')]).toEqual([5, 5, undefined]);
    expect(made).toEqual(['spoon']);
    expect([...lengths]).toEqual([
        ['fork', 4],
        ['spoon', 5],
    ]);
    expect([...lengths.values()]).toEqual([4, 5]);
    expect(made).toEqual(['spoon', 'fork']);
});
