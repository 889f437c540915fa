import { describe, expect, it } from 'vitest';
import { CLIENT, openPlan } from '../../../../tests/support/open-plan.js';
import { filesBelow } from '../../../../tests/support/samples.js';
import { CompletionItemKind, type TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { check } from '../check.js';
import { filesInMemory } from '../plan/files.js';
import { BLOCK_SNIPPETS } from './block-snippets.js';
import { parsePlainly } from '../grammar/plain-parser.js';
import { readText } from '../plan/read-text.js';
import { completionAt, MOST_PROPOSALS } from './completion.js';
import { cursorAt } from './cursor.js';
import { wordsOf } from './page.js';
import { createCoverServices } from './services.js';
import { Words } from './words.js';

const services = createCoverServices();
const words = new Words(services.cover);

const complete = (written: string) => {
    const plan = openPlan(written);
    return completionAt(plan, plan.offset, services, words);
};
const labels = (written: string) => complete(written).items.map(({ label }) => label);
const GUESTS = ['guests with a diet', 'guests without an allergen', 'children, how many'];
/** The text once a proposal is taken. */
const accepted = (written: string, label: string) => {
    const plan = openPlan(written);
    const { items } = completionAt(plan, plan.offset, services, words);
    const edit = items.find((item) => item.label === label)!.textEdit as TextEdit;
    return TextDocument.applyEdits(plan.folder.documentOf(plan.path)!, [edit]);
};
const inserted = (written: string) => complete(written).items.map(({ textEdit }) => textEdit!.newText);

describe('completion', () => {
    it('offers the words that start a file, a block, a clause', () => {
        expect(labels('<|>')).toEqual(expect.arrayContaining(['use', 'event', 'menu', 'house', 'room', 'team']));
        expect(labels('menu { <|> }')).toEqual(expect.arrayContaining(['course', 'bread', 'coffee after', 'water']));
        expect(labels('menu { course soup { <|> } }')).toEqual(
            expect.arrayContaining(['served', 'eaten with', 'leaves the pass at', 'lasts']),
        );
        expect(labels('menu { course soup { <|> } }')).not.toContain('date');
    });

    it('knows what follows where a name is still to come', () => {
        const menu = (clause: string) => `menu {
    ${clause}<|>
    course appetizer "Beet" { served on salad-plate }
    course main "Duck" { served on dinner-plate }
}`;
        expect(labels(menu('bread from '))).toEqual(expect.arrayContaining(['appetizer', 'main']));
        expect(labels(menu('bread from appetizer until main on '))[0]).toBe('bread-plate');
        expect(labels(menu('bread from appetizer until main on bread-plate with '))[0]).toBe('butter-spreader');
        expect(labels(menu('coffee after '))).toEqual(expect.arrayContaining(['appetizer', 'main']));
    });

    it('offers blocks to fill in, to clients that take them, where their word may stand', () => {
        const blocks = (written: string) => {
            const plan = openPlan(written);
            const { items } = completionAt(plan, plan.offset, services, words, CLIENT);
            return items.filter(({ kind }) => kind === CompletionItemKind.Snippet).map(({ label }) => label);
        };
        expect(blocks('<|>')).toEqual([
            'event, a new one',
            'menu, of courses',
            'room, with tables',
            'team, by role',
            'house, what it owns',
        ]);
        expect(blocks('ro<|>')).toEqual(['room, with tables']);
        // Here it would be the name of a moment.
        expect(blocks('menu { course soup { eaten with soup-spoon brought with the <|> } }')).toEqual([]);
        expect(blocks('menu { course soup { served in soup-bowl, poured at <|> } }')).toEqual([]);
        expect(blocks('event "S" { guests 9 { <|> } }')).toEqual(GUESTS);
        expect(blocks('event "S" { guests 9 {\n2 vegan\n<|> } }')).toEqual(GUESTS);
        expect(blocks('event "S" { guests 9 { chi<|> } }')).toEqual(['children, how many']);
        for (const row of ['2', '2 ', '2 chi', '2 vegan ', '2 without peanut chi']) {
            expect(blocks(`event "S" { guests 9 { ${row}<|> } }`)).toEqual([]);
        }
        expect(blocks('menu { <|> }')).toEqual(['course, one dish', 'course, several dishes', 'waive, with a reason']);
        expect(blocks('menu { cour<|> }')).toHaveLength(2);
        expect(blocks('menu { course main { <|> } }')).toEqual([
            'dish, for some',
            'pour, with a choice',
            'waive, with a reason',
        ]);
        expect(blocks('room "R" 8 m by 6 m { <|> }')).toEqual(['table, a range']);
        expect(blocks('menu { course main { lasts 15<|> } }')).toEqual([]);
        expect(blocks('event "S" { <|> }')).toEqual(['waive, with a reason']);
        expect(labels('menu { <|> }')).not.toContain('course, one dish');
    });

    it('puts each block to fill in behind the word that it begins with', () => {
        const plan = openPlan('<|>');
        const { items } = completionAt(plan, plan.offset, services, words, CLIENT);
        const shown = [...items].sort((a, b) => (a.sortText! < b.sortText! ? -1 : 1)).map(({ label }) => label);
        for (const { word, label } of BLOCK_SNIPPETS.filter((each) => shown.includes(each.label))) {
            expect(shown[shown.indexOf(label) - 1]).toBe(word);
        }
    });

    it('finds a name by another word for it, once that is begun', () => {
        const contains = (begun: string) => `menu { course soup { contains milk, ${begun}<|> } }`;
        const [shrimp] = complete(contains('shri')).items.filter(({ label }) => label === 'shrimp');
        expect(shrimp).toMatchObject({ detail: 'called prawn here', filterText: 'shrimp' });
        expect(accepted(contains('shri'), 'shrimp')).toBe(contains('prawn').replace('<|>', ''));
        expect(labels('event "S" { guests 9 { 2 coel<|> } }')).toEqual(['coeliac', 'coeliac-disease']);
        expect(accepted('event "S" { guests 9 { 2 coel<|> } }', 'coeliac')).toContain('2 gluten-free');
        // Before the first letter it is not yet there, and the client asks again.
        expect(labels(contains(''))).not.toContain('shrimp');
        expect(complete(contains('')).isIncomplete).toBe(true);
    });

    it('offers no other word where the house has a thing of that name', () => {
        const written = 'plate charger { across 300 mm }\nhouse "Hall" { own 4 char<|> }';
        expect(complete(written).items.filter(({ label }) => label === 'charger')).toHaveLength(1);
        expect(accepted(written, 'charger')).toContain('own 4 charger');
    });

    it('says nothing beside a name that is the name over again', () => {
        const { items } = complete('event "S" { guests 9 { 2 <|> } }');
        const detailOf = (name: string) => items.find(({ label }) => label === name)!.detail;
        expect(detailOf('vegetarian')).toBeUndefined();
        expect(detailOf('gluten-free')).toBeUndefined();
    });

    it.each(BLOCK_SNIPPETS.map(({ label, word, figureOf, body }) => [label, word ?? figureOf, body] as const))(
        'reads the block "%s" as it stands',
        (_, begins, body) => {
            const written = body
                .replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, '$1')
                .replace(/\$\{\d+:([^}]*)\}/g, '$1')
                .replace('$2', '4 fl oz')
                .replace('$0', '');
            const around: Record<string, readonly [string, string]> = {
                course: ['menu {', '}'],
                dish: ['menu { course main {', '} }'],
                pour: ['menu { course main {', '} }'],
                table: ['room "R" 18 m by 11 m {', '}'],
                waive: ['menu {', '}'],
                GuestRow: ['event "S" { guests 9 {', '} }'],
            };
            const [before, after] = around[begins] ?? ['', ''];
            const text = `${before}\n${written}\n${after}\n`;
            const reading = readText('plan.cover', text);
            expect(reading.syntax).toEqual([]);
            expect([...reading.written, ...reading.unitProblems, ...reading.misspelt]).toEqual([]);
            const { findings } = check('plan.cover', filesInMemory({ 'plan.cover': text }));
            expect(findings.filter(({ rule }) => rule === 'unknown-name')).toEqual([]);
        },
    );

    it('goes on past a mistake further up', () => {
        const wrong = `menu {
    course soup "Broth" {
        eaten with soup-spoon to 42 °C
        cour
        lasts 15<|>
    }
}`;
        expect(labels(wrong)[0]).toBe('min');
        expect(labels(wrong.replace('lasts 15', ''))).toEqual(expect.arrayContaining(['served', 'lasts']));
        expect(labels(wrong.replace('lasts 15', 'eaten with '))[0]).toMatch(/spoon$/);
        expect(labels('menu { course soup { eaten to   contains <|> } }')).toContain('milk');
    });

    it('takes what is typed into account, in the middle of a name too', () => {
        expect(labels('menu { cou<|> }')).toContain('course');
        expect(labels('menu { cou<|> }')).not.toContain('bread');
        expect(labels('house "Hall" { own 4 xyz<|> }')).toEqual([]);
        expect(labels('house "Hall" { own 4 fork<|> }')).toEqual(expect.arrayContaining(['salad-fork', 'dinner-fork']));
    });

    it('puts the pieces that suit the dish first, and pieces of other sorts last', () => {
        const soup = labels('menu { course clear-soup "Broth" { eaten with <|> } }');
        expect(soup[0]).toMatch(/spoon$/);
        expect(soup.indexOf('bouillon-spoon')).toBeLessThan(soup.indexOf('dinner-fork'));
        expect(labels('menu { course main { dish "Sirloin" is steak { eaten with <|> } } }')[0]).toMatch(/knife|fork/);
        const vessels = labels('menu { course soup { served in <|> } }');
        expect(vessels.slice(0, 3)).toContain('soup-bowl');
        const glasses = labels('menu { course soup { pour "Sherry" 2 fl oz into <|> } }');
        expect(glasses).toContain('sherry-glass');
        expect(glasses[0]).toMatch(/glass|flute|coupe|tumbler|snifter|goblet/);
    });

    it('knows names of every sort by what stands before', () => {
        expect(labels('menu { course soup { contains <|> } }')).toEqual(expect.arrayContaining(['milk', 'gluten']));
        expect(labels('event "Supper" { guests 8 { 2 <|> } }')).toEqual(
            expect.arrayContaining(['vegetarian', 'without']),
        );
        expect(labels('event "Supper" { guests 8 { 2 without <|> } }')).toContain('tree-nuts');
        expect(labels('house "Hall" { laying { <|> } }')).toEqual(expect.arrayContaining(['limit', 'overflow']));
        expect(labels('house "Hall" { laying { overflow: <|> } }')).toEqual(
            expect.arrayContaining(['reported', 'brought']),
        );
        expect(labels('house "Hall" { local code <|> }')).toContain('us-model');
        expect(labels('house "Hall" { rule three<|> is off }')).toContain('three-per-side');
        expect(labels('menu { course soup { waive <|> } }').length).toBe(MOST_PROPOSALS);
        expect(labels('team { <|> }')).toEqual(expect.arrayContaining(['captain', 'servers']));
        expect(labels('room "R" { table T1: <|> 60 inch }')).toContain('round');
        expect(labels('kind clear-broth is <|>')).toContain('soup');
        expect(labels('menu { course main { pour "Red" is <|> } }')).toEqual(expect.arrayContaining(['red-wine']));
        expect(labels('menu { course main { dish "A" for <|> { } } }')).toEqual(
            expect.arrayContaining(['the rest', 'everyone', 'vegetarian']),
        );
    });

    it('knows the courses of the menu, tables of the room and dishes of the plan', () => {
        const menu = 'course soup "Broth" { }  course main { dish "Sirloin" { } }';
        expect(labels(`menu { ${menu} bread until <|> }`)).toEqual(expect.arrayContaining(['soup', 'main']));
        const plan = `room "R" { table T1 to T3: round 60 inch }\nmenu { ${menu} }\n`;
        expect(labels(`${plan}seating { "A. Reed" at <|> }`)).toEqual(expect.arrayContaining(['T1', 'T3']));
        expect(inserted(`${plan}seating { "A. Reed" chooses <|> }`)).toContain('"Sirloin"');
        expect(inserted(`${plan}seating { "A. Reed" chooses "<|> }`)).toContain('Sirloin');
    });

    it('offers units after a figure, the likely first, with a blank before', () => {
        expect(inserted('menu { course soup { served in soup-bowl at 64<|> } }').slice(0, 2)).toEqual([' °C', ' °F']);
        expect(inserted('menu { course soup { served in soup-bowl at 64 <|> } }').slice(0, 2)).toEqual(['°C', '°F']);
        expect(inserted('menu { course soup { lasts 15<|> } }')).toEqual([' min', ' h', ' s']);
        expect(inserted('menu { course soup { lasts 15 m<|> } }')[0]).toBe('min');
        expect(inserted('menu { course soup { lasts 15m<|> } }')[0]).toBe(' min');
        expect(inserted('house "H" { spare 5<|> }')).toEqual([' %']);
        expect(inserted('fork big-fork { length 165<|> }')[0]).toBe(' mm');
        expect(inserted('glass big-glass { holds 165<|> }')[0]).toBe(' ml');
        expect(inserted('glass big-glass { widest 40<|> }')).toEqual([' %']);
        expect(inserted('code harbour { reheating 74<|> }')[0]).toBe(' °C');
        expect(inserted('code harbour { reheating-time 2<|> }')[0]).toBe(' min');
        expect(inserted('house "H" { laying { edge: 1<|> } }')).toContain(' inch');
    });

    it('offers the likely figure with its unit where one is wanted', () => {
        const figures = (written: string) =>
            complete(written)
                .items.filter(({ kind }) => kind === CompletionItemKind.Value)
                .map(({ label, detail }) => `${label}: ${detail}`);
        const chicken = (clause: string, more = '') =>
            figures(`${more}menu { course main { dish "Chicken" is poultry { ${clause} <|> } } }`);
        expect(chicken('cook to')).toEqual(['74 °C: usual for poultry; a thermometer and the local code decide']);
        expect(chicken('held at')).toEqual([expect.stringMatching(/^\d+ °[CF]: the least under us-model$/)]);
        expect(chicken('served on dinner-plate at')[0]).toMatch(/^\d+ °C: usual for poultry: \d+ °C \(\d+ °F\) to /);
        expect(chicken('served on dinner-plate warmed to')).toEqual(['60 °C: the house’s custom `warmed-to`']);
        expect(figures('menu { course main { lasts <|> } }')).toEqual([
            expect.stringMatching(/^\d+ min: the house’s custom `eating-time`$/),
        ]);
        expect(figures('menu { course soup { served in soup-bowl, portion <|> } }')[0]).toMatch(
            /^\d+.*: usual for soup$/,
        );
        expect(figures('menu { course main { pour "Red", is full-red-wine, at <|> } }')[0]).toMatch(
            /^\d+ °C: usual for full-red-wine/,
        );
        expect(figures('house "H" { laying { edge: <|> } }')).toEqual(['25.4 mm: the default']);
        expect(inserted('menu { course main { dish "Chicken" is poultry { cook to <|> } } }')).toContain('74 °C');
        // In Fahrenheit where the plan is.
        expect(figures('menu { course soup "A" { served at 150 °F }  course soup "B" { served at <|> } }')[0]).toMatch(
            /^\d+ °F/,
        );
        // A course of one dish is of that dish's kind; a unit that stands there already is not written twice.
        expect(figures('menu { course main "Chicken" is poultry { cook to <|> } }')).toEqual(chicken('cook to'));
        expect(accepted('menu { course main "Chicken" is poultry { cook to <|> °C } }', '74 °C')).toBe(
            'menu { course main "Chicken" is poultry { cook to 74 °C } }',
        );
        expect(accepted('menu { course main { lasts 20 <|> min } }', 'min')).toBe(
            'menu { course main { lasts 20 min } }',
        );
        expect(figures('event "S" { guests <|> }')).toEqual([]);
        expect(figures('menu { course main { cook to 7<|> } }')).toEqual([]);
    });

    it('knows the dish of a menu that stands in a file of its own, and takes no other for it', () => {
        const used = (file: string) => `//- event.cover
use "part.cover"
event "S" { guests 8 }
menu { course main "Duck" is poultry { served on dinner-plate  eaten with dinner-fork and dinner-knife } }
//- part.cover
${file}`;
        const menu = (clause: string) => `//- event.cover
use "part.cover"
event "S" { guests 8 }
//- part.cover
menu { course soup "Leek" { ${clause} } }`;
        expect(labels(menu('eaten with <|>'))[0]).toBe('soup-spoon');
        expect(labels(menu('served in soup-bowl at <|>'))[0]).toMatch(/°C$/);
        const kind = complete(used(`${'// A pudding.\n'.repeat(8)}kind trifle is cold-dessert { eaten with <|> }`));
        expect(kind.items.filter(({ detail }) => detail?.includes('for main'))).toEqual([]);
    });

    it('offers what a custom may be, as it is written', () => {
        const custom = (name: string) => labels(`house "H" { laying { ${name}: <|> } }`);
        expect(custom('dessert')).toEqual(['above', 'brought', 'laid']);
        expect(custom('serve-from').toSorted()).toEqual(['left', 'right']);
        expect(inserted('house "H" { laying { dessert: ab<|> } }')).toEqual(['above']);
        expect(inserted('bowl x { hol<|> }')).toEqual(['holds']);
    });

    it('offers the seats of a table whose name has a space', () => {
        const seats = (table: string) =>
            labels(`room "R" { table ${table}: round 60 inch, 4 seats }\nseating { "A. Reed" at ${table} seat <|> }`);
        expect(seats('"Head 5"')).toEqual(seats('T1'));
        expect(seats('T1')).toHaveLength(4);
    });

    it('offers what the heat model asks of bowl and pass', () => {
        const soup = (clauses: string) => `event "S" { seated 19:00 guests 8 }
room "R" 8 m by 6 m { table T1: round 60 inch, 8 seats }
team { servers 1 }
menu { course soup "Leek" { ${clauses} } }`;
        const first = (written: string) => complete(written).items[0]!;
        const pass = first(soup('served in soup-plate at 64 °C, portion 250 ml  leaves the pass at <|>'));
        expect(pass.detail).toBe('computed: as hot as the last guest needs it');
        const bowl = first(
            soup('served in soup-plate warmed to <|> at 64 °C, portion 250 ml  leaves the pass at 75 °C'),
        );
        expect(bowl.label).toMatch(/^\d+ °C$/);
    });

    it('says how warm a vessel is wanted, beside its name', () => {
        const details = (course: string) =>
            complete(`menu { course ${course} { served in <|> } }`).items.map(
                ({ label, detail }) => `${label}: ${detail}`,
            );
        expect(details('soup').find((each) => each.startsWith('soup-bowl:'))).toMatch(
            /for soup, warm to 60 °C \(140 °F\)$/,
        );
        expect(details('intermezzo').some((each) => each.includes('chill to 5 °C'))).toBe(true);
    });

    it('tells in each row a size, a figure or a source, to clients that have room for it', () => {
        const house = 'house "Hall" { own 48 soup-bowl   laying { warmed-to: 58 °C } }\n';
        const rows = (written: string, client = CLIENT) => {
            const plan = openPlan(house + written);
            const { items } = completionAt(plan, plan.offset, services, words, client);
            return Object.fromEntries(items.map(({ label, labelDetails }) => [label, labelDetails?.description]));
        };
        const served = 'menu { course soup { served in <|> } }';
        expect(rows(served)['soup-bowl']).toMatch(/^\d+ ml, for soup, 48 owned$/);
        expect(rows(served, { ...CLIENT, takesRows: false })['soup-bowl']).toBeUndefined();
        expect(rows('menu { course <|> }').soup).toMatch(/^\d+ to \d+ °C, /);
        const { vegan } = rows('event "S" { guests 8 { 2 <|> } }');
        expect(vegan).toBeUndefined();
        expect(rows('menu { course main { dish "A" is poultry { cook to <|> } } }')).toEqual({
            '74 °C': 'usual for poultry',
        });
        expect(rows('house "Inn" { laying { warmed<|> } }')).toMatchObject({ 'warmed-to': '58 °C' });
        expect(rows('menu { waive hot-soup<|> }')).toMatchObject({
            'hot-soup-cold-bowl': 'Hot soup in a bowl that is not warmed',
        });
    });

    it('offers what guests keep, what is usual, and the seats that are free', () => {
        const guests = 'event "S" { guests 8 { 2 vegan } }\n';
        expect(labels(`${guests}menu { course main { dish "A" is grain-main { suits <|> } } }`)[0]).toBe('vegan');
        const egg = complete('menu { course main { dish "A" is bread { contains <|> } } }').items[0]!;
        expect(egg.detail).toMatch(/usual in bread/);
        const ofTitle = (rest: string, behind = '') =>
            complete(`menu { course main { dish "Baked cod in walnut crumb" ${rest}<|>${behind} } }`);
        const contains = ofTitle('{ contains ').items.slice(0, 2);
        expect(contains.map(({ label }) => label).toSorted()).toEqual(['cod', 'walnut']);
        expect(contains.map(({ detail }) => detail)).toEqual([
            expect.stringContaining('in the title'),
            expect.stringContaining('in the title'),
        ]);
        expect(ofTitle('is ', ' {}').items[0]!.label).toBe('fish');
        const seated =
            'room "R" { table T1: round 60 inch, 8 seats }\nseating { "A. Reed" at T1 seat 1  "B. Sedge" at T1 seat <|> }';
        const seats = complete(seated).items;
        expect(seats.map(({ label }) => label)).toEqual(['2', '3', '4', '5', '6', '7', '8', '1']);
        expect(seats.at(-1)!.detail).toBe('A. Reed sits there');
        expect(
            labels('room "R" { table T1: round 60 inch, 8 seats }\nevent "S" { guests 8 { 1 vegan at T1 seat <|> } }'),
        ).toContain('3');
    });

    it('glues nothing to a digit and says nothing where a number is still typed', () => {
        expect(labels('event "Supper" { guests 8<|> }')).toEqual([]);
        expect(labels('event "Supper" { guests 8 <|> }')).toEqual(expect.arrayContaining(['guaranteed', 'set for']));
        expect(labels('menu { course soup { cook 3<|> extra } }')).not.toContain('extra');
    });

    it('says nothing in comments and texts of the writer', () => {
        expect(labels('// course <|>')).toEqual([]);
        expect(labels('menu { /* <|> */ }')).toEqual([]);
        expect(labels('event "Sup<|>" { }')).toEqual([]);
    });

    it('offers the files of the folder after `use`', () => {
        expect(labels('//- hall/house.cover\nhouse "Hall" { }\n//- hall/events/supper.cover\nuse "<|>"\n')).toEqual([
            '../house.cover',
        ]);
        expect(labels('//- house.cover\nhouse "Hall" { }\n//- supper.cover\nuse "ho<|>"\n')).toEqual(['house.cover']);
    });

    it('puts quotes around a name that is a word of the language', () => {
        const plan = 'bowl "course" { for soup }\nmenu { course soup { served in cours<|> } }';
        expect(inserted(plan)).toContain('"course"');
    });
});

