import { expect, test, vi } from 'vitest';
import { remember } from './remember.js';

test('what was asked before is not worked out again, however the input was made', () => {
    const calculate = vi.fn(({ plates }: { readonly plates: readonly number[] }) => ({ sum: plates.length }));
    const ask = remember(calculate);
    const first = ask({ plates: [1, 2] });
    expect(ask({ plates: [1, 2] })).toBe(first);
    expect(ask({ plates: [1, 3] })).not.toBe(first);
    expect(calculate).toHaveBeenCalledTimes(2);
});

test('what was asked for longest ago is forgotten first', () => {
    const calculate = vi.fn((plates: number) => plates);
    const ask = remember(calculate, 2);
    for (const plates of [1, 2, 1, 3, 1, 2]) {
        ask(plates);
    }
    // 3 took the place of 2, which was asked for before the second 1.
    expect(calculate.mock.calls.flat()).toEqual([1, 2, 3, 2]);
});

test('an answer that is nothing is kept too', () => {
    const calculate = vi.fn((_plates: number): undefined => undefined);
    const ask = remember(calculate);
    ask(1);
    ask(1);
    expect(calculate).toHaveBeenCalledTimes(1);
});
