import { describe, expect, it } from 'vitest';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';
import type { Service } from '../types.js';

interface Evening {
    readonly guests?: string;
    readonly laying?: string;
    readonly menu: string;
}

function serve({ guests = '40', laying = '', menu }: Evening): Service {
    const text = `house "Saltmarsh Hall" { local code us-model laying { ${laying} } }
event "Evening" { date 2026-10-17  zone America/New_York  seated 19:00  guests ${guests} }
menu { ${menu} }`;
    return check('evening.cover', filesInMemory({ 'evening.cover': text })).service;
}

const course = (kind: string, inside: string): string => `course ${kind} { lasts 20 min  contains nothing  ${inside} }`;
const RED = 'pour "Red" 125 ml into red-wine-glass, is red-wine';
const JUICE = '{ contains sulphites  instead "Juice" 100 ml, is juice { contains nothing } }';

/** `Red 38, Juice 10`: drinkers by title. */
const drinkers = ({ drinks }: Service): string =>
    drinks.map(({ title, drinkers: count }) => `${title} ${count}`).join(', ');

describe('who drinks', () => {
    it.each([
        ['everyone', '40', RED, 'Red 40'],
        ['a share, rounded up', '41', `${RED}, for 60 %`, 'Red 25'],
        ['a number, and no more than there are', '40', `${RED}, for 60`, 'Red 40'],
        ['guests of a need', '40 { 6 vegetarian }', `${RED}, for vegetarian`, 'Red 6'],
        ['a number of guests of a need', '40 { 6 vegetarian }', `${RED}, for 10 vegetarian`, 'Red 6'],
        ['nobody it is left off for', '40 { 4 vegetarian }', `${RED}, left off for vegetarian`, 'Red 36'],
    ])('%s', (_, guests, pour, expected) => {
        const menu = course('main', pour);
        expect(drinkers(serve({ guests, menu }))).toBe(expected);
    });

    it('keeps alcohol from children and from guests whose diet leaves it out, and what it contains from those without it', () => {
        const of = (row: string) =>
            drinkers(
                serve({
                    guests: `40 { 4 ${row} }`,
                    laying: 'alternative-share: 0 %',
                    menu: course('main', `${RED} ${JUICE}`),
                }),
            );
        expect(['children', 'halal', 'without sulphites', 'vegetarian'].map(of)).toEqual([
            'Red 36, Juice 4',
            'Red 36, Juice 4',
            'Red 36, Juice 4',
            'Red 40, Juice 0',
        ]);
    });

    it.each([
        ['vegan', 'pour "Egg nog" 125 ml, is soft-drink { contains egg }', 'Egg nog 36'],
        ['vegan', 'pour "Egg nog" 125 ml, is soft-drink { contains milk  suits vegan }', 'Egg nog 36'],
        ['vegetarian', 'pour "Beef tea" 125 ml, is soft-drink { contains meat-stock }', 'Beef tea 36'],
        ['vegan', `${RED} { contains sulphites }`, 'Red 40'],
        ['kosher', 'pour "Verjus" 125 ml, is juice { contains nothing }', 'Verjus 40'],
        ['without alcohol', `${RED} { contains sulphites }`, 'Red 36'],
        ['children', 'pour "Shrub" 125 ml, is juice { contains alcohol }', 'Shrub 36'],
        ['halal', 'pour "Shrub" 125 ml, is juice { contains alcohol  suits halal }', 'Shrub 36'],
        ['halal', 'pour "Small ale" 125 ml, is ale { contains barley  strength 0.4 % }', 'Small ale 36'],
        ['halal', 'pour "Small ale" 125 ml, is ale { contains barley  strength 0.4 %  suits halal }', 'Small ale 40'],
        ['halal', 'pour "Ale" 125 ml, is ale { contains barley  suits halal }', 'Ale 36'],
    ])('keeps from 4 guests %s what they may not have: %s', (row, pour, expected) => {
        expect(drinkers(serve({ guests: `40 { 4 ${row} }`, menu: course('main', pour) }))).toBe(expected);
    });

    it('takes a cordial for no wine because it comes in a wine glass', () => {
        const cordial = 'instead "Cordial" 100 ml into red-wine-glass { contains nothing }';
        const menu = course('main', `${RED} { contains sulphites  ${cordial} }`);
        const service = serve({ guests: '40 { 4 halal  2 children }', laying: 'alternative-share: 0 %', menu });
        expect(drinkers(service)).toBe('Red 34, Cordial 6');
    });

    it('gives each guest kept from a pour the first offer they may have', () => {
        const menu = course(
            'main',
            `${RED} { contains sulphites
                instead "Verjus" 100 ml, is juice { contains sulphites }
                instead "Milk punch" 100 ml, is juice { contains milk } }`,
        );
        const guests = '40 { 3 children  2 without sulphites }';
        expect(drinkers(serve({ guests, laying: 'alternative-share: 0 %', menu }))).toBe(
            'Red 35, Verjus 3, Milk punch 2',
        );
    });

    it('has what is offered in a pour’s place at hand for the house’s share, and for the rest of a pour for some', () => {
        const menu = (who: string) => course('main', `${RED}${who} ${JUICE}`);
        expect(drinkers(serve({ menu: menu('') }))).toBe('Red 40, Juice 8');
        expect(drinkers(serve({ laying: 'alternative-share: 30 %', menu: menu('') }))).toBe('Red 40, Juice 12');
        expect(drinkers(serve({ menu: menu(', for 60 %') }))).toBe('Red 24, Juice 16');
    });

    it('pours a dish’s own drink for those who get the dish', () => {
        const service = serve({
            guests: '40 { 6 vegetarian }',
            menu: course(
                'main',
                `dish "Beef" for the rest { contains beef ${RED} }
                 dish "Squash" for vegetarian { contains nothing  pour "White" 125 ml, is white-wine }`,
            ),
        });
        expect(drinkers(service)).toBe('Red 34, White 6');
        // Nobody has both: a guest’s drinks are those of one dish.
        expect(service.alcohol.map(({ drinks }) => drinks!.toFixed(2))).toEqual(['0.85', '0.85']);
    });
});

