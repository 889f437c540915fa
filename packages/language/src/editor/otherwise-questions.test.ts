import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { anAsker } from '../../../../tests/support/asker.js';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { answerWhatIf, otherwiseQuestions } from './otherwise-questions.js';
import { problemOf } from './questions.js';

const read = (path: string): string =>
    readFileSync(new URL(`../../../../examples/saltmarsh-hall/${path}`, import.meta.url), 'utf8');
const files = [
    'recipes/roast-squash-soup.json',
    'recipes/smoked-beet.md',
    'cupboard.cover',
    'house.cover',
    'long-gallery.cover',
    'lantern-supper.cover',
];
const plan = openPlan(files.map((file) => `//- ${file}\n${read(file)}`).join('\n'));

const told = async (answers: Record<string, string>): Promise<string> => {
    const answer = (await answerWhatIf(plan, answers, anAsker()))!;
    return 'refused' in answer ? `refused: ${answer.refused}` : answer.markdown;
};

const problemWith = (key: string, answer: string): string | undefined =>
    problemOf({ about: 'whatIf', uri: '', key, answer }, plan)?.problem;

describe('what a chef may ask of an evening', () => {
    it('is what the plan says something of, with what it says', () => {
        const questions = otherwiseQuestions(plan);
        expect(questions.map(({ key }) => key)).toEqual(
            expect.arrayContaining(['guests', 'late', 'underway', 'roomTemperature', 'people servers']),
        );
        expect(questions.find(({ key }) => key === 'guests')?.now).toMatch(/^\d+$/);
        expect(otherwiseQuestions(openPlan('menu { course soup "Leek soup" { } }'))).toEqual([]);
    });

    it('is nothing where there is no event', () => {
        const gallery = openPlan(
            files
                .slice(0, 5)
                .map((file) => `//- ${file}\n${read(file)}`)
                .join('\n'),
        );
        expect(otherwiseQuestions(gallery)).toEqual([]);
    });

    it('takes as an answer the example that it shows, and says what is wrong with another', () => {
        for (const { key, example } of otherwiseQuestions(plan)) {
            expect(problemWith(key, example), key).toBeUndefined();
            expect(problemWith(key, 'many'), key).toMatch(/[.?]$/);
            expect(problemWith(key, ''), key).toBeDefined();
        }
        expect(problemWith('underway', '20:10 pudding')).toMatch(/^The menu has no course `pudding`\. It has `/);
        expect(problemWith('underway', '20:10 Soup')).toBeUndefined();
        expect(problemWith('underway', '8:10 pm soup')).toBeUndefined();
        expect(problemWith('underway', '8:10 soup')).toMatch(/Did you mean 20:10\?$/);
        expect(problemWith('late', '99 h')).toMatch(/at most 6 h/);
        expect(problemWith('people servers', '0')).toMatch(/nobody serves/);
        expect(problemWith('roomTemperature', '-300 °C')).toMatch(/from -10 to 45 °C\.$/);
        expect(problemWith('guests', '1000000')).toMatch(/from 1 to 5000\.$/);
    });

    it('is answered for people: how many more, and when', async () => {
        const guests = Number(otherwiseQuestions(plan).find(({ key }) => key === 'guests')!.now);
        const page = await told({ guests: String(guests + 7) });
        expect(page).toContain(`- Guests expected: **${guests + 7}** (planned: ${guests})`);
        expect(page).toMatch(/7 more/);
        expect(await told({ late: '15 min' })).toMatch(/15 min later/);
        expect(await told({ late: '0 min' })).toContain('Nothing changes for anybody.');
    });

    it('joins several answers, people of several roles too', async () => {
        const both = await told({ 'people servers': '1', late: '15 min' });
        expect(both).toContain('Servers: **1**');
        expect(both).toContain('Guests sit down late: **15 min**');
        expect(both.length).toBeGreaterThan((await told({ late: '15 min' })).length);
    });

    it('warns where the plan has errors', async () => {
        expect(await told({ late: '15 min' })).not.toContain('error');
        const wrong = openPlan(
            'event "Supper" { date 2026-10-17 seated 19:00 guests 8 }\nmenu { course soup "Leek" { dish "Leek" { held at 20 °C } } nonsense }',
        );
        const answer = (await answerWhatIf(wrong, { guests: '9' }, anAsker()))!;
        expect('markdown' in answer && answer.markdown).toMatch(/> The plan has \d+ errors?: mend (it|them)/);
        expect(await told({ guests: '3' })).toMatch(/\n> With these figures the plan has \d+ errors?: do not rely/);
    });
});
