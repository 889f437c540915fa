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
        expect(about(changes, 'guests')).toEqual(['7 more covers, 91 in all', '7 more places set, 95 in all']);
        expect(about(changes, 'menu')).toContain('7 more of `Roast squash soup`, 91 to cook');
        expect(about(changes, 'pieces')).toContain('7 more soup spoons to pull, 96 in all, none left over');
        expect(about(changes, 'drinks')).toContain(
            '`Dry riesling`: 16 bottles of 750 ml instead of 14 bottles of 750 ml',
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
        expect(about(compare(supper(), after), 'guests')).toEqual(['new: 1 guest, without gluten at T7 seat 2']);
    });

    it('tells courses that came, went or moved, and dishes', () => {
        const swapped = supper((text) => text.replace('"Quince sorbet"', '"Pear sorbet"'));
        expect(about(compare(supper(), swapped), 'menu')).toEqual([
            'the course `Pear sorbet` is new',
            'the course `Quince sorbet` is gone',
        ]);
        const renamed = supper((text) => text.replace('dish "Grilled sirloin"', 'dish "Grilled rib"'));
        expect(about(compare(supper(), renamed), 'menu')).toEqual([
            '`Grilled rib` is new: 40 to cook',
            '`Grilled sirloin` is gone',
        ]);
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
        expect(whatIf(supper(), { underway: { minutes: 1210, done: 'savoury' } })).toBe(
            'The menu has no course `savoury`.',
        );
    });
});
