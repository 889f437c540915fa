/** What is counted, against rows of quantities.md. Stock, racks and supplies are in `stock.test.ts`, drinks in `bottles.test.ts`. */
import { describe, expect, it } from 'vitest';
import { course, place } from '../support/evening.js';

describe('a recipe for fewer than are fed', () => {
    /** What the chef is told of a recipe card for `yields` where `wanted` guests eat. */
    const told = (yields: number, wanted: number): string => {
        const evening = place({
            guests: String(wanted),
            menu: course('main', 'recipe "recipes/stew.md"'),
            files: { 'recipes/stew.md': `---\nyield: ${yields}\n---\nStew.\n` },
        });
        return evening.messages.find((_, index) => evening.rules[index] === 'recipe-yield-short') ?? '';
    };

    it.each([
        [100, 348, '3.48', 'Q15, AFRS'],
        [30, 102, '3.4', 'Q17, AFRS, by portions'],
        [100, 261, '2.61', 'Q18, AFRS, by portions'],
        [100, 230, '2.3', 'Q22, FBG-F'],
    ])('a card for %s and %s wanted is made %s times (quantities %s)', (yields, wanted, factor) => {
        expect(told(yields, wanted)).toContain(factor);
    });

    it('is not told where the card feeds them (quantities 3.2)', () => {
        expect(told(100, 100)).toBe('');
        expect(told(100, 99)).toBe('');
        expect(told(100, 101)).not.toBe('');
    });
});