// Over the examples: wherever a word begins, it is among the proposals, and no proposal breaks the text before it.
const examples = Object.entries(filesBelow('examples/saltmarsh-hall')).filter(([path]) => path.endsWith('.cover'));

describe.each(examples)('completion in %s', (path, text) => {
    const around = examples.filter(([other]) => other !== path).map(([name, other]) => `//- ${name}\n${other}`);
    const plan = openPlan(`${around.join('')}//- ${path}\n${text}<|>`);
    const starts = wordsOf(text).filter(({ sort }) => sort === 'word');

    it('offers every next word', () => {
        const { occurrences } = readText(path, text);
        const startsOf = (role: string) =>
            new Set(occurrences.filter((each) => each.role === role).map((each) => each.origin.start));
        const [declared, used] = [startsOf('declares'), startsOf('uses')];
        const missed: string[] = [];
        for (const { start, end } of starts) {
            const word = text.slice(start, end).replace(/:$/, '');
            const isFree = (declared.has(start) && !used.has(start)) || isMadeUp(text, start);
            if (!/^\p{L}/u.test(word) || isFree) {
                continue;
            }
            const { items } = completionAt(plan, start + Math.min(2, word.length - 1), services, words);
            // A phrase may hold several of the words.
            if (!items.some(({ label }) => label.split(' ').includes(word)) && !isHidden(text, start)) {
                missed.push(`${text.slice(text.lastIndexOf('\n', start) + 1, start)}|${word}`);
            }
        }
        expect(missed).toEqual([]);
    });

    it('offers nothing that breaks the text before it', () => {
        const broken: string[] = [];
        for (const { start } of starts.filter((_, index) => index % 31 === 0)) {
            const before = text.slice(0, start);
            const { openBlocks } = cursorAt(text, start);
            for (const { textEdit } of completionAt(plan, start, services, words).items) {
                const whole = `${before}${textEdit!.newText}`;
                if (!goesOn(whole, openBlocks)) {
                    broken.push(`${before.slice(-90)}|${textEdit!.newText}`);
                }
            }
        }
        expect(broken).toEqual([]);
    });
});

