/**
 * Every clause that a plan may have, written once, and where it lands in the compiled plan; the clauses of a block in any order;
 * every word of the language as a name.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';

interface Parts {
    readonly event?: string;
    readonly guests?: string;
    readonly house?: string;
    readonly room?: string;
    readonly menu?: string;
    readonly course?: string;
    readonly pour?: string;
    /** Whole blocks; a team of its own takes the place of the captain's. */
    readonly items?: string;
}

/** A plan with one clause more in one of its blocks. */
function written({
    event = '',
    guests = '',
    house = '',
    room = '',
    menu = '',
    course = '',
    pour = '',
    items = '',
}: Parts): string {
    return `event "Lantern supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests 24 ${guests}  ${event} }
house "Saltmarsh Hall" { ${house} }
room "Long gallery" 18 m by 11 m { table T1 to T3: round 60 inch, 8 seats  ${room} }
${items.startsWith('team') ? '' : 'team { captain 1 }'}
${items}
menu {
    course main "Lamb" {
        served on dinner-plate warmed at 60 °C
        ${course}
        pour "Country red" 100 ml into red-wine-glass at 17 °C, is full-red-wine { contains sulphites  ${pour} }
    }
    ${menu}
}
`;
}

function compiled(text: string) {
    const checked = check('supper.cover', filesInMemory({ 'supper.cover': text, 'a.md': '---\nyield: 24\n---\n' }));
    const unread = checked.findings.filter(({ rule }) =>
        ['unreadable-text', 'unknown-name', 'misspelt-word', 'missing-unit', 'stated-twice'].includes(rule),
    );
    return { plan: planJson(checked), unread: unread.map(({ message }) => message) };
}

const dish = (content: object) => ({ menu: { courses: [{ dishes: [content] }] } });
const course = (content: object) => ({ menu: { courses: [content] } });
const pour = (content: object) => course({ pours: [content] });
const figure = (celsius: number) => ({ celsius });

