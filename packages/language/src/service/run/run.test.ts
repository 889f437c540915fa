import { describe, expect, it } from 'vitest';
import { check } from '../../check.js';
import { filesInMemory } from '../../plan/files.js';

interface Written {
    readonly house?: string;
    readonly event?: string;
    readonly team?: string;
    readonly room?: string;
    readonly soup?: string;
    readonly soupLasts?: string;
    readonly main?: string;
    readonly menu?: string;
}

const text = ({
    house = '',
    event = 'guests 40',
    team,
    room,
    soup = '',
    soupLasts = '15 min',
    main = '',
    menu = '',
}: Written): string => `
house "Saltmarsh Hall" { laying { ${house} } }
event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  ${event} }
room "Boathouse" ${room ?? '14 m by 10 m { table A to E: round 66 inch, 8 seats }'}
team { ${team ?? 'captain 1  servers 5  runners 2  plating-lines 1 at 12 plates per min'} }
menu {
    course soup "Leek and potato" {
        served in soup-bowl warmed to 60 °C at 66 °C
        eaten with soup-spoon warmed, brought with the course
        lasts ${soupLasts}  contains milk  ${soup}
    }
    course main "Saddle of lamb" is roast-meat {
        served on dinner-plate warmed to 62 °C at 58 °C
        cook to 63 °C  lasts 30 min  contains lamb  ${main}
        pour "Cellar red" 5 fl oz into red-wine-glass at 17 °C, is full-red-wine { contains sulphites }
    }
    ${menu}
}
`;

const checked = (written: Written = {}) => check('supper.cover', filesInMemory({ 'supper.cover': text(written) }));
const runOf = (written: Written = {}) => checked(written).service.run!;

