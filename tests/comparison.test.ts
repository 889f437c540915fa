/** What changed for the people of an evening: the same words whether the texts differ or the figures are changed in memory. */
import { readFileSync, readdirSync } from 'node:fs';
import {
    check,
    compare,
    filesInMemory,
    restOfEvening,
    tellChanges,
    whatIf,
    type Change,
    type Checked,
} from 'underliner-language';
import { describe, expect, it } from 'vitest';

const folder = new URL('../examples/saltmarsh-hall/', import.meta.url);
const texts = Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => {
            const path = `${entry.parentPath}/${entry.name}`.replace(folder.pathname, '').replace(/^\//, '');
            return [path, readFileSync(new URL(path, folder), 'utf8')];
        }),
);

function supper(mend: (text: string) => string = (text) => text): Checked {
    const name = 'lantern-supper.cover';
    return check(name, filesInMemory({ ...texts, [name]: mend(texts[name]!) }));
}

const about = (changes: readonly Change[], subject: string) =>
    changes.filter((change) => change.subject === subject).map(({ text }) => text);

describe('seven guests more', () => {
    const before = supper();
    const after = supper((text) =>
        text.replace('guests 84 guaranteed 80 set for 88', 'guests 91 guaranteed 80 set for 95'),
    );
    const changes = compare(before, after);

    it('are told as covers, portions, pieces and bottles', () => {
        expect(about(changes, 'guests').slice(0, 2)).toEqual([
            '7 more covers, 91 in all',
            '7 more places set, 95 in all',
        ]);
        expect(about(changes, 'menu')).toContain('7 more of `Roast squash soup`, 91 to cook');
        expect(about(changes, 'pieces')).toContain('7 more soup spoons to pull, 96 in all, none left over');
        expect(about(changes, 'drinks')).toContain(
            '`Dry riesling`: 16 bottles of 750 ml instead of 14 bottles of 750 ml',
        );
    });

    it('need more water, people earlier, and move guests who were dealt a seat', () => {
        expect(about(changes, 'drinks')).toEqual(
            expect.arrayContaining([
                expect.stringMatching(
                    /^still water: \d+ jug fillings of 1000 ml instead of \d+ jug fillings of 1000 ml$/,
                ),
                expect.stringMatching(/^sparkling water: \d+ bottles of 750 ml instead of \d+ bottles of 750 ml$/),
            ]),
        );
        expect(about(changes, 'tasks')).toContainEqual(
            expect.stringMatching(/^the first server is called in \d+ min earlier, at 15:\d\d$/),
        );
        const withoutGluten = ({ service }: Checked): string[] =>
            service.seats.guests
                .filter(({ group }) => service.groups[group]!.label === 'without gluten')
                .map(({ table, seat }) => `${table} seat ${seat}`);
        expect(withoutGluten(after)).not.toEqual(withoutGluten(before));
        expect(about(changes, 'guests')).toContain(
            `guests without gluten: at ${withoutGluten(after).join(' and ')} now, not at ${withoutGluten(before).join(' and ')}`,
        );
    });

    it('bring the findings they bring, and take none away', () => {
        const found = about(changes, 'findings');
        expect(found.some((text) => text.startsWith('new warning, seats-short'))).toBe(true);
        expect(found.filter((text) => text.startsWith('gone'))).toEqual([]);
    });

    it('read the other way round as seven fewer', () => {
        expect(about(compare(after, before), 'guests')[0]).toBe('7 fewer covers, 84 in all');
        expect(compare(after, before)).toHaveLength(changes.length);
    });

    it('are the same changed in memory', () => {
        const answer = whatIf(before, { guests: 91, setFor: 95 });
        expect(typeof answer !== 'string' && answer.changes.map(({ text }) => text)).toEqual(
            changes.map(({ text }) => text),
        );
    });
});

describe('a comparison', () => {
    it('of a plan with itself finds nothing, also where only the layout differs', () => {
        expect(compare(supper(), supper())).toEqual([]);
        expect(
            compare(
                supper(),
                supper((text) => text.replaceAll('\n', '\n\n')),
            ),
        ).toEqual([]);
        expect(tellChanges([], 'Nothing changes.')).toBe('Nothing changes.\n');
    });

    it('tells a guest with a need and a seat', () => {
        const after = supper((text) =>
            text.replace('2 without gluten', '2 without gluten\n        1 without gluten at T7 seat 2'),
        );
        expect(about(compare(supper(), after), 'guests')[0]).toBe('new: 1 guest, without gluten at T7 seat 2');
    });

    it('tells a move of an hour and more in hours', () => {
        const later = supper((text) =>
            text.replace('seated 19:00', 'seated 20:15').replace('ends 23:30', 'ends 00:30'),
        );
        expect(about(compare(supper(), later), 'times')).toContain(
            '`Smoked beet and curd` is called 1 h 15 min later, at 20:16',
        );
    });

    it('tells courses that came, went or moved, and dishes', () => {
        const swapped = supper((text) => text.replace('"Quince sorbet"', '"Pear sorbet"'));
        expect(about(compare(supper(), swapped), 'menu')).toEqual([
            'the course `Pear sorbet` is new: 84 to cook',
            'the course `Quince sorbet` is gone',
        ]);
        const renamed = supper((text) => text.replace('dish "Grilled sirloin"', 'dish "Grilled rib"'));
        expect(about(compare(supper(), renamed), 'menu')).toEqual([
            '`Grilled rib` is new: 40 to cook',
            '`Grilled sirloin` is gone',
        ]);
    });
});