describe('every clause lands in the plan', () => {
    it.each<readonly [string, Parts, object]>([
        ['doors', { event: 'doors 18:30' }, { event: { doors: { local: '18:30' } } }],
        ['ends', { event: 'ends 23:30' }, { event: { ends: { local: '23:30' } } }],
        [
            'rented pieces',
            { event: 'rent 30 salad-fork, 12 tablecloth' },
            { event: { rents: [{ piece: 'salad-fork', own: 30 }, { piece: 'tablecloth' }] } },
        ],
        ['revision', { event: 'revision 4' }, { event: { revision: 4 } }],
        ['reference', { event: 'reference "saltmarsh-1"' }, { event: { reference: 'saltmarsh-1' } }],
        ['notice', { event: 'notice "Ask us."' }, { event: { notice: 'Ask us.' } }],
        ['replications', { event: 'replications 200 seed 7' }, { event: { replications: { count: 200, seed: 7 } } }],
        [
            'crew meals',
            { event: 'crew 6 eat "Lamb" at 17:15' },
            { event: { crew: { count: 6, eat: 'Lamb', at: { local: '17:15' } } } },
        ],
        ['local code', { event: 'local code uk' }, { house: { localCode: { name: 'uk' } } }],
        ['guaranteed', { guests: 'guaranteed 20' }, { event: { guests: { guaranteed: 20 } } }],
        ['set for', { guests: 'set for 26' }, { event: { guests: { setFor: 26 } } }],
        ['guest rows', { guests: '{ 2 vegetarian without milk at T2 seat 5 }' }, { service: { groups: [{}, {}] } }],
        ['children', { guests: '{ 3 children }' }, { service: { groups: [{}, {}] } }],
        ['own', { house: 'own 30 dinner-plate' }, { house: { stock: [{ piece: 'dinner-plate', own: 30 }] } }],
        [
            'equipment with its capacity',
            { house: 'own 2 plate-warmer { holds 60 plates }' },
            { house: { stock: [{ own: 2, holds: [{ count: 60, of: 'plates' }] }] } },
        ],
        ['spare', { house: 'spare 5 %' }, { house: { spares: [{ share: { share: 0.05 } }] } }],
        ['laying', { house: 'laying { dessert: brought }' }, { house: { customs: { dessert: { value: 'brought' } } } }],
        [
            'washing',
            { house: 'washing { 45 racks per hour }' },
            { house: { washing: [{ amount: 45, perMinutes: 60 }] } },
        ],
        [
            'rule settings',
            { house: 'rule wine-temperature is off because "cellar wines"' },
            { ruleSettings: [{ rule: 'wine-temperature', is: 'off', because: 'cellar wines' }] },
        ],
        ['room temperature', { room: 'at 20 °C' }, { room: { temperature: figure(20) } }],
        ['aisle', { room: 'aisle 1.5 m' }, { room: { aisle: { millimetres: 1500 } } }],
        ['tables', {}, { room: { tables: [{ names: ['T1', 'T2', 'T3'], seatsEach: 8 }] } }],
        ['team', {}, { team: { roles: [{ role: 'captain', count: 1 }] } }],
        [
            'lasts',
            { course: 'lasts 35 min, give or take 5 min' },
            course({ lasts: { minutes: 35, giveOrTake: { minutes: 5 } } }),
        ],
        ['starts at', { course: 'starts at 19:20' }, course({ startsAt: { local: '19:20' } })],
        ['plated in', { course: 'plated in 10 s, 6 s' }, dish({ platedIn: [{ written: '10 s' }, { minutes: 0.1 }] })],
        ['plated ahead', { course: 'plated ahead into hot-box' }, dish({ platedAhead: { into: 'hot-box' } })],
        ['preset', { course: 'preset 10 min before seating' }, course({ preset: { beforeSeating: { minutes: 10 } } })],
        ['eaten with', { course: 'eaten with steak-knife' }, dish({ eatenWith: [[{ piece: 'steak-knife' }]] })],
        ['contains', { course: 'contains milk' }, dish({ contains: [{ name: 'milk' }] })],
        ['contains nothing', { course: 'contains nothing' }, dish({ contains: [] })],
        ['suits', { course: 'suits halal' }, dish({ suits: ['halal'] })],
        ['recipe', { course: 'recipe "a.md"' }, { recipes: [{ path: 'a.md', portions: 24 }] }],
        ['held at', { course: 'held at 65 °C for 2 h' }, dish({ heldAt: { celsius: 65, for: { minutes: 120 } } })],
        ['leaves the pass at', { course: 'leaves the pass at 70 °C' }, dish({ leavesPassAt: figure(70) })],
        ['cook to', { course: 'cook to 74 °C for 15 s' }, dish({ cookTo: { celsius: 74, for: { minutes: 0.25 } } })],
        ['cook extra', { course: 'cook 3 extra' }, dish({ cookExtra: 3 })],
        ['reheat', { course: 'reheat to 74 °C in 2 h' }, dish({ reheatTo: { celsius: 74, in: { minutes: 120 } } })],
        ['cooled', { course: 'cooled to 21 °C in 2 h' }, dish({ cooled: [{ to: figure(21), in: { minutes: 120 } }] })],
        [
            'measured',
            { course: 'measured 68 °C after 3 min' },
            dish({ measured: { celsius: 68, after: { minutes: 3 } } }),
        ],
        ['carried covered', { course: 'carried covered' }, dish({ carried: 'covered' })],
        [
            'sauce with its own contents, poured at table',
            { course: 'sauce "Gravy" poured at table from sauce-jug { contains wheat }' },
            dish({
                accompaniments: [
                    { sort: 'sauce', pouredAtTable: { from: 'sauce-jug' }, contains: [{ name: 'wheat' }] },
                ],
            }),
        ],
        [
            'garnish left off for some',
            { course: 'garnish "Biscuits" left off for guests without gluten { contains oats }' },
            dish({ accompaniments: [{ sort: 'garnish', leftOffFor: [{ without: ['gluten'] }] }] }),
        ],
        ['lay', { course: 'lay left dinner-fork' }, course({ lay: { left: ['dinner-fork'] } })],
        ['strength', { pour: 'strength 13 %' }, pour({ strength: { share: 0.13 } })],
        [
            'bottles',
            { pour: 'from bottles of 750 ml or 1.5 l' },
            pour({ bottles: [{ millilitres: 750 }, { millilitres: 1500 }] }),
        ],
        [
            'another drink instead',
            { pour: 'instead "Juice" 100 ml, is juice { contains nothing }' },
            pour({ instead: [{ title: 'Juice' }] }),
        ],
        [
            'water topped up',
            { menu: 'water still 180 ml into water-glass, topped up until main' },
            { menu: { water: {} } },
        ],
        [
            'bread',
            { menu: 'bread from main until main on bread-plate with butter-spreader { contains wheat }' },
            { menu: { bread: { from: 'main', until: 'main', plate: 'bread-plate', piece: 'butter-spreader' } } },
        ],
        [
            'coffee',
            { menu: 'coffee after main, on request { contains nothing }' },
            { menu: { coffee: { after: 'main', onRequest: true } } },
        ],
        [
            'toast',
            { menu: 'toast "To us" after main, lasts 4 min, with "Country red"' },
            { menu: { toastsAndSpeeches: [{ sort: 'toast', lasts: { minutes: 4 }, with: 'Country red' }] } },
        ],
        [
            'speech',
            { menu: 'speech "Welcome" before main, lasts 5 min' },
            { menu: { toastsAndSpeeches: [{ sort: 'speech' }] } },
        ],
        [
            'speech at a time',
            { menu: 'speech "Welcome" at 20:15, lasts 5 min' },
            { menu: { toastsAndSpeeches: [{ startsAt: { local: '20:15' } }] } },
        ],
        [
            'wash',
            { menu: 'wash dinner-plate after main for main' },
            { menu: { washes: [{ piece: 'dinner-plate', after: 'main', for: 'main' }] } },
        ],
        ['pass', { room: 'pass on the far' }, { room: { pass: 'far' } }],
        [
            'a table in its place, turned',
            { room: 'table T9: rectangle 72 inch by 30 inch, 6 seats, at 3 m by 4 m, turned' },
            { room: { tables: [{}, { middle: { fromLeft: { millimetres: 3000 } }, turned: true, seatsEach: 6 }] } },
        ],
        [
            'tasks of the setup',
            {
                items: 'setup { task "Chairs" takes 20 min  task "Cloths" takes 30 min, between 20 min and 40 min, after "Chairs", by 4 servers }',
            },
            {
                tasks: [
                    { when: 'setup', title: 'Chairs', takes: { minutes: 20 } },
                    { after: ['Chairs'], between: { least: { minutes: 20 } }, by: { count: 4, role: 'servers' } },
                ],
            },
        ],
        ['tasks of the strike', { items: 'strike { task "Count" takes 20 min }' }, { tasks: [{ when: 'strike' }] }],
        [
            'stations of a plating line',
            { items: 'team { plating-lines 2 with stations of 3 s, 4 s }' },
            { team: { roles: [{ stations: [{ written: '3 s' }, { written: '4 s' }] }] } },
        ],
        [
            'waiver',
            { course: 'waive wine-temperature because "the host’s own wine"' },
            { waivers: [{ rule: 'wine-temperature', because: 'the host’s own wine' }] },
        ],
    ])('%s', (_, parts, expected) => {
        const { plan, unread } = compiled(written(parts));
        expect(unread).toEqual([]);
        expect(plan).toMatchObject(expected);
    });

    it.each([
        ['refill 1', { refills: 1 }],
        ['tasted by the host', { tastedByHost: true }],
        ['topped up until main', { toppedUpUntil: 'main' }],
        ['brought with the course', { glassBrought: true }],
        ['left off for children', { leftOffFor: [{ children: true }] }],
        ['for vegetarian', { who: { needs: [{ diet: 'vegetarian' }] } }],
    ])('pour …, %s', (phrase, expected) => {
        const menu = `course dessert "Pear" { served on dessert-plate at 8 °C  pour "Sweet" 60 ml, ${phrase} }`;
        const { plan, unread } = compiled(written({ menu }));
        expect(unread).toEqual([]);
        expect(plan).toMatchObject({ menu: { courses: [{}, { pours: [expected] }] } });
    });
});

