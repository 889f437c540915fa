import { describe, expect, it } from 'vitest';
import { anAsker } from '../../../../tests/support/asker.js';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { compareSince } from './compare-since.js';
import { compilePlan } from './compiling.js';
import { inSteps, workingOut } from './in-steps.js';
import { answerWhatIf } from './otherwise-questions.js';

const text = `event "S" { seated 19:00  guests 8  replications 20 seed 7 }
room "R" { table T1: round 60 inch, 8 seats }
team { servers 1 }
menu { course soup "Broth" { lasts 15 min, give or take 4 min } }
`;
const checked = (written = text) => openPlan(written).folder.checked('plan.cover');

describe('what is worked out in steps', () => {
    it('tells how far it is, and comes out as in one go', async () => {
        const plan = checked();
        const asker = anAsker();
        expect(await inSteps('Computing', workingOut(plan), asker)).toBe(true);
        const [title, ...percents] = asker.told;
        expect(title).toBe('Computing');
        expect(percents.pop()).toBe('done');
        expect(percents).toEqual([...percents].sort((a, b) => (a as number) - (b as number)));
        // The evenings are one half, the rules the other.
        expect(percents).toEqual(expect.arrayContaining([3, 5, 8, 50, 75, 100]));
        const other = checked(text.replace('"S"', '"T"'));
        expect(plan.service.run!.replications).toEqual(other.service.run!.replications);
        expect(plan.findings.map(({ message }) => message)).toEqual(
            other.findings.map(({ message }) => message.replace('`T`', '`S`')),
        );
    });

    it('is only rules where a plan asks for no evenings', async () => {
        const asker = anAsker();
        await inSteps('Computing', workingOut(checked(text.replace('replications 20 seed 7', ''))), asker);
        expect(asker.told[1]).toBeLessThan(5);
        expect(asker.told).toContain(50);
    });

    it('is stopped between two evenings or two rules, by a message that is read meanwhile', async () => {
        for (const stopAt of [25, 75]) {
            const asker = anAsker(stopAt);
            expect(await inSteps('Computing', workingOut(checked()), asker)).toBe(false);
            expect(asker.told.at(-1)).toBe('done');
            expect(asker.told.at(-2)).toBeLessThan(stopAt + 5);
        }
    });
});

const asked = {
    'compile a plan': (plan: ReturnType<typeof openPlan>, asker: ReturnType<typeof anAsker>) =>
        compilePlan(plan, asker),
    'what if': (plan: ReturnType<typeof openPlan>, asker: ReturnType<typeof anAsker>) =>
        answerWhatIf(plan, { guests: '9' }, asker),
    compare: (plan: ReturnType<typeof openPlan>, asker: ReturnType<typeof anAsker>) => {
        const uri = plan.folder.uriOf(plan.path);
        return compareSince(plan, { uri, before: { [uri]: plan.text.replace('8', '9') }, since: 'then' }, asker);
    },
};

describe.each(Object.entries(asked))('%s', (_, ask) => {
    it('is given up between two steps where nobody waits any more', async () => {
        const asker = anAsker(20);
        expect(await ask(openPlan(text), asker)).toBeNull();
        expect(asker.told.at(-1)).toBe('done');
        expect(asker.told.at(-2)).toBeLessThan(25);
    });

    it('is not answered from a text that was changed meanwhile', async () => {
        const plan = openPlan(text);
        const answer = ask(plan, anAsker());
        plan.folder.changed(plan.path);
        expect(await answer).toMatchObject({ refused: expect.stringMatching(/changed while/) as string });
    });
});
