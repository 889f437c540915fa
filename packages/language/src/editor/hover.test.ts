import { describe, expect, it } from 'vitest';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { hoverAt } from './hover.js';

function hover(written: string): string | undefined {
    const plan = openPlan(written);
    const found = hoverAt(plan, plan.offset);
    return found && (found.contents as { value: string }).value;
}

describe('hover', () => {
    it('tells a piece: its size, what it is for, how many there are and are needed', () => {
        const said = hover('house "Hall" { own 30 fish-f<|>ork }');
        expect(said).toContain('fork fish-fork');
        expect(said).toMatch(/Length \d+.* mm/);
        expect(said).toContain('For `fish`');
        expect(said).toContain('The house owns 30.');
        expect(said).toMatch(/Source: table-service/);
        const needed = hover(
            '//- house.cover\nhouse "Hall" { own 30 fish-f<|>ork }\n//- supper.cover\nuse "house.cover"\nevent "S" { guests 12 }\nmenu { course fish "Hake" { eaten with fish-fork } }\n',
        );
        expect(needed).toContain('the house owns 30; the evening needs 12, without spares.'.replace('the', 'The'));
    });

    it('tells a kind, a drink, an allergen, a diet and a local code', () => {
        const kind = hover('menu { course clear-s<|>oup { } }');
        expect(kind).toContain('A sort of `soup`');
        expect(kind).toMatch(/Eaten with .*`bouillon-spoon`/);
        expect(kind).toMatch(/°C \(\d+ °F\)/);
        expect(hover('menu { course soup { pour "Red" is light-red-w<|>ine } }')).toMatch(/Wanted .*°C/);
        expect(hover('menu { course soup { contains tree-n<|>uts } }')).toMatch(/Covers .*`almond`/);
        expect(hover('event "S" { guests 8 { 2 veg<|>an } }')).toMatch(/Excludes /);
        expect(hover('house "H" { local code us-m<|>odel }')).toMatch(/hot-holding: \d+ °[CF]/);
    });

    it('tells a custom, what its answers mean and which is in force', () => {
        const said = hover('house "H" { laying { over<|>flow: brought } }');
        expect(said).toContain('- `reported`:');
        expect(said).toContain('This house lays `brought`; the default is `reported`.');
        expect(hover('house "H" { laying { overflow: bro<|>ught } }')).toMatch(/overflow: brought/);
    });

    it('gives a figure in the other units, outside of texts and comments', () => {
        expect(hover('menu { course soup { served at 6<|>4 °C } }')).toContain('64 °C is 147 °F.');
        expect(hover('menu { course soup { served at 147 °<|>F } }')).toContain('147 °F is 63.9 °C.');
        expect(hover('menu { course soup { served in soup-bowl, portion 8 fl<|> oz } }')).toContain(
            '8 fl oz is 237 ml.',
        );
        expect(hover('menu { course soup "At 6<|>4 °C" { } }')).not.toContain('is 147');
        expect(hover('// 6<|>4 °C\n')).toBeUndefined();
    });

    it('says why a finding matters, and where that stands', () => {
        const said = hover('house "Hall" { own 4 dinner-f<|>rok }');
        expect(said).toContain('[unknown-name](underliner-rule:/unknown-name.md)');
        expect(said).toContain('*Source: ');
    });

    it('explains a rule where a house sets it', () => {
        expect(hover('house "H" { rule three-per<|>-side is off because "x" }')).toMatch(/\*\*three-per-side\*\*/);
    });

    it('is silent about words of the language', () => {
        expect(hover('hou<|>se "H" { }')).toBeUndefined();
    });
});
