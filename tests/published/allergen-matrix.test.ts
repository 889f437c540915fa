/**
 * The allergen matrix of a whole menu against the four lists of temperature.md §3: which allergens stand at its head, in the code's
 * words, and under which of them each food is told.
 */
import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';

interface Row {
    readonly title: string;
    readonly sort: string;
    readonly with?: string;
    readonly contents: string;
    readonly contains: readonly {
        readonly allergen: string;
        readonly by: readonly string[];
        readonly told: readonly string[];
        readonly because: string;
    }[];
    readonly beyondTheCode: readonly string[];
    readonly usually?: readonly string[];
}

interface Matrix {
    readonly code: string;
    readonly columns: readonly { readonly name: string; readonly called: string }[];
    readonly rows: readonly Row[];
    readonly caution: string;
}

function matrix(code: string, dish = 'contains nothing', more = ''): Matrix {
    const text = `event "Harbour lunch" { date 2026-10-17  zone America/Halifax  seated 12:30  guests 8  local code ${code} }
menu {
    course main "Plate" is grain-main { served on dinner-plate at 62 °C  lasts 20 min  ${dish} }
    ${more}
}
`;
    const checked = check('lunch.cover', filesInMemory({ 'lunch.cover': text }));
    expect(checked.broken).toEqual([]);
    expect(checked.findings.filter(({ rule }) => ['unreadable-text', 'unknown-name'].includes(rule))).toEqual([]);
    return (planJson(checked, true) as unknown as { service: { allergens: Matrix } }).service.allergens;
}

const NUTS = ['almond', 'brazil-nut', 'cashew', 'hazelnut', 'macadamia', 'pecan', 'pistachio', 'walnut'];

describe('the head of the matrix', () => {
    it.each<readonly [string, string, readonly string[]]>([
        [
            'us-model',
            '3.1: nine major food allergens',
            ['crustaceans', 'egg', 'fish', 'milk', 'peanut', 'sesame', 'soy', 'tree-nuts', 'wheat'],
        ],
        [
            'eu',
            '3.2: fourteen of Annex II',
            [
                ...['celery', 'crustaceans', 'egg', 'fish', 'gluten', 'lupin', 'milk', 'molluscs', 'mustard', 'peanut'],
                ...['sesame', 'soy', 'sulphites', 'tree-nuts'],
            ],
        ],
        [
            'canada',
            '3.3: eleven groups, twelve with crustaceans and molluscs apart; wheat is told with the sources of gluten',
            [
                ...['crustaceans', 'egg', 'fish', 'gluten', 'milk', 'molluscs', 'mustard', 'peanut', 'sesame', 'soy'],
                ...['sulphites', 'tree-nuts'],
            ],
        ],
        [
            'au-nz',
            '3.4: each nut by its own name; wheat is told with gluten',
            [
                ...['crustaceans', 'egg', 'fish', 'gluten', 'lupin', 'milk', 'molluscs', 'peanut', 'sesame', 'soy'],
                ...['sulphites', 'pine-nut', ...NUTS],
            ].toSorted(),
        ],
    ])('%s (%s)', (code, _, names) => {
        expect(matrix(code).columns.map(({ name }) => name)).toEqual([...names]);
    });

    it('is in the words of the code', () => {
        const words = (code: string): readonly string[] => matrix(code).columns.map(({ called }) => called);
        expect(words('us-model')).toEqual(
            expect.arrayContaining(['Crustacean shellfish', 'tree nuts', 'soybeans', 'sesame', 'wheat']),
        );
        expect(words('eu')).toEqual(
            expect.arrayContaining(['cereals containing gluten', 'nuts', 'sulphur dioxide and sulphites', 'lupin']),
        );
    });
});