describe('the run sheet of a plan', () => {
    it('needs guests, tables and servers', () => {
        expect(runOf()).toBeDefined();
        expect(runOf({ event: '' })).toBeUndefined();
        expect(runOf({ room: '14 m by 10 m { at 20 °C }' })).toBeUndefined();
        expect(runOf({ team: 'captain 1  runners 2' })).toBeUndefined();
    });
    it('walks to where the tables stand, and says so where it only guesses', () => {
        const ways = runOf().tables.map(({ fromPass }) => fromPass);
        expect(new Set(ways).size).toBeGreaterThan(2);
        expect(Math.max(...ways)).toBeLessThan(20_000);
        const guessed = runOf({ room: '{ table A to E: round 66 inch, 8 seats }' });
        expect(guessed.tables.map(({ fromPass }) => fromPass)).toEqual(Array(5).fill(15_000));
        expect(guessed.assumed).toContain('pass-distance');
    });
    it('names what it assumes until the house states it', () => {
        expect(runOf().assumed).toEqual(
            expect.arrayContaining(['walking', 'setting-down', 'plates-a-trip', 'handing-over']),
        );
        const stated = runOf({ house: 'walking: 50 m per min  setting-down: 4 s  plates-a-trip: 4' });
        for (const name of ['walking', 'setting-down', 'plates-a-trip'] as const) {
            expect(stated.assumed).not.toContain(name);
        }
        // A figure with a published source is no assumption.
        expect(runOf({ team: 'servers 5  plating-lines 1' }).assumed).not.toContain('plating-rate');
    });
    it('moves as a chef expects: guests, servers, plates a trip, eating time', () => {
        const served = (written: Written) => runOf(written).courses[0]!.served.last;
        expect(served({ event: 'guests 32' })).toBeLessThan(served({}));
        expect(served({ house: 'plates-a-trip: 8' })).toBeLessThan(
            served({ team: 'servers 5  runners 1  plating-lines 2 at 20 plates per min' }),
        );
        const main = (written: Written) => runOf(written).courses[1]!.served.first;
        expect(main({ soupLasts: '25 min' }) - main({})).toBeCloseTo(10, 0);
    });
    it('takes the pace of a line, of its stations, or of the dish', () => {
        const plating = (written: Written) => {
            const { plated } = runOf(written).courses[0]!;
            return plated.last - plated.first;
        };
        const team = 'servers 5  runners 8  plating-lines 1';
        expect(plating({ team: `${team} at 12 plates per min` })).toBeCloseTo(39 / 12, 6);
        expect(plating({ team: `${team} with stations of 3 s, 6 s, 2 s` })).toBeCloseTo((39 * 6) / 60, 6);
        expect(plating({ team, soup: 'plated in 4 s, 9 s' })).toBeCloseTo((39 * 9) / 60, 6);
        expect(plating({ team })).toBeCloseTo(39 / 10, 6);
        expect(plating({ team: 'servers 5  runners 8  platers 2 at 6 plates per min each' })).toBeCloseTo(19 / 6, 6);
    });
    it('plates ahead, presets, starts a course at its hour, and holds for a speech', () => {
        const [, main] = runOf({ main: 'plated ahead into hot-box' }).courses;
        expect(main!.plated.last).toBeLessThanOrEqual(main!.leftPass.first);
        expect(runOf({ soup: 'preset 5 min before seating' }).courses[0]!.served.last).toBeCloseTo(-5, 6);
        const late = runOf({ main: 'starts at 19:45' }).courses[1]!;
        expect(late.served.first).toBeGreaterThanOrEqual(45);
        expect(late.served.first).toBeLessThan(46);
        const speech = runOf({ menu: 'speech "The keeper" after soup, at 19:40, lasts 5 min' });
        expect(speech.speeches).toMatchObject([{ speech: 0, at: 40, start: 40, end: 45 }]);
        expect(speech.courses[1]!.served.first).toBeGreaterThanOrEqual(45);
    });
    it('counts an hour after midnight as one of the same evening', () => {
        const { courses } = checked({ main: 'starts at 00:30' }).service.run!;
        expect(courses[1]!.served.first).toBeGreaterThanOrEqual(5.5 * 60);
    });
    it('pours for those who have the wine, and coffee for the share that takes it', () => {
        const poured = (written: Written) =>
            runOf(written)
                .tasks.filter(({ sort, course }) => sort === 'pour' && course === 1)
                .reduce((sum, { count }) => sum + count, 0);
        expect(poured({})).toBe(40);
        expect(poured({ event: 'guests 40 { 6 children }' })).toBe(34);
        const cups = (phrase: string) =>
            runOf({ house: 'coffee-share: 70 %', menu: `coffee after main${phrase} { contains nothing }` })
                .tasks.filter(({ sort }) => sort === 'coffee')
                .reduce((sum, { count }) => sum + count, 0);
        expect([cups(''), cups(', on request')]).toEqual([40, 28]);
    });
    it('tells when the first glass of a course is begun, as the first of its tasks says', () => {
        const { tasks, pouringStarts } = runOf({ menu: 'toast "All" after main' });
        const first = new Map<number, number>();
        for (const { course, start } of tasks.filter(({ sort }) => sort === 'pour')) {
            first.set(course, Math.min(start, first.get(course) ?? Infinity));
        }
        expect(first.size).toBeGreaterThan(0);
        expect(new Map(pouringStarts)).toEqual(first);
    });
    it('tops up every glass for a toast that comes later than right after its course, and lets the toast wait for it', () => {
        const cheese = 'course cheese "Hard cheese" { contains milk }';
        const poured = (toast: string, house = '') => {
            const { tasks, courses, speeches } = runOf({ house, menu: `${cheese} ${toast}, with "Cellar red"` });
            const pours = tasks.filter(({ sort, course }) => sort === 'pour' && course === 1);
            const again = pours.filter(({ start }) => start >= courses[1]!.cleared.first);
            return { courses, again, glasses: pours.reduce((sum, { count }) => sum + count, 0), toast: speeches[0]! };
        };
        const later = poured('toast "All" after cheese');
        expect(later.glasses).toBe(80);
        expect(later.again.every(({ start }) => start >= later.courses[2]!.cleared.first)).toBe(true);
        // It begins with the last glass, which somebody has poured at each of five tables.
        expect(new Set(later.again.map(({ table }) => table)).size).toBe(5);
        expect(later.toast.poured).toBe(Math.max(...later.again.map(({ end }) => end)));
        expect(later.toast.start).toBe(later.toast.poured);
        expect(later.toast.start).toBeGreaterThan(later.courses[2]!.cleared.last);
        const slowly = poured('toast "All" after cheese', 'pouring-glass: 30 s');
        expect(slowly.toast.start - slowly.courses[2]!.cleared.last).toBeGreaterThan(2);

        expect(poured('toast "All" after main')).toMatchObject({ glasses: 40, again: [] });
        // One that has its hour finds its glasses filled just before; nobody waits.
        const atHour = poured('toast "All" at 20:30');
        expect(atHour.glasses).toBe(80);
        expect(atHour.toast).toMatchObject({ start: 90 });
        expect(atHour.toast.poured).toBeGreaterThan(88);
        const held = poured('toast "All" after cheese, at 22:00');
        expect(held.toast).toMatchObject({ start: 180, poured: 180 });
    });
    it.each([
        'walking: 0 m per min',
        'plates-a-trip: 0',
        'covers-a-trip: 0.4',
        'setting-down: 0 s  clearing-cover: 900 h',
        'eating-spread: 900 %',
        'plating-rate: 0 per line',
        'server-ratio: 0 per server',
    ])('comes to an end whatever the house says: %s', (house) => {
        const { service, broken } = checked({ house, menu: 'toast "To all" at 19:20, lasts 0 min, with "Cellar red"' });
        expect(broken).toEqual([]);
        expect(service.run!.over).toBeGreaterThan(0);
        expect(Number.isFinite(service.run!.over)).toBe(true);
    });
    it('comes to an end whatever the plan says', () => {
        const team = 'captain 0  servers 100000000  runners 99999999  plating-lines 1 at 0 plates per min';
        for (const written of [
            { team },
            { soupLasts: '0 min', main: 'starts at 18:00  plated in 0 s' },
            { soupLasts: '-5 min', soup: 'preset 9000 h before seating' },
            { team: 'servers 1  runners 0', event: 'guests 400' },
        ]) {
            const { service, broken } = checked(written);
            expect(broken).toEqual([]);
            expect(Number.isFinite(service.run!.over)).toBe(true);
            expect(service.run!.tasks.every(({ start, end }) => start <= end)).toBe(true);
        }
    });
    it('keeps what it has computed when only places in the text move', () => {
        const one = check('a.cover', filesInMemory({ 'a.cover': text({}) })).service.run!;
        const other = check('a.cover', filesInMemory({ 'a.cover': `// a remark\n\n${text({})}` })).service.run!;
        expect(other.courses).toBe(one.courses);
    });
    it('runs replications where the event asks for them', () => {
        expect(runOf().replications).toBeUndefined();
        const { replications } = runOf({ event: 'guests 40  replications 30 seed 4' });
        expect(replications).toMatchObject({ asked: 30, count: 30, seed: 4, window: 5 });
        expect(replications!.courses.map(({ course }) => course)).toEqual([0, 1]);
    });
});
