import { describe, expect, it } from 'vitest';
import {
    check,
    drawEvening,
    filesInMemory,
    planJson,
    SHEET_NAMES,
    sheets,
    whatIf,
    type SheetFile,
} from 'underliner-language';
import { allergenPlates, dayInWords } from '../packages/language/src/output/sheets/evening.js';
import { cellText } from '../packages/language/src/output/sheets/sheet.js';
import { workspace } from './sheets/workspace.js';
import { examplePlans } from './support/samples.js';

const checked = check('examples/saltmarsh-hall/lantern-supper.cover', workspace);
const all = sheets(checked);

/** The dish of a mark is another in each course: whoever is served the second of the first course has the first of the next. */
const MARKS = `event "Marks" {
    date 2026-10-17  zone America/Halifax  seated 19:00
    guests 8 { 1 without egg at T1 seat 3  1 halal at T1 seat 1  1 vegetarian at T1 seat 2 }
}
room "Gallery" 12 m by 9 m { table T1: round 66 inch, 8 seats }
team { captain 1  servers 1  plating-lines 1 at 12 plates per min }
menu {
    course appetizer "Starter" {
        lasts 12 min
        dish "Leek" for the rest { served on salad-plate at 8 °C  contains nothing  suits halal }
        dish "Beet" for 4 { served on salad-plate at 8 °C  contains egg  suits halal }
    }
    course main "Main" {
        lasts 30 min
        dish "Chicken" is poultry for halal { served on dinner-plate at 60 °C  cook to 74 °C  contains nothing  suits halal }
        dish "Duck" is poultry for the rest {
            served on dinner-plate at 60 °C  cook to 74 °C  contains nothing
            sauce "Port sauce" left off for guests without egg { contains egg }
        }
        dish "Squash" is vegetable-main for vegetarian { served on dinner-plate at 60 °C  contains nothing }
    }
}`;

/** The words of a sheet, without its drawings; one space between. */
function words(name: string, from: readonly SheetFile[] = all): string {
    const html = from.find((sheet) => sheet.name === name)!.html;
    return html
        .replace(/<style>.*?<\/style>|<svg.*?<\/svg>/gs, ' ')
        .replace(/<[^>]+>/g, ' ')
        .replace(/\s+/g, ' ');
}