/** Every food that one of the lists names, and the head under which each of the four codes tells it; `-` where it tells nothing. */
const LISTED: readonly (readonly [food: string, us: string, eu: string, canada: string, auNz: string])[] = [
    ['milk', 'milk', 'milk', 'milk', 'milk'],
    ['lactose', 'milk', 'milk', 'milk', 'milk'],
    ['egg', 'egg', 'egg', 'egg', 'egg'],
    ['fish', 'fish', 'fish', 'fish', 'fish'],
    ['crustaceans', 'crustaceans', 'crustaceans', 'crustaceans', 'crustaceans'],
    ['prawn', 'crustaceans', 'crustaceans', 'crustaceans', 'crustaceans'],
    ['molluscs', '-', 'molluscs', 'molluscs', 'molluscs'],
    ['oyster', '-', 'molluscs', 'molluscs', 'molluscs'],
    ['peanut', 'peanut', 'peanut', 'peanut', 'peanut'],
    ['soy', 'soy', 'soy', 'soy', 'soy'],
    ['sesame', 'sesame', 'sesame', 'sesame', 'sesame'],
    ['wheat', 'wheat', 'gluten', 'gluten', 'gluten'],
    ['spelt', 'wheat', 'gluten', 'gluten', 'gluten'],
    ['khorasan-wheat', 'wheat', 'gluten', 'gluten', 'gluten'],
    ['rye', '-', 'gluten', 'gluten', 'gluten'],
    ['barley', '-', 'gluten', 'gluten', 'gluten'],
    ['oats', '-', 'gluten', 'gluten', 'gluten'],
    ['triticale', 'wheat', 'gluten', 'gluten', 'gluten'],
    ['celery', '-', 'celery', '-', '-'],
    ['mustard', '-', 'mustard', 'mustard', '-'],
    ['lupin', '-', 'lupin', '-', 'lupin'],
    ['sulphites', '-', 'sulphites', 'sulphites', 'sulphites'],
    ...NUTS.map((nut) => [nut, 'tree-nuts', 'tree-nuts', 'tree-nuts', nut] as const),
    // The pine nut: in the United States, Canada, Australia and New Zealand yes, in the European Union no.
    ['pine-nut', 'tree-nuts', '-', 'tree-nuts', 'pine-nut'],
    ['black-walnut', 'tree-nuts', 'tree-nuts', 'tree-nuts', 'walnut'],
    // Off the list of the United States since January 2025; never on the others.
    ['coconut', '-', '-', '-', '-'],
    ['chestnut', '-', '-', '-', '-'],
    ['beech-nut', '-', '-', '-', '-'],
    ['butternut', '-', '-', '-', '-'],
    ['hickory-nut', '-', '-', '-', '-'],
    ['pili-nut', '-', '-', '-', '-'],
];

describe('a food in the matrix', () => {
    it.each(LISTED)('%s is told under %s, %s, %s, %s', (food, ...heads) => {
        const found = ['us-model', 'eu', 'canada', 'au-nz'].map((code) => {
            const [row] = matrix(code, `contains ${food}`).rows;
            expect(row!.contents).toBe('stated');
            expect(row!.contains.length + row!.beyondTheCode.length).toBe(1);
            return row!.contains[0]?.allergen ?? '-';
        });
        expect(found).toEqual(heads);
    });

    it('is told by its own name, beside the head it stands under', () => {
        expect(matrix('us-model', 'contains pine-nut, almond').rows[0]!.contains).toEqual([
            { allergen: 'tree-nuts', by: ['pine nut', 'almond'], told: ['pine nut', 'almond'], because: 'stated' },
        ]);
        expect(matrix('eu', 'contains pine-nut').rows[0]).toMatchObject({ contains: [], beyondTheCode: ['pine nut'] });
    });

    it('that no list names is told beside them: a guest is kept from it all the same', () => {
        for (const code of ['us-model', 'eu', 'canada', 'au-nz']) {
            expect(matrix(code, 'contains chestnut').rows[0]!.beyondTheCode).toEqual(['chestnut']);
        }
    });
});