describe('the clauses of a block', () => {
    /** The plan without where each thing is written. */
    const withoutPlaces = (text: string): unknown =>
        JSON.parse(JSON.stringify(compiled(text).plan), (key, value: unknown) =>
            key === 'at' || key === 'findings' ? undefined : value,
        );

    it('stand in any order', () => {
        const clauses = [
            ...['lasts 35 min', 'contains milk', 'held at 65 °C', 'leaves the pass at 70 °C', 'cook to 74 °C'],
            ...['cook 3 extra', 'carried covered', 'suits halal', 'eaten with dinner-fork and dinner-knife'],
        ];
        const plain = withoutPlaces(written({ course: clauses.join('\n') }));
        const shuffled = fc.shuffledSubarray(clauses, { minLength: clauses.length });
        fc.assert(
            fc.property(shuffled, fc.constantFrom('\n', ' ', '\t\r\n'), (order, between) => {
                expect(withoutPlaces(written({ course: order.join(between) }))).toEqual(plain);
            }),
            { numRuns: 30 },
        );
    });
});

describe('a word of the language', () => {
    const grammar = readFileSync(
        new URL('../packages/language/src/grammar/cover.langium', import.meta.url),
        'utf8',
    ).replaceAll(/\/\/.*|\/\*[\s\S]*?\*\//g, '');
    const words = [...new Set([...grammar.matchAll(/'([a-z][a-z-]*)'/gi)].map(([, word]) => word!))].toSorted();
    const wordsAfter = (rule: string): string[] => {
        const [, body = ''] = new RegExp(`\\b${rule} returns string:([^;]*);`).exec(grammar) ?? [];
        return [...body.matchAll(/'([a-z][a-z-]*)'/gi)].map(([, word]) => word!);
    };
    const soft = ['Soft', 'UnitWord', 'MistypedUnit'].flatMap(wordsAfter);

    /** Whether a house can have a piece, a kind, an allergen and a table of this name, and use them. */
    const use = (name: string): readonly string[] =>
        compiled(`fork ${name} { length 180 mm  for ${name} }
kind ${name} { called "of the house"  eaten with ${name} and dinner-knife }
allergen ${name} { called "of the house" }
house "Saltmarsh Hall" { own 12 ${name}, 4 dinner-plate }
menu {
    course ${name} "Lamb" {
        served on dinner-plate
        eaten with ${name} and dinner-knife
        contains ${name}, milk
    }
    bread from ${name} until ${name} on bread-plate { contains nothing }
    lay left ${name} right dinner-knife
}`).unread;

    it('there are many', () => {
        expect(words.length).toBeGreaterThan(150);
        expect(soft.length).toBeGreaterThan(50);
    });

    it.each(words)('%s is a name in quotes', (word) => {
        expect(use(`"${word}"`)).toEqual([]);
    });

    it.each(soft)('%s is a name without quotes, where it can start no clause', (word) => {
        expect(use(word)).toEqual([]);
    });
});
