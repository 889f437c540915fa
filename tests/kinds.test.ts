import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import type { Kind } from '../packages/language/src/plan/cupboard.js';

// Each kind of dish of the standard cupboard, served as the cupboard says: one fixture a kind, made from the kind itself.

const { kinds, pieces } = check('x.cover', filesInMemory({ 'x.cover': '' })).plan.cupboard;
const byName = [...kinds.values()].map((kind): [string, Kind] => [kind.name, kind]);

/** The kind in the middle of its range, on what it is usually served on, in the state that its temperature asks for. */
function served({ name, range, vessels, band }: Kind): string {
    const vessel = vessels.flatMap(({ how, names }) => names.map((named) => `${how} ${named.name}`))[0];
    const state = { hot: 'warmed', cold: 'chilled', frozen: 'chilled', warm: '', cool: '' }[band ?? 'warm'];
    // Kinds that are hot or cold as the kitchen likes state no range.
    const usual = band === 'hot' ? 60 : 20;
    const middle = range === undefined ? usual : (range.low + range.high) / 2;
    return `event "Lantern supper" {
    date 2026-10-17
    zone America/New_York
    seated 19:00
    notice "Raw or undercooked food may make some guests ill."
    guests 8
}
menu {
    course "${name}" "The dish" {
        served ${vessel ? `${vessel} ${state}` : ''} at ${middle} °C
        lasts 15 min
        contains nothing
    }
}
`;
}

describe('the kinds of the standard cupboard', () => {
    // Oysters and melon share no piece and no plate: what opens the meal says only where it stands.
    const openers = byName.filter(([, { eaten, vessels }]) => eaten === undefined && vessels.length === 0);
    const dishes = byName.filter((each) => !openers.includes(each));

    it('are 35 at least, and all but one are eaten from something with something', () => {
        expect(dishes.length).toBeGreaterThanOrEqual(35);
        expect(openers.map(([name]) => name)).toEqual(['first-course']);
    });

    it.each(dishes)('%s can be served as the cupboard says', (_, kind) => {
        const text = served(kind);
        const checked = check('supper.cover', filesInMemory({ 'supper.cover': text }));
        // A whole meal, a guest to warn and a spoon to warm are no matter of the kind; the rest is.
        const apart = ['hot-soup-cold-spoon', 'intermezzo-spoon-not-chilled', 'diet-taken-on-trust', 'place-left-bare'];
        const found = checked.findings.filter(({ rule }) => !apart.includes(rule));
        expect(
            found.map(({ rule, message }) => `${rule}: ${message}`),
            text,
        ).toEqual([]);
        const plan = planJson(checked) as unknown as {
            service: { covers: { cover: Record<'left' | 'right' | 'above' | 'brought', { piece: string }[]> }[] };
        };
        const { left, right, above, brought } = plan.service.covers[0]!.cover;
        const laid = [left, right, above, brought].flat().map(({ piece }) => piece);
        const eaten = (kind.eaten ?? []).map((group) => group.map((use) => use.piece.name));
        // One of each group, and nothing else.
        expect(laid.length).toBe(eaten.length);
        expect(eaten.filter((group) => !group.some((name) => laid.includes(name)))).toEqual([]);
        expect(laid.every((name) => pieces.has(name))).toBe(true);
    });
});
