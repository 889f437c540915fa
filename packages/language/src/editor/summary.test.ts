import { expect, it } from 'vitest';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { summaryOf } from './summary.js';

it('counts what keeps a plan from being compiled, also where it stands in a file that it uses', () => {
    const plan = openPlan(`//- house.cover
house "Hall" { own 3 dessert-plat }
//- plan.cover
use "house.cover"
`);
    const { found, findings, worst } = summaryOf(plan);
    expect(findings.error).toBe(1);
    expect(found).toMatch(/^1 error\. house\.cover: No piece is called `dessert-plat`/);
    expect(worst?.rule).toBe('unknown-name');
    expect(summaryOf({ ...plan, path: 'house.cover' }).found).toMatch(/^1 error\. No piece/);
});