describe('a word in a clause', () => {
    /** Everything that is told of one edit, by subject. */
    const told = (from: string, to: string): Record<string, string[]> => {
        const after = supper((text) => {
            expect(text).toContain(from);
            return text.replace(from, to);
        });
        const changes = compare(supper(), after);
        return Object.fromEntries(changes.map(({ subject }) => [subject, about(changes, subject)]));
    };

    it.each<readonly [string, string, string, string]>([
        [
            'contains celery',
            'contains celery, sesame, soy',
            'allergens',
            '`Braised chicken` now contains sesame and soy',
        ],
        ['contains egg, milk', 'contains milk', 'allergens', '`Burnt honey custard` no longer contains egg'],
        [
            'contains egg, milk',
            '',
            'allergens',
            '`Burnt honey custard` no longer says what it contains: egg and milk before',
        ],
        [
            '{ contains oats }',
            '{ contains nothing }',
            'allergens',
            '`Oat biscuits` of `Three cheeses of the marsh` now contains nothing, oats before',
        ],
        [
            ' left off for guests without gluten',
            '',
            'allergens',
            '`Oat biscuits` of `Three cheeses of the marsh` is no longer left off for guests without gluten',
        ],
        [
            ' left off for guests without gluten',
            ' left off for guests without gluten, left off for vegan',
            'allergens',
            '`Oat biscuits` of `Three cheeses of the marsh` is now left off for guests without gluten and vegan guests instead of for guests without gluten',
        ],
        ['dish "Braised chicken"', 'dish "Lamb shank"', 'allergens', '`Lamb shank` is new and contains celery'],
        ['suits vegetarian', '', 'allergens', '`Roast squash soup` no longer suits vegetarian'],
        [
            'instead "Sorrel cordial" 4 fl oz, is cordial { contains nothing }',
            'instead "Nut milk" 4 fl oz, is cordial { contains almond }',
            'allergens',
            '`Nut milk` is new and contains almond',
        ],
        ['date 2026-10-17', 'date 2026-10-18', 'day', 'day: 2026-10-18 instead of 2026-10-17'],
        ['ends 23:30', 'ends 22:30', 'day', 'the event ends at 22:30 instead of 23:30'],
        ['at 17:15', 'at 15:30', 'day', 'the crew eats at 15:30 instead of 17:15'],
        ['cook to 74 °C', 'cook to 80 °C', 'menu', '`Braised chicken`: cooked to 80 °C instead of 74 °C'],
        ['held at 75 °C', '', 'menu', '`Braised chicken`: held at 75 °C is no longer stated'],
        ['lasts 10 min', 'lasts 14 min', 'menu', '`Quince sorbet`: lasts 14 min instead of 10 min'],
        ['180 ml', '120 ml', 'drinks', 'the water: a glass of 120 ml instead of 180 ml'],
        [
            'takes 40 min, between 30 min and 60 min',
            'takes 90 min, between 30 min and 160 min',
            'tasks',
            'setup task `Tables and chairs`: takes 90 min instead of 40 min',
        ],
    ])('%s → %s is told', (from, to, subject, text) => {
        expect(told(from, to)[subject]).toContain(text);
    });

    it('of what is in a dish comes before all else', () => {
        const after = supper((text) =>
            text.replace('contains celery', 'contains celery, peanut').replace('guests 84', 'guests 60'),
        );
        expect(compare(supper(), after)[0]!.text).toBe('`Braised chicken` now contains peanut');
    });

    it('of who gets what is told of guests with needs', () => {
        const squash = 'dish "Barley-stuffed squash"';
        const tart = 'dish "Mushroom tart" for 3 vegetarian { served on dinner-plate  contains egg  suits vegetarian }';
        expect(told(squash, `${tart} ${squash}`).allergens).toEqual([
            '`Mushroom tart` is new and contains egg, suits vegetarian',
            'vegetarian guests get `Mushroom tart` and `Barley-stuffed squash` for `Main course`, not `Barley-stuffed squash`',
            'vegetarian guests without tree-nuts get `Mushroom tart` for `Main course`, not `Barley-stuffed squash`',
            'the plate `Barley-stuffed squash` for vegetarian guests: marked `V 4`, not `V 3`',
        ]);
    });

    it('of the warmers tells in what the plates are warmed', () => {
        const before = check('lantern-supper.cover', filesInMemory(texts));
        const house = texts['house.cover']!.replace(/\d+ plate-warmer/, '1 plate-warmer');
        expect(house).not.toBe(texts['house.cover']);
        const changes = compare(
            before,
            check('lantern-supper.cover', filesInMemory({ ...texts, 'house.cover': house })),
        );
        expect(about(changes, 'house')).toContainEqual(
            expect.stringMatching(/^`plate-warmer` owned: 1 instead of \d$/),
        );
        expect(about(changes, 'tasks')).toContainEqual(expect.stringMatching(/^soup bowls for .* to warm: /));
    });
});