describe('how often', () => {
    const poured = (evening: Evening, title = 'Red'): readonly [pours: number, ml: number] => {
        const need = serve(evening).drinks.find((each) => each.title === title)!;
        return [need.poursEach, need.millilitres];
    };

    it.each([
        ['once', RED, '', [1, 5000]],
        ['with refills', `${RED}, refill 2`, '', [3, 15_000]],
        ['topped up through further courses', `${RED}, topped up until dessert`, '', [3, 15_000]],
        ['topped up by the house’s share', `${RED}, topped up until dessert`, 'top-up: 50 %', [2, 10_000]],
    ])('%s', (_, pour, laying, expected) => {
        const menu = course('main', pour) + course('cheese', '') + course('dessert', '');
        expect(poured({ laying, menu })).toEqual(expected);
    });

    it('fills glasses again for a toast that is drunk when their course is over, once, from the last pour before it', () => {
        const toast = (when: string) => `toast "Health" ${when} with "Red"`;
        const two = course('main', RED) + course('cheese', '');
        expect(poured({ menu: two + toast('after main') })).toEqual([1, 5000]);
        expect(poured({ menu: two + toast('after cheese') })).toEqual([2, 10_000]);
        expect(poured({ menu: course('fish', RED) + two + toast('after cheese') })).toEqual([3, 15_000]);
        const topped = course('main', `${RED}, topped up until cheese`) + course('cheese', '');
        expect(poured({ menu: topped + toast('after cheese') })).toEqual([2, 10_000]);
    });

    it('fills them for a toast that only has an hour where coffee has come since', () => {
        const toast = 'toast "Midnight" at 00:00, with "Red"';
        const coffee = 'coffee after main in coffee-cup { contains nothing }';
        expect(poured({ menu: course('main', RED) + toast })).toEqual([1, 5000]);
        expect(poured({ menu: course('main', RED) + coffee + toast })).toEqual([2, 10_000]);
    });

    it('pours what is offered in its place as often, for the toast as well', () => {
        const menu = course('main', `${RED}, refill 1 ${JUICE}`) + course('cheese', '');
        expect(poured({ menu: `${menu}toast after cheese with "Red"` }, 'Juice')).toEqual([3, 8 * 3 * 100]);
    });

    it('buys one drink of two courses together', () => {
        const menu = (second: string) => course('fish', RED) + course('main', second);
        const bottles = (evening: Evening) =>
            serve(evening).drinks.map(({ title, bottles: of }) => [title, of[0]!.count]);
        const guests = '4';
        expect(bottles({ guests, menu: menu(RED) })).toEqual([['Red', 2]]);
        expect(bottles({ guests: '3', menu: menu(RED) })).toEqual([['Red', 1]]);
    });
});

