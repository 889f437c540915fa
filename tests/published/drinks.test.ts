import { describe, expect, it } from 'vitest';
import { check } from '../../packages/language/src/check.js';
import { filesInMemory } from '../../packages/language/src/plan/files.js';

// The rules about drinks against the published figures. Each case names its row in the project's table-service facts.

function found(rule: string, menu: string, laying = ''): readonly string[] {
    const text = `house "Saltmarsh Hall" { laying { ${laying} } }
glass plain-glass { holds 300 ml }
menu { ${menu} }`;
    const { findings } = check('supper.cover', filesInMemory({ 'supper.cover': text }));
    return findings.filter((finding) => finding.rule === rule).map(({ message }) => message);
}

const course = (pours: string): string =>
    `course main "Lamb" { served on dinner-plate warmed at 60 °C  contains nothing  ${pours} }`;

describe('how full a glass is poured', () => {
    it.each([
        ['wine, two thirds at most', '4.22', 'light-white-wine', '', 200, 203],
        ['sparkling wine, three quarters', '4.25', 'sparkling-wine', '', 225, 228],
        [
            'sparkling wine, two thirds where a house holds all wine to it',
            '4.22',
            'sparkling-wine',
            'sparkling-fill: 67 %',
            200,
            204,
        ],
        ['beer, never to the brim', '4.20', 'beer', '', 299, 300],
    ])('%s (%s)', (_, row, kind, laying, fine, over) => {
        const poured = (amount: number) =>
            found('pour-overfills-glass', course(`pour "Drink" ${amount} ml into plain-glass is ${kind}`), laying);
        expect(poured(fine), row).toEqual([]);
        expect(poured(over), row).toHaveLength(1);
    });

    it.each([
        ['three quarters (4.16)', '', 225, 228],
        ['half at a formal dinner (4.17)', 'water-fill: 50 %', 150, 153],
    ])('water, %s', (_, laying, fine, over) => {
        const poured = (amount: number) =>
            found('pour-overfills-glass', `water still ${amount} ml into plain-glass ${course('')}`, laying);
        expect([poured(fine).length, poured(over).length]).toEqual([0, 1]);
    });
});

describe('how many glasses stand at one cover', () => {
    const drinks = (count: number, kind: string): string =>
        course(
            Array.from({ length: count }, (_, index) => `pour "Drink ${index}" 5 cl into plain-glass is ${kind}`).join(
                '\n',
            ),
        );

    it('no more than three wines at a formal dinner (4.7)', () => {
        expect(found('too-many-glasses', drinks(3, 'port'))).toEqual([]);
        expect(found('too-many-glasses', drinks(4, 'port'))).toHaveLength(1);
    });

    it('at most five glasses, water among them (4.9), or the six of one state dinner where a house says so (4.10)', () => {
        expect(found('too-many-glasses', drinks(4, 'beer'))).toEqual([]);
        expect(found('too-many-glasses', drinks(5, 'beer'))).toHaveLength(1);
        expect(found('too-many-glasses', drinks(5, 'beer'), 'most-glasses: 6')).toEqual([]);
        expect(found('too-many-glasses', drinks(9, 'beer'), 'most-glasses: none')).toEqual([]);
    });
});