/** Whether a text can be read to its end, closed or gone on with in one of the ways a clause goes on. */
function goesOn(text: string, openBlocks: number): boolean {
    const close = ' }'.repeat(openBlocks);
    const inside = close.slice(2);
    const ways = [
        '',
        ' x',
        ' 1',
        ' "x"',
        ' 1 mm',
        ' 1 mm { }',
        ' x: 1 mm',
        ': 1 mm',
        ' 1 per h',
        ' x { }',
        ' "x" { }',
        ' { }',
        ' kind x',
    ];
    return (
        ways.some((way) => parsePlainly(`${text}${way}${close}`) !== undefined) ||
        ways.some((way) => parsePlainly(`${text}${way} }${inside}`) !== undefined) ||
        readText('x', `${text}${close}`).syntax.every(({ origin }) => origin.start >= text.length)
    );
}

/** `polish` may be a name, so the parser reads `polish 6 pieces` as two figures until a unit of time has come. */
function isHidden(text: string, start: number): boolean {
    return text.slice(0, start).endsWith('polish 6 pieces ');
}

/** Words that a writer makes up: zones, letters of tables, what a rate counts. */
function isMadeUp(text: string, start: number): boolean {
    const line = text.slice(text.lastIndexOf('\n', start) + 1, start);
    return (
        /\b(zone|table|to|zones)\s+$/.test(line) ||
        (/\d\s+$/.test(line) && /\bper\b/.test(text.slice(start, text.indexOf('\n', start))))
    );
}
