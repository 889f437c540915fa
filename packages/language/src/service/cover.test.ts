import { expect, it } from 'vitest';
import { check } from '../check.js';
import { filesInMemory } from '../plan/files.js';

const PLAN = `event "Harvest home" { date 2026-09-26  zone America/Halifax  seated 18:30  guests 40 }
menu {
    lay left dinner-fork   right dinner-knife   on the bread-plate butter-spreader
    course vegetable-main "Squash" {
        served on dinner-plate warmed at 62 °C
        lasts 20 min
        contains wheat
    }
    bread from vegetable-main until vegetable-main on bread-plate with butter-spreader { contains wheat }
}
`;

it('lays the spreader that a `lay` clause names and the bread asks for once', () => {
    const { service, findings } = check('plan.cover', filesInMemory({ 'plan.cover': PLAN }));
    const { cover, steps } = service.variations[0]!;
    expect(cover.breadPlate.map(({ piece, purpose }) => [piece.name, purpose])).toEqual([['butter-spreader', 'bread']]);
    expect(service.counts.find(({ piece }) => piece === 'butter-spreader')?.needed).toBe(40);
    const clear = steps.find(({ title }) => title === 'Clear Squash')!;
    expect(clear.cleared.map(({ piece }) => piece)).toContain('butter-spreader');
    expect(findings).toEqual([]);
});

const COURSES = `event "Harvest home" { date 2026-09-26  zone America/Halifax  seated 18:30  guests 40 { 6 vegetarian } }
room "Gallery" 18 m by 11 m { table T1 to T5: round 66 inch, 8 seats }
team { captain 1  servers 3  plating-lines 1 at 12 plates per min }
menu {
    course soup "Broth" { served in soup-bowl at 66 °C  lasts 12 min  contains nothing }
    course main "Main" {
        served on dinner-plate warmed at 62 °C
        lasts 20 min
        contains wheat
        dish "Leek pie" is pie for vegetarian { suits vegetarian }
        dish "Squash" for the rest { }
    }
    course dessert "Afters" {
        served on dessert-plate at 8 °C
        lasts 15 min
        contains milk
        dish "Blue cheese" is cheese for 10 { }
        dish "Set cream" for the rest { }
    }
}
`;

it('is crumbed for before the dessert course, whatever kinds the dishes of the courses are', () => {
    const { service } = check('plan.cover', filesInMemory({ 'plan.cover': COURSES }));
    const crumbed = service.variations.map(({ steps }) =>
        steps.flatMap(({ sort, title }, index) =>
            sort === 'crumb' ? [`${title} after ${steps[index - 1]!.title}`] : [],
        ),
    );
    expect(crumbed.length).toBeGreaterThan(2);
    expect(crumbed.every((each) => each.join() === 'Crumb the table after Clear Main')).toBe(true);
    const atTables = service.run!.tasks.filter(({ sort }) => sort === 'crumb');
    expect(new Set(atTables.map(({ course }) => course))).toEqual(new Set([2]));
});
