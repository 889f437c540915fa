/**
 * Which allergens a plan must tell of, through the compiled plan, against the four lists of temperature.md §3 (the test idea
 * there, and W19). The code decides words and duties only: a guest is kept from everything, whatever the code.
 */
import { describe, expect, it } from 'vitest';
import { contents, course, place } from '../support/evening.js';

/** The codes under which the compiled plan says that the allergen must be told. */
const CODES = ['us-model', 'eu', 'canada', 'au-nz'] as const;
const toldUnder = (allergen: string): string[] =>
    CODES.filter((code) => {
        const menu = course('main', `contains ${allergen}`).replace('contains nothing', '');
        const [contained] = contents({ code, menu });
        expect(contained?.name).toBe(allergen);
        return contained!.requiredByCode;
    });

describe('the test idea of temperature §3', () => {
    it.each<readonly [string, readonly string[], string]>([
        ['pine-nut', ['us-model', 'canada', 'au-nz'], 'W19: named in three lists, no nut of EU Annex II'],
        ['coconut', [], '3.1: off the US list since January 2025; never on the others'],
        ['lupin', ['eu', 'au-nz'], '3.2, 3.4'],
        ['celery', ['eu'], '3.2'],
        ['molluscs', ['eu', 'canada', 'au-nz'], '3.2 to 3.4; no US major allergen'],
        ['mustard', ['eu', 'canada'], '3.2, 3.3'],
        ['sesame', ['us-model', 'eu', 'canada', 'au-nz'], '3.1: in the US since January 2023'],
        ['sulphites', ['eu', 'canada', 'au-nz'], '3.2 to 3.4'],
        ['wheat', ['us-model', 'eu', 'canada', 'au-nz'], 'in all four'],
        ['barley', ['eu', 'canada', 'au-nz'], '3.1 names wheat alone'],
        ['chestnut', [], '3.1, 3.2: off the US list, never in EU Annex II'],
        ['almond', ['us-model', 'eu', 'canada', 'au-nz'], 'in all four'],
        ['peanut', ['us-model', 'eu', 'canada', 'au-nz'], 'in all four'],
    ])('%s must be told under %j (%s)', (allergen, expected) => {
        expect(toldUnder(allergen)).toEqual(expected);
    });

    // The compiled plan tells of what a list names word for word; a sort of it, such as a prawn, is not told of yet.
    it.each<readonly [string, readonly string[], string]>([
        ['prawn', ['us-model', 'eu', 'canada', 'au-nz'], 'a crustacean'],
        ['oyster', ['eu', 'canada', 'au-nz'], 'a mollusc'],
        ['anchovy', ['us-model', 'eu', 'canada', 'au-nz'], 'a fish'],
        ['spelt', ['us-model', 'eu', 'canada', 'au-nz'], '3.2: a wheat'],
        ['lactose', ['us-model', 'eu', 'canada', 'au-nz'], '3.2: milk, including lactose'],
    ])('%s must be told under %j (%s)', (allergen, expected) => {
        expect(toldUnder(allergen)).toEqual(expected);
    });
});

describe('the guest is kept from the widest meaning, whatever the code', () => {
    it.each(CODES)('%s: pine nut and chestnut for a guest without tree nuts (temperature §3)', (code) => {
        for (const nut of ['pine-nut', 'chestnut']) {
            const menu = course('main', `contains ${nut}`).replace('contains nothing', '');
            const { rules } = place({ code, guests: '8 { 1 without tree-nuts }', menu });
            expect(
                rules.includes('allergen-reaches-guest') || rules.includes('diet-not-served'),
                `${nut} under ${code}`,
            ).toBe(true);
        }
    });

    it.each(CODES)('%s: barley and oats for a guest without gluten (temperature 3.2, 3.3)', (code) => {
        for (const cereal of ['barley', 'oats', 'rye', 'spelt']) {
            const menu = course('main', `contains ${cereal}`).replace('contains nothing', '');
            const { rules } = place({ code, guests: '8 { 1 without gluten }', menu });
            expect(
                rules.includes('allergen-reaches-guest') || rules.includes('diet-not-served'),
                `${cereal} under ${code}`,
            ).toBe(true);
        }
    });
});