describe('the sheets of the lantern supper', () => {
    it('are one for each trade, and one for each server', () => {
        expect(all.map(({ name }) => name)).toEqual([
            'captain',
            ...[1, 2, 3, 4, 5, 6, 7].map((number) => `server-${number}`),
            'kitchen',
            'steward',
            'bar',
            'guide',
            'menu-card',
            'seat-list',
            'place-cards',
        ]);
    });

    it('say event, day and revision in the text and at the foot of every printed page', () => {
        for (const { name, html } of all) {
            expect(words(name)).toContain('Lantern night supper · Saturday 17 October 2026 · revision 4');
            expect(html, name).toMatch(/@bottom-left \{ content: "Lantern night supper · Saturday 17 October 2026/);
            expect(html, name).toContain('counter(page) " of " counter(pages)');
        }
    });

    it('are the same bytes every time', () => {
        expect(sheets(check('examples/saltmarsh-hall/lantern-supper.cover', workspace))).toEqual(all);
    });

    it('fetch nothing and run nothing', () => {
        for (const { html } of all) {
            expect(html).not.toMatch(/<(script|link|img|iframe)\b|\b(src|href)=|url\(/);
        }
    });

    it('give the captain calls, stations, risks with figures, and the rates nobody measured', () => {
        const said = words('captain');
        const { run, preparations } = checked.service;
        expect(said).toContain('Toast: To the lantern keepers');
        for (const { title } of checked.plan.menu!.courses) {
            expect(said).toContain(title);
        }
        expect(said).toContain('server 6 T8 (8), T9 (8) GF: T8 seat 8');
        expect(said).toMatch(/Braised chicken: wanted at 63 °C; plates arrive at 45 to 61 °C/);
        expect(said).toContain('2.9 standard drinks (Canada)');
        expect(said).toContain('Waivers: none.');
        for (const rate of [...run!.assumed, ...preparations!.assumed]) {
            expect(said).toContain(rate.replaceAll('-', ' '));
        }
    });

    it('have two people check every allergen plate, the server of its station by name', () => {
        const plates = allergenPlates(checked);
        // Three guests from whom an allergen is kept: bread and seven courses each.
        expect(plates.length).toBe(3 * 8);
        const checks = (name: string): string[] =>
            [...all.find((sheet) => sheet.name === name)!.html.matchAll(/<p class="check">(.*?)<\/p>/gs)].map(
                ([, line]) =>
                    line!
                        .replace(/<[^>]+>/g, ' ')
                        .replace(/\s+/g, ' ')
                        .trim(),
            );
        expect(checks('kitchen').length).toBe(24);
        expect(checks('kitchen')).toContain('GF 1 · T8 seat 8 · Grilled sirloin pass server 6');
        expect(checks('server-3').length).toBe(16);
        expect(checks('server-3')).toContain(
            'GF · T3 seat 6 · Three cheeses of the marsh, without Oat biscuits pass server 3',
        );
        expect(checks('server-1')).toEqual([]);
    });

    it('tell a server what comes and goes, from which side, and what guests say without a word', () => {
        const said = words('server-3');
        expect(said).toMatch(/Serve food from the left, clear from the right, pour from the right\./);
        expect(said).toMatch(/Lay for Roast squash soup soup spoon/);
        expect(said).toMatch(
            /Finished: knife and fork side by side on the plate; clear when everyone at the table has/,
        );
        expect(said).toMatch(/Back soon: napkin on the chair/);
        expect(said).toMatch(/Coffee: each guest is asked/);
        expect(said).toMatch(/5 vegetarian, without tree-nuts/);
        expect(said).toMatch(/Main course Barley-stuffed squash V\+N 3 5/);
        expect(said).toMatch(/Water, still or sparkling 180 ml in water goblet/);
    });

    it('give the kitchen counts, limits of its code and a log', () => {
        const said = words('kitchen');
        expect(said).toContain('Main course: Braised chicken 37 cook 54');
        expect(said).toContain('Hot food is held at 60 °C or more.');
        expect(said).toContain('Cold food is held at 4 °C or less.');
        expect(said).toContain('Braised chicken: cooked, core 74 °C or more');
        // Cooked to order and undercooked: it is not held.
        expect(said).not.toContain('Grilled sirloin: held hot');
        expect(said).toContain('Quince sorbet: from the freezer -10 °C');
    });

    it('give the steward the pull list by store, the wash and the ice', () => {
        const said = words('steward');
        for (const { piece, pull } of checked.service.pull) {
            const called = checked.plan.cupboard.pieces.get(piece)?.called ?? piece.replaceAll('-', ' ');
            expect(said).toContain(`${called} ${pull} `);
        }
        expect(said).toContain('Flatware');
        expect(said).toContain('84 salad forks');
        expect(said).toContain('8 bags of 10 kg');
    });

    it('give the bar bottles, chilling and standard drinks', () => {
        const said = words('bar');
        expect(said).toContain('Dry riesling 14 × 750 ml 1 of 12 and 2 loose 84');
        expect(said).toMatch(/\d\d:\d\d Dry riesling ice water 9 °C/);
        expect(said).toContain('Canada: 13.45 g of alcohol each.');
    });

    it('tell guests allergens in the words of their code', () => {
        expect(words('menu-card')).toContain('Dry riesling (drink). Contains sulphites.');
        const english = check(
            'a.cover',
            filesInMemory({
                'a.cover':
                    'event "Supper" { local code uk guests 2 } menu { course main "Pie" { contains sulphites, soy } course dessert "Tart" { } }',
            }),
        );
        const card = words('menu-card', sheets(english, { only: ['menu-card'] }));
        expect(card).toContain('Contains soybeans, sulphur dioxide and sulphites.');
        expect(card).toContain('Ask us what is in it.');
    });
});

/** The tables of a sheet that have these heads, as texts. */
function tablesOf({ sheet }: SheetFile, ...heads: readonly string[]): string[][][] {
    return sheet.blocks.flatMap((block) =>
        block.sort === 'table' && heads.every((head, index) => block.columns[index]?.head === head)
            ? [block.rows.map((row) => row.map(cellText))]
            : [],
    );
}

/** `1, 4 to 6` as numbers; `all` as all of them. */
const seatsIn = (words: string, all: readonly number[]): number[] =>
    words === 'all'
        ? [...all]
        : words.split(', ').flatMap((part) => {
              const [from, to = from] = part.split(' to ').map(Number) as [number, number?];
              return Array.from({ length: to - from + 1 }, (_, index) => from + index);
          });

describe('the plates on a server’s sheet', () => {
    const plans = [
        ...examplePlans().map(({ name, file, texts }) => ({ name, checked: check(file, filesInMemory(texts)) })),
        {
            name: 'dishes marked otherwise in each course',
            checked: check('a.cover', filesInMemory({ 'a.cover': MARKS })),
        },
    ].filter(({ checked: { service } }) => service.seats.guests.length > 0);

    it.each(plans)('of $name: each course of each seat stands in one line, with its own mark', ({ checked: plan }) => {
        const { seats, run } = plan.service;
        for (const file of sheets(plan, { only: ['server'] })) {
            const server = run?.tables.filter(
                ({ server: index }) => run.people[index]!.name.replaceAll(' ', '-') === file.name,
            );
            const tables = server?.map(({ name }) => name) ?? seats.tables.map(({ name }) => name);
            const seated = tables.filter((name) => seats.guests.some(({ table }) => table === name));
            const plates = tablesOf(file, 'Course', 'Plate', 'Mark', 'Seats');
            expect(plates.length).toBe(seated.length);
            for (const [index, name] of seated.entries()) {
                const guests = seats.guests.filter(({ table }) => table === name);
                const all = guests.map(({ seat }) => seat);
                const told = plates[index]!.flatMap(([course, , mark, where]) =>
                    seatsIn(where!, all).map((seat) => `${course}, ${seat}: ${mark}`),
                );
                const given = guests.flatMap(({ seat, markers, dishes, bread, breadMarker }) => [
                    ...(bread === undefined ? [] : [`Bread, ${seat}: ${breadMarker ?? 'none'}`]),
                    ...plan.plan.menu!.courses.flatMap(({ title }, course) =>
                        dishes[course] === undefined ? [] : [`${title}, ${seat}: ${markers[course] ?? 'none'}`],
                    ),
                ]);
                expect(told.toSorted(), `${file.name}, ${name}`).toEqual(given.toSorted());
            }
        }
    });

    it('say which dish bears the mark, and what is left off it', () => {
        const [file] = sheets(plans.at(-1)!.checked, { only: ['server'] });
        const [rows] = tablesOf(file!, 'Course', 'Plate', 'Mark', 'Seats');
        expect(rows).toContainEqual(['Main', 'Chicken', 'H 1', '1']);
        expect(rows).toContainEqual(['Main', 'Duck, without Port sauce', 'no egg 2', '3']);
        expect(rows).toContainEqual(['Starter', 'Leek', 'no egg 1', '3']);
        expect(words('server-1', [file!])).toContain(
            'Needs; the others told of none 1 halal 2 vegetarian 3 without egg',
        );
    });
});

/** Two dishes in two courses, each with its own gear, one with a drink of its own. */
const CHOICES = `event "Choices" {
    date 2026-10-17  zone America/Halifax  seated 19:00  guests 8 { 2 vegetarian }
}
house "Hall" { local code canada }
room "Gallery" 12 m by 9 m { table T1: round 66 inch, 8 seats }
team { captain 1  servers 1  plating-lines 1 at 12 plates per min }
menu {
    course appetizer "First" {
        lasts 12 min
        dish "Oysters, on ice" is oysters for the rest { served raw on oyster-plate at 4 °C  eaten with oyster-fork  contains molluscs }
        dish "Melon" is melon for 3 { served on dessert-plate at 8 °C  eaten with dessert-fork and dessert-knife  contains nothing }
    }
    course main "Main" {
        lasts 30 min
        dish "Duck" is poultry for the rest {
            served on dinner-plate at 60 °C  cook to 74 °C  contains nothing
            pour "Old red" 120 ml into red-wine-glass, is full-red-wine { contains sulphites strength 13 % }
        }
        dish "Pie" is vegetable-main for vegetarian { served on dinner-plate at 60 °C  contains wheat }
        pour "Salt white" 100 ml into white-wine-glass, is full-white-wine { contains sulphites strength 12 % }
    }
    coffee after main in coffee-cup with coffee-spoon { contains nothing }
}`;

describe('guests with other dishes', () => {
    const chosen = check('a.cover', filesInMemory({ 'a.cover': CHOICES }));
    const made = sheets(chosen);

    it('have their pieces told by the dish of the step, not by all that they eat', () => {
        const steps = tablesOf(
            made.find(({ name }) => name === 'server-1')!,
            'About',
            'What',
            'Bring',
        )[0]!;
        const first = steps.find(([, what]) => what === 'Serve First')!;
        expect(first[2]).toContain('oyster plate (Oysters, on ice)');
        expect(first[2]).toContain('dessert plate (Melon)');
        for (const [, what, brought] of steps) {
            const dishes = what!.includes('First') ? /Duck|Pie/ : what!.includes('Main') ? /Oysters|Melon/ : /never^/;
            expect(brought).not.toMatch(dishes);
        }
    });

    it('stand at the bar in lines of what they drink, not as one guest who eats it all', () => {
        expect(chosen.service.variations.length).toBe(3);
        expect(
            tablesOf(
                made.find(({ name }) => name === 'bar')!,
                'A guest who has',
            )[0],
        ).toEqual([
            ['Duck', 'Salt white 0.7 (Main), Old red 0.9 (Main)', '1.6'],
            ['Melon, Pie', 'Salt white 0.7 (Main)', '0.7'],
        ]);
        const lantern = tablesOf(
            all.find(({ name }) => name === 'bar')!,
            'A guest who has',
        )[0]!;
        expect(lantern.map(([who]) => who)).toEqual(['Any of the dishes']);
    });

    it('end with coffee served, whose cups are cleared later', () => {
        const { run } = chosen.service;
        expect(run!.courses.at(-1)!.cleared.last).toBeGreaterThan(run!.over + 1);
        expect(words('captain', made)).toMatch(/\d\d:\d\d courses cleared and coffee served/);
        expect(words('captain', made)).not.toContain('service over');
        expect(drawEvening(chosen)!.drawing).toMatch(/guests sit 19:00, courses cleared and coffee served/);
        const dry = check('a.cover', filesInMemory({ 'a.cover': CHOICES.replace(/coffee after.*/, '') }));
        expect(words('captain', sheets(dry))).toMatch(/\d\d:\d\d service over/);
    });
});

/** Poured and passed at the table, from what the menu says and from what is usual. */
const AT_TABLE = `event "At the table" {
    date 2026-10-17  zone America/Halifax  seated 12:00
    guests 16 { 2 vegetarian  1 without milk at T1 seat 3  1 without milk at T2 seat 1 }
}
room "Barn" 12 m by 9 m { table T1 to T2: round 66 inch, 8 seats }
team { captain 1  servers 2  plating-lines 1 at 12 plates per min }
menu {
    course soup "Tomato soup" {
        served in soup-bowl at 62 °C, portion 250 ml, poured at table
        lasts 12 min  contains celery  suits vegetarian
    }
    course main "Roast" {
        lasts 30 min
        dish "Pork" is roast-meat for the rest {
            served on dinner-plate at 60 °C  cook to 63 °C  contains pork
            sauce "Cream gravy" passed left off for guests without milk { contains milk }
            sauce "Jus" poured at table from soup-tureen { contains nothing }
        }
        dish "Pie" is vegetable-main for vegetarian { served on dinner-plate at 60 °C  contains wheat }
    }
    course dessert "Tart" {
        served on dessert-plate  lasts 15 min  contains wheat
    }
}`;

describe('what is poured and passed at the table', () => {
    const checked = check('a.cover', filesInMemory({ 'a.cover': AT_TABLE }));
    const made = sheets(checked);

    it('stands in the steps of the servers, with the seats it is not for', () => {
        const bring = (name: string, what: string): string =>
            tablesOf(
                made.find((sheet) => sheet.name === name)!,
                'About',
                'What',
                'Bring',
            )[0]!.find(([, title]) => title === what)![2]!;
        expect(bring('server-1', 'Serve Tomato soup')).toMatch(
            /soup bowl; pour Tomato soup from the soup tureen with soup ladle$/,
        );
        expect(bring('server-1', 'Serve Roast')).toMatch(
            /; pass Cream gravy in the sauce boat with sauce ladle, with Pork, not to T1 seat 3; pour Jus from the soup tureen with soup ladle, with Pork$/,
        );
        expect(bring('server-2', 'Serve Roast')).toContain('with Pork, not to T2 seat 1;');
        expect(bring('server-1', 'Serve Tart')).toBe('dessert plate');
    });

    it('stands on the captain’s page and the kitchen’s, in numbers', () => {
        expect(words('captain', made)).toContain(
            'At the table: pour Tomato soup from the soup tureen with soup ladle; pass Cream gravy in the sauce boat with sauce ladle, with Pork, not for 2 guests; pour Jus',
        );
        expect(words('kitchen', made)).toContain(
            'Tomato soup goes in the soup tureen, to be poured at the table; the soup bowl goes empty.',
        );
        expect(words('kitchen', made)).toContain(
            'Roast: Cream gravy goes apart, for Pork, in the sauce boat, to be passed at the table, not for 2 guests.',
        );
        expect(words('captain')).not.toContain('At the table:');
    });
});

/** Guests kept from a pour for each sort of reason, a pour for some alone, one of a dish. */
const POURS = `house "Hall" { local code canada }
event "Pours" {
    date 2026-10-17  zone America/Halifax  seated 19:00
    guests 16 {
        1 halal at T1 seat 1
        1 without sulphites at T1 seat 8
        1 without sulphites at T2 seat 2
        2 children at T1
    }
}
room "Gallery" 18 m by 11 m { table T1 to T2: round 66 inch, 8 seats }
team { captain 1  servers 2  plating-lines 1 at 12 plates per min }
menu {
    course appetizer "Starter" {
        served on salad-plate at 8 °C  lasts 12 min  contains nothing  suits halal
        pour "Marsh white" 100 ml into white-wine-glass at 9 °C, is light-white-wine, left off for children, left off for guests without sulphites {
            contains sulphites
            instead "Elder cordial" 250 ml, is cordial { contains nothing }
        }
        pour "Apple juice" 100 ml into juice-glass, is juice, for children { contains nothing }
    }
    course main "Main" {
        lasts 30 min
        dish "Chicken" is poultry for halal { served on dinner-plate at 60 °C  cook to 74 °C  contains nothing  suits halal }
        dish "Duck" is poultry for the rest {
            served on dinner-plate at 60 °C  cook to 74 °C  contains nothing
            pour "Old red" 100 ml into red-wine-glass, is full-red-wine, left off for children, left off for guests without sulphites { contains sulphites }
        }
    }
}`;

describe('who must not get a pour', () => {
    const checked = check('a.cover', filesInMemory({ 'a.cover': POURS }));
    const made = sheets(checked);
    const of = (name: string): SheetFile => made.find((sheet) => sheet.name === name)!;
    const pours = (name: string): string[][] => tablesOf(of(name), 'With', 'Drink')[0]!;
    const children = checked.service.seats.guests
        .filter(({ group }) => checked.service.groups[group]!.children)
        .map(({ seat }) => seat);

    it('stands on the server’s sheet by seat, with what they get', () => {
        const seats = `T1 seats ${children.join(', ')}`;
        expect(pours('server-1').map(([, drink, , kept]) => [drink, kept])).toEqual([
            ['Marsh white', `T1 seat 1 (H), T1 seat 8 (no sulphites), ${seats} (child): Elder cordial`],
            ['Apple juice', ''],
            ['Old red', `T1 seat 8 (no sulphites), ${seats} (child): nothing is planned in its place`],
        ]);
        expect(pours('server-2').map(([, drink, , kept]) => [drink, kept])).toEqual([
            ['Marsh white', 'T2 seat 2 (no sulphites): Elder cordial'],
            ['Apple juice', ''],
            ['Old red', 'T2 seat 2 (no sulphites): nothing is planned in its place'],
        ]);
        expect(pours('server-1')[1]![2]).toContain(`only for children (${seats})`);
        expect(pours('server-2')[1]![2]).toContain('only for children (none here)');
        expect(pours('server-1')[2]![2]).toContain('with Duck only');
    });

    it('stands at the bar in numbers that are those of the plan', () => {
        expect(pours('bar').map(([, drink, , kept]) => [drink, kept])).toEqual([
            ['Marsh white', '1 halal guest, 2 guests without sulphites, 2 children: Elder cordial'],
            ['Apple juice', ''],
            ['Old red', '2 guests without sulphites, 2 children: nothing is planned in its place'],
        ]);
        const cordial = checked.service.drinks.flatMap(({ uses }) => uses).find(({ insteadOf }) => insteadOf);
        expect(cordial!.keptFrom).toBe(5);
    });

    it('stands in the compiled plan, with the seats', () => {
        const { service } = planJson(checked) as {
            readonly service: { readonly drinksKeptFrom: readonly Record<string, unknown>[] };
        };
        expect(service.drinksKeptFrom).toContainEqual({
            ...{ drink: 'Marsh white', course: 'Starter', at: expect.stringMatching(/^a\.cover:16:/) as string },
            ...{ guests: 'without sulphites', count: 1, because: 'an allergen' },
            ...{ seats: [{ table: 'T1', seat: 8 }], get: 'Elder cordial' },
        });
        expect(service.drinksKeptFrom.filter(({ dish }) => dish === 'Duck').every(({ get }) => !get)).toBe(true);
    });

    it('is checked by two people where an allergen keeps them from it', () => {
        const checks = (name: string): (readonly string[])[] =>
            of(name).sheet.blocks.flatMap((block) =>
                block.sort === 'check' && block.text.includes(': no ') ? [[block.text, ...block.by]] : [],
            );
        const white = 'no sulphites · T1 seat 8 · Starter: no Marsh white, but Elder cordial';
        expect(checks('server-1')).toEqual([
            [white, 'bar', 'server 1'],
            ['no sulphites · T1 seat 8 · Main: no Old red', 'bar', 'server 1'],
        ]);
        expect(checks('bar').length).toBe(4);
        expect(checks('bar')).toContainEqual([white, 'bar', 'server 1']);
        expect(words('server-1', made)).toContain('Two people check each of these plates and glasses');
    });

    it('has no standard drinks at the bar for dishes that only they eat', () => {
        const rows = tablesOf(of('bar'), 'A guest who has')[0]!;
        expect(rows.map(([who]) => who)).toEqual(['Duck']);
        const { alcohol } = checked.service;
        const halal = alcohol.find(({ variation }) => variation.dishes.at(-1)!.title === 'Chicken');
        expect(halal!.grams).toBe(0);
    });
});

/** Coffee round the table: petits fours with milk, the milk itself for those who take it, and a liqueur in the cup. */
const COFFEE = `house "Hall" { local code canada }
event "Coffee" {
    date 2026-10-17  zone America/Halifax  seated 19:00
    guests 16 {
        1 without milk at T1 seat 3
        1 vegan at T1 seat 5
        1 halal at T2 seat 4
        1 children at T2 seat 6
        0 pescatarian
    }
}
room "Gallery" 18 m by 11 m { table T1 to T2: round 66 inch, 8 seats }
team { captain 1  servers 2  plating-lines 1 at 12 plates per min }
menu {
    course main "Main" {
        lasts 30 min
        dish "Chicken" is poultry { served on dinner-plate at 60 °C  cook to 74 °C  contains nothing  suits halal, vegan }
    }
    coffee after main, on request {
        contains alcohol
        garnish "Milk" left off for guests without milk { contains milk }
        garnish "Mints" { contains nothing }
        garnish "Shortbread" { contains milk, wheat }
    }
}`;

describe('who must not get coffee, or what is beside it', () => {
    const checked = check('a.cover', filesInMemory({ 'a.cover': COFFEE }));
    const made = sheets(checked);
    const of = (name: string): SheetFile => made.find((sheet) => sheet.name === name)!;
    const coffee = (name: string): readonly string[] =>
        tablesOf(of(name), 'With', 'Drink')[0]!.find(([, drink]) => drink === 'Coffee')!;

    it('stands on the server’s sheet by seat, with what they get it without', () => {
        expect(coffee('server-1')).toEqual([
            'After Main',
            'Coffee',
            'in coffee cup; on request; with Milk, Mints and Shortbread',
            'T1 seat 3 (DF), T1 seat 5 (VG): without Milk and Shortbread',
        ]);
        expect(coffee('server-2')[3]).toBe('T2 seat 4 (H), T2 seat 6 (child): no coffee');
    });

    it('is checked by two people where an allergen keeps them from it', () => {
        const checks = of('server-1').sheet.blocks.flatMap((block) =>
            block.sort === 'check' ? [[block.text, ...block.by]] : [],
        );
        expect(checks).toEqual([
            ['DF · T1 seat 3 · Chicken', 'pass', 'server 1'],
            ['DF · T1 seat 3 · Coffee: without Milk and Shortbread', 'bar', 'server 1'],
        ]);
        expect(words('server-1', made)).toContain('Two people check each of these plates and cups');
        expect(words('server-2', made)).not.toContain('Two people check');
    });

    it('stands in the compiled plan', () => {
        const { service } = planJson(checked, true) as {
            readonly service: { readonly drinksKeptFrom: readonly Record<string, unknown>[] };
        };
        const at = (seat: number, table = 'T1') => [{ table, seat }];
        expect(service.drinksKeptFrom.map(({ at: _, ...kept }) => kept)).toEqual([
            {
                ...{ drink: 'coffee', guests: 'without milk', count: 1, because: 'an allergen' },
                ...{ seats: at(3), without: ['Milk', 'Shortbread'] },
            },
            {
                ...{ drink: 'coffee', guests: 'vegan', count: 1, because: 'a diet or an age' },
                ...{ seats: at(5), without: ['Milk', 'Shortbread'] },
            },
            {
                ...{ drink: 'coffee', guests: 'halal', count: 1, because: 'a diet or an age' },
                seats: at(4, 'T2'),
            },
            {
                ...{ drink: 'coffee', guests: 'children', count: 1, because: 'a diet or an age' },
                seats: at(6, 'T2'),
            },
        ]);
    });
});

describe('guests of the list', () => {
    const listed = check('examples/saltmarsh-hall/table-of-eight.cover', workspace);
    const text = (names: boolean): string =>
        sheets(listed, { names })
            .map(({ html }) => html)
            .join('');

    it('are initials, and named where that is asked for', () => {
        expect(text(false)).not.toMatch(/Isolde|Marrow|Reedmace/);
        expect(text(false)).toContain('I. M.');
        expect(text(true)).toContain('Isolde Marrow');
        expect(text(true)).toContain('Agnes Reedmace');
    });

    it('have cards that say nothing of what they need', () => {
        const cards = words('place-cards', sheets(listed, { names: true }));
        expect(cards).toContain('Tobias Fenn Table K, seat 2');
        expect(cards).not.toMatch(/vegetarian|milk/);
    });
});

describe('an evening that runs late', () => {
    it('gets one card with the calls that are left', () => {
        const late = whatIf(checked, { underway: { minutes: 20 * 60 + 15, done: 'soup' } });
        if (typeof late === 'string') {
            throw new Error(late);
        }
        const [card, ...more] = sheets(late.checked);
        expect(more).toEqual([]);
        expect(card!.name).toBe('running-late');
        const said = words('running-late', [card!]);
        expect(said).toContain('As of 20:15, Roast squash soup cleared.');
        expect(said).not.toContain('Smoked beet');
        const [, first] = /Quince sorbet (\d\d:\d\d)/.exec(said)!;
        expect(first! >= '20:15').toBe(true);
        expect(said).toContain('GF: T8 seat 8 (server 6)');
    });
});

describe('a supper at the turn of the year, written in °F', () => {
    const NEW_YEAR = `event "New Year" {
    date 2026-12-31  zone America/Halifax  local code canada  seated 20:30
    guests 8
}
room "Gallery" 12 m by 9 m { table T1: round 66 inch, 8 seats }
team { captain 1  servers 1  plating-lines 1 at 12 plates per min }
menu {
    course main "Fillet" is steak {
        lasts 30 min
        served on dinner-plate warmed to 145 °F at 135 °F
        cook to 145 °F
        contains beef, milk, cream
    }
    course dessert "Pears" {
        served on dessert-plate at 46 °F
        lasts 20 min
        contains nothing
        pour "Fizz" 4 fl oz into sparkling-flute at 43 °F, is sparkling-wine { contains sulphites, wine }
    }
    coffee after dessert in coffee-cup { contains nothing }
    toast "Midnight" at 00:00, with "Fizz"
}`;
    const pages = sheets(check('year.cover', filesInMemory({ 'year.cover': NEW_YEAR })));

    it('has every figure in °F, and the limits of the code as it writes them too', () => {
        expect(words('bar', pages)).toMatch(/Fizz fridge 43 °F/);
        const kitchen = words('kitchen', pages);
        expect(kitchen).toContain('Hot food is held at 60 °C (140 °F) or more.');
        // Rounded to the safe side: 4 °C is 39.2 °F.
        expect(kitchen).toContain('Cold food is held at 4 °C (39 °F) or less.');
        expect(kitchen).toContain('Wanted Time °F By');
        expect(kitchen).toContain('Fillet: held hot 140 °F or more');
        expect(kitchen).toMatch(/dinner plate, Fillet 145 °F/);
        expect(pages.map(({ name }) => words(name, pages)).join(' ')).not.toMatch(/wanted at \d+ °C/);
    });

    it('tells servers of the toast that only has an hour, and fills the glasses for it', () => {
        expect(words('server-1', pages)).toMatch(
            /Serve coffee .*00:00 Midnight Fizz in every glass by then Guests leave/,
        );
    });

    it('tells guests of an allergen once, with what carries it', () => {
        const card = words('menu-card', pages);
        expect(card).toContain('Contains milk (cream)');
        expect(card).toContain('Contains sulphites (wine).');
    });
});

describe('a plan with little or much in it', () => {
    const made = (text: string): readonly SheetFile[] => sheets(check('a.cover', filesInMemory({ 'a.cover': text })));

    it('gives what it has something for', () => {
        expect(made('event "Supper" { }').map(({ name }) => name)).toEqual(['captain', 'server', 'kitchen', 'steward']);
        expect(sheets(checked, { only: ['bar', 'captain'] }).map(({ name }) => name)).toEqual(['captain', 'bar']);
        expect(SHEET_NAMES.length).toBe(10);
    });

    it('lets no name end the page or its style', () => {
        const [captain] = made('event "A </style><script>alert(1)</script> \\"supper\\"" { guests 2 }');
        expect(captain!.html).not.toContain('<script');
        expect(captain!.html.match(/<\/style>/g)?.length).toBe(1);
    });

    it('says on every sheet that something is wrong', () => {
        const wrong = made(
            'event "Supper" { guests 2 { 1 without milk } } menu { course soup "Leek" { contains milk } }',
        );
        expect(wrong.length).toBeGreaterThan(4);
        for (const { html } of wrong) {
            expect(html).toContain('Draft, not for service: 1 error in the plan.');
        }
    });
});

it('names the day of the week', () => {
    expect(dayInWords('2026-10-17')).toBe('Saturday 17 October 2026');
    expect(dayInWords('2000-02-29')).toBe('Tuesday 29 February 2000');
});
