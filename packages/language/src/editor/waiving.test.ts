import { describe, expect, it } from 'vitest';
import { CLIENT, openPlan } from '../../../../tests/support/open-plan.js';
import { check } from '../check.js';
import { filesInMemory } from '../plan/files.js';
import { BECAUSE_COMMAND, codeActions } from './code-actions.js';
import { applyEdits } from './fixes.js';
import { silence, silencings } from './waiving.js';

const PLAN = `//- house.cover
house "Hall" {
    laying { limit: 1 per side }
}
//- plan.cover
use "house.cover"

event "Supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 8
}

menu {
    course fish "Turbot" {
        served on fish-plate at 58 °C
        cook to 63 °C
        lasts 20 min
        contains fish
    }
    course main "Squash" is vegetable-main {
        served on dinner-plate warmed to 60 °C at 62 °C
        lasts 20 min
        contains nothing
    }
}
`;

function open(rule: string) {
    const plan = openPlan(PLAN);
    const placed = plan.folder.findingsIn('plan.cover').find(({ finding }) => finding.rule === rule)!;
    expect(placed, rule).toBeDefined();
    return { ...plan, placed };
}

describe('silencing a finding', () => {
    it('writes a waiver with its reason into the block around it, and the finding goes', () => {
        const { folder, placed } = open('three-per-side');
        const [here] = silencings(folder, placed);
        expect(here!.title).toBe('Waive `three-per-side` here because …');
        const edits = silence(folder, here!, 'agreed with "the host"');
        const text = applyEdits(folder.textOf('plan.cover')!, edits.get('plan.cover')!);
        expect(text).toContain(`waive three-per-side because "agreed with 'the host'"`);
        const { findings } = check(
            'plan.cover',
            filesInMemory({ 'plan.cover': text, 'house.cover': folder.textOf('house.cover')! }),
        );
        expect(findings.map(({ rule }) => rule)).not.toContain('three-per-side');
        expect(findings.map(({ rule }) => rule)).not.toContain('waiver-without-effect');
    });

    it('is offered once where a rule finds several things', () => {
        const { folder, path, placed } = open('three-per-side');
        const here = folder.findingsIn(path).filter(({ finding }) => finding.rule === 'three-per-side');
        expect(here.length).toBeGreaterThan(1);
        const range = folder.rangeOf(placed.finding.at)!;
        const asked = { textDocument: { uri: '' }, range, context: { diagnostics: [] } };
        const titles = codeActions({ folder, path }, asked, { ...CLIENT, asksReasons: true }).map(({ title }) => title);
        expect(titles.filter((title) => title.includes('`three-per-side`'))).toEqual([
            'Waive `three-per-side` here because …',
            'Turn `three-per-side` off for the house because …',
        ]);
    });

    it('turns a rule off in the house with its reason, and the finding goes', () => {
        const { folder, placed } = open('three-per-side');
        const off = silencings(folder, placed)[1]!;
        expect(off.title).toBe('Turn `three-per-side` off for the house because …');
        const house = applyEdits(
            folder.textOf('house.cover')!,
            silence(folder, off, 'one of each').get('house.cover')!,
        );
        expect(house).toContain('rule three-per-side is off because "one of each"');
        const { findings } = check(
            'plan.cover',
            filesInMemory({ 'plan.cover': folder.textOf('plan.cover')!, 'house.cover': house }),
        );
        expect(findings.map(({ rule }) => rule)).not.toContain('three-per-side');
    });

    it('is not offered where someone could be harmed', () => {
        const { folder, path } = openPlan(`event "Supper" { guests 8 { 1 without milk } }
menu { course soup { contains milk } }
`);
        const harmful = folder.findingsIn(path).filter(({ finding }) => finding.rule === 'allergen-reaches-guest');
        expect(harmful.length).toBeGreaterThan(0);
        expect(harmful.flatMap((placed) => silencings(folder, placed))).toEqual([]);
    });

    it('is asked for by a client that can ask, and else leaves an empty reason to be filled in', () => {
        const { folder, path, placed } = open('three-per-side');
        const range = folder.rangeOf(placed.finding.at)!;
        const params = { textDocument: { uri: folder.uriOf(path) }, range, context: { diagnostics: [] } };
        const title = 'Waive `three-per-side` here because …';
        const asking = codeActions({ folder, path }, params, { ...CLIENT, asksReasons: true });
        expect(asking.find((each) => each.title === title)?.command?.command).toBe(BECAUSE_COMMAND);
        const plain = codeActions({ folder, path }, params, CLIENT).find((each) => each.title === title)!;
        expect(JSON.stringify(plain.edit)).toContain('waive three-per-side because \\"\\"');
        const text = applyEdits(folder.textOf(path)!, silence(folder, silencings(folder, placed)[0]!, '').get(path)!);
        const { findings } = check(path, filesInMemory({ [path]: text, 'house.cover': folder.textOf('house.cover')! }));
        expect(findings.map(({ rule }) => rule)).toContain('off-without-reason');
    });
});