describe('what no subject knows', () => {
    it('is never told as nothing: the parts of the plan that differ are named', () => {
        const before = supper();
        const after: Checked = {
            ...before,
            findings: before.findings,
            service: { ...before.service, chilling: [] },
        };
        expect(compare(before, after).map(({ text }) => text)).toEqual(['the plans differ elsewhere: chilling']);
    });
});

describe('an evening that runs', () => {
    const before = supper();
    const answer = whatIf(before, { underway: { minutes: 20 * 60 + 10, done: 'soup' } });
    const running = typeof answer === 'string' ? undefined : answer;
    const seated = 19 * 60;

    it('goes on with the course after the last one that is cleared, and not before', () => {
        const courses = running!.checked.service.run!.courses;
        expect(courses.map(({ course }) => course)).toEqual([2, 3, 4, 5, 6, 7]);
        const now = 20 * 60 + 10 - seated;
        expect(Math.min(...running!.checked.service.run!.tasks.map(({ start }) => start))).toBeGreaterThanOrEqual(now);
        // Called as soon as the tables, once what the sorbet is eaten with is laid, will be ready.
        expect(courses[0]!.fired).toBeGreaterThanOrEqual(now);
        expect(courses[0]!.fired).toBeLessThan(now + 1);
    });

    it('takes as long from there as the plan does', () => {
        const lasts = ({ service }: Checked): number =>
            service.run!.over - service.run!.courses.find(({ course }) => course === 2)!.served.first;
        expect(Math.abs(lasts(running!.checked) - lasts(before))).toBeLessThan(2);
    });

    it('has every call in order, the toast among them', () => {
        const calls = restOfEvening(running!.checked);
        expect(calls[0]).toMatchObject({ clock: '20:10' });
        expect(calls.map(({ minutes }) => minutes)).toEqual(
            calls.map(({ minutes }) => minutes).toSorted((a, b) => a - b),
        );
        expect(calls.some(({ text }) => text.startsWith('toast `To the lantern keepers` until'))).toBe(true);
    });

    it('says nothing of a setup that is over', () => {
        const tasks = running!.changes.filter(({ subject }) => subject === 'tasks');
        expect(tasks.map(({ key }) => key)).toContain('strike over');
        for (const { after } of tasks) {
            expect(after).toBeGreaterThanOrEqual(20 * 60 + 10);
        }
    });

    it('is the plan itself where everything was on time', () => {
        const soup = before.service.run!.courses[1]!;
        const onTime = whatIf(before, { underway: { minutes: seated + soup.cleared.last, done: 'soup' } });
        expect(onTime).toBeTypeOf('object');
        const times = typeof onTime === 'string' ? [] : about(onTime.changes, 'times');
        // The sorbet could have been called before the last table was cleared; nothing moves by more than that.
        for (const text of times) {
            expect(Number(/ (\d+) min /.exec(text)?.[1])).toBeLessThanOrEqual(6);
        }
    });
});

describe('fewer servers and runners', () => {
    it('serve later, and the soup is cooler before its last guest', () => {
        const answer = whatIf(supper(), { people: { servers: 4, runners: 1 } });
        const slower = typeof answer === 'string' ? [] : answer.changes;
        expect(about(slower, 'team')).toContain('servers: 4 instead of 7');
        expect(
            about(slower, 'times').some((text) => text.startsWith('service is over') && text.includes('later')),
        ).toBe(true);
        const soup = slower.find(({ subject, key }) => subject === 'temperatures' && key === 'Roast squash soup');
        expect(soup!.after).toBeLessThan(soup!.before!);
    });
});

describe('asked of a plan that can not answer', () => {
    it('says which figure is missing', () => {
        const empty = check('a.cover', filesInMemory({ 'a.cover': 'menu { }' }));
        expect(whatIf(empty, { guests: 4 })).toBe('There is no event in this file.');
        expect(whatIf(supper(), { underway: { minutes: 1210, done: 'savoury' } })).toMatch(
            /^The menu has no course `savoury`\. It has .*`soup`/,
        );
    });
});