describe('the host’s tasting', () => {
    const need = (guests: number, laying = '', sizes = '750 ml') =>
        serve({
            guests: String(guests),
            laying,
            menu: course('main', `${RED}, tasted by the host { from bottles of ${sizes} }`),
        }).drinks[0]!;

    it('takes a pour from the bottle it is tasted from', () => {
        expect([need(5), need(6), need(11), need(12)].map(({ bottles }) => bottles[0]!.count)).toEqual([1, 2, 2, 3]);
        expect(need(6).tasted).toBe(30);
    });
    it('takes one from every bottle where the house says so', () => {
        const every = need(12, 'host-tastes: every-bottle');
        expect([every.bottles[0]!.count, every.tasted]).toEqual([3, 90]);
        expect(need(10, 'host-tastes: every-bottle').bottles[0]!.count).toBe(2);
    });
    it('is the house’s measure', () => {
        expect(need(11, 'host-tasting: 20 ml').tasted).toBe(20);
    });
    it('is tasted from the size that leaves least over', () => {
        expect(need(8, '', '750 ml or 375 ml').bottles).toEqual([
            { size: 750, count: 1 },
            { size: 375, count: 1 },
        ]);
        expect(need(9, '', '750 ml or 375 ml').bottles).toEqual([{ size: 750, count: 2 }]);
    });
});

describe('water', () => {
    const waters = (water: string, laying = '', guests = '40') =>
        serve({
            guests,
            laying,
            menu: `${water} ${course('soup', '')} ${course('main', '')} ${course('dessert', '')}`,
        }).water.map(({ choice, drinkers: count, millilitres, from, count: vessels }) => [
            choice,
            count,
            millilitres,
            from,
            vessels,
        ]);

    it('is poured in jugs where it is still, in bottles where it sparkles, and topped up by half a glass', () => {
        expect(waters('water still and sparkling 200 ml, topped up until main')).toEqual([
            ['still', 20, 20 * 400, 'jugs', 8],
            ['sparkling', 20, 20 * 400, 'bottles', 14],
        ]);
    });
    it('goes by the shares the house states', () => {
        expect(waters('water still and sparkling 200 ml', 'water-share: 80 %  sparkling-water-share: 25 %')).toEqual([
            ['still', 24, 4800, 'jugs', 5],
            ['sparkling', 8, 1600, 'bottles', 3],
        ]);
        expect(waters('water still 200 ml', 'still-water-from: bottles  water-bottle: 1 l')).toEqual([
            ['still', 40, 8000, 'bottles', 8],
        ]);
    });
    it('fills the glass as the house does where the plan gives no measure', () => {
        const [half] = waters('water', 'water-fill: 50 %');
        const [most] = waters('water', '');
        expect(Number(half![2]) / Number(most![2])).toBeCloseTo(2 / 3, 5);
    });
    it('is counted only where the menu has it, and not for a dinner without guests', () => {
        expect(waters('')).toEqual([]);
        expect(waters('water 200 ml', '', '0')).toEqual([['still', 0, 0, 'jugs', 0]]);
    });
    it('comes near the published half bottle a guest at a dinner of three courses (quantities 2.5, WFD)', () => {
        const [[, , millilitres]] = waters('water sparkling 150 ml, topped up until dessert') as [
            [string, number, number],
        ];
        expect(millilitres / 40 / 750).toBeCloseTo(0.5, 1);
    });
});

describe('the glass of a drink', () => {
    const menu = `${course('fish', 'pour "White" 100 ml into white-wine-glass, is white-wine { instead "Verjus" 80 ml into highball-glass, is juice }')}
        ${course('main', `${RED}, brought with the course`)} ${course('dessert', '')}
        toast after main with "White"`;
    const glasses = (laying: string) =>
        Object.fromEntries(serve({ laying, menu }).drinks.map(({ title, glass }) => [title, glass]));

    it('stands to the end, or leaves with its course and not before its toast', () => {
        const stays = glasses('');
        expect(stays.White).toMatchObject({
            piece: 'white-wine-glass',
            count: 40,
            comes: 'laid',
            leaves: { title: 'Guests leave' },
        });
        expect(stays.Red).toMatchObject({ comes: 'with-its-course', leaves: { title: 'Guests leave' } });
        const goes = glasses('glasses-leave: with-their-course');
        expect(goes.White!.leaves.title).not.toBe('Guests leave');
        expect(goes.Red!.leaves.title).toBe('Clear main');
    });
    it('is its own for what is offered in a pour’s place and names one, for those who take it', () => {
        expect(glasses('').Verjus).toMatchObject({
            piece: 'highball-glass',
            count: 8,
            comes: 'with-its-course',
            leaves: { title: 'Guests leave' },
        });
    });
    it('is pulled for those who take what is offered, beside the glasses that stand at the covers', () => {
        const pulled = (piece: string): number =>
            serve({ menu }).counts.find((count) => count.piece === piece)?.needed ?? 0;
        expect([pulled('white-wine-glass'), pulled('highball-glass')]).toEqual([40, 8]);
        const same = serve({ menu: menu.replace('highball-glass', 'white-wine-glass') });
        expect(same.counts.find(({ piece }) => piece === 'white-wine-glass')?.needed).toBe(40);
    });
});
