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