describe('the rows of the matrix', () => {
    const full = matrix(
        'eu',
        `contains nothing
        sauce "Cider cream" { contains milk }
        garnish { contains celery }
        pour "White" 90 ml, is white-wine { contains sulphites  instead "Juice" 90 ml, is juice }`,
        `bread from main until main on bread-plate with butter-spreader {
            contains wheat
            butter "Salted" left off for guests without milk { contains milk }
            dish "Crispbread" for guests without gluten { contains nothing }
        }
        course fish "Cod" is fish { served on fish-plate at 58 °C  lasts 20 min  contains milk }
        course dessert "Pear" is dessert { served on dessert-plate at 8 °C  lasts 20 min }
        coffee after dessert { contains nothing }`,
    );

    it('are bread, butter, dishes, sauces, garnishes, drinks, what is offered in their place, and coffee', () => {
        expect(full.rows.map(({ sort, title, with: of }) => [sort, title, of])).toEqual([
            ['bread', 'bread', undefined],
            ['butter', 'Salted', 'bread'],
            ['bread', 'Crispbread', undefined],
            ['dish', 'Plate', undefined],
            ['sauce', 'Cider cream', 'Plate'],
            ['garnish', 'garnish', 'Plate'],
            ['drink', 'White', undefined],
            ['drink', 'Juice', undefined],
            ['dish', 'Cod', undefined],
            ['dish', 'Pear', undefined],
            ['coffee', 'coffee', undefined],
        ]);
    });

    it('say where the plan makes no statement, which is not the same as nothing', () => {
        const row = (title: string): Row => full.rows.find((each) => each.title === title)!;
        expect(row('Pear').contents).toBe('not stated');
        expect(row('Juice').contents).toBe('not stated');
        expect(row('Plate')).toMatchObject({ contents: 'stated', contains: [] });
    });

    it('tell what the kind is made of, though the plan leaves it out', () => {
        const cod = full.rows.find(({ title }) => title === 'Cod')!;
        expect(cod.contains).toEqual([
            { allergen: 'fish', by: ['fish'], told: ['fish'], because: 'its kind is made of it' },
            { allergen: 'milk', by: ['milk'], told: ['milk'], because: 'stated' },
        ]);
    });

    it('come with the caution about contact, whatever is in them', () => {
        expect(full.caution).toMatch(/traces through contact are not computed/i);
        expect(full.caution).toMatch(/local food code and licensed staff decide/);
    });
});

/** What the menu card and the compiled plan tell guests of a dish, in the code's words. */
function told(code: string, dish: string): string[] {
    const text = `event "Harbour lunch" { date 2026-10-17  zone America/Halifax  seated 12:30  guests 8  local code ${code} }
menu { course main "Plate" is fish { served on dinner-plate at 62 °C  lasts 20 min  ${dish} } }
`;
    const plan = planJson(check('lunch.cover', filesInMemory({ 'lunch.cover': text })), true);
    const { allergens } = (plan as unknown as { service: { allergens: Matrix } }).service;
    return allergens.rows[0]!.contains.flatMap((cell) => cell.told);
}

describe('a food as guests are told of it', () => {
    // The words of temperature 3.1 and 3.2; what the food is called stands behind them.
    it.each<readonly [code: string, contains: string, words: readonly string[]]>([
        ['eu', '"butter"', ['fish', 'milk (butter)']],
        ['eu', 'prawn', ['crustaceans (prawn or shrimp)', 'fish']],
        ['us-model', 'prawn', ['Crustacean shellfish (prawn or shrimp)', 'fish']],
        ['eu', 'celeriac', ['celery (celeriac)', 'fish']],
        ['us-model', 'tofu', ['fish', 'soybeans (tofu)']],
        // Named by the code itself, or saying it already.
        ['eu', 'hazelnut', ['fish', 'hazelnut']],
        ['us-model', 'hazelnut', ['fish', 'hazelnut']],
        ['eu', 'wheat-flour', ['fish', 'wheat flour']],
        ['eu', 'spelt', ['fish', 'spelt (wheat)']],
        // What the kind is of is not told beside a sort of it.
        ['eu', 'cod', ['fish (cod)']],
        // A sort of two: both are told.
        ['eu', 'triticale', ['fish', 'wheat, rye (triticale)']],
        ['us-model', 'cod', ['fish (cod)']],
    ])('under %s, %s', (code, contains, words) => {
        expect(told(code, `contains ${contains}`)).toEqual(words);
    });
});

it('tells a food of the house under each allergen that it is', () => {
    const text = `ingredient mayonnaise is egg, mustard
event "Harbour lunch" { date 2026-10-17  zone America/Halifax  seated 12:30  guests 8  local code eu }
menu { course main "Plate" is grain-main { served on dinner-plate at 62 °C  lasts 20 min  contains mayonnaise } }
`;
    const [row] = check('lunch.cover', filesInMemory({ 'lunch.cover': text })).service.allergens.rows;
    expect(row!.cells.map(({ column }) => column)).toEqual(['egg', 'mustard']);
    expect(row!.cells.map(({ by }) => by[0]!.told)).toEqual(Array(2).fill('egg, mustard (mayonnaise)'));
});
