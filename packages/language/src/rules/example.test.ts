import { describe, expect, it } from 'vitest';
import { readExample } from './example.js';

describe('an example', () => {
    it('is one file, or several with the last to be checked', () => {
        expect(readExample('menu { }')).toEqual({
            texts: { 'example.cover': 'menu { }' },
            file: 'example.cover',
            marks: [],
        });
        expect(readExample('//- /house.cover\nhouse "Hall" { }\n//- event.cover\nuse "house.cover"\n')).toEqual({
            texts: { 'house.cover': 'house "Hall" { }', 'event.cover': 'use "house.cover"\n' },
            file: 'event.cover',
            marks: [],
        });
    });

    it('gives the place of marked words, also one within another', () => {
        expect(readExample('<|own 4 <|fork|>|>').marks).toEqual([
            { file: 'example.cover', start: 0, end: 10 },
            { file: 'example.cover', start: 6, end: 10 },
        ]);
    });

    it('refuses marks that do not pair', () => {
        expect(() => readExample('<|own')).toThrow('A mark opens and does not close');
        expect(() => readExample('own|>')).toThrow('A mark closes that did not open');
    });
});
