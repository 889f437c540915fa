import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { anAsker } from '../../../../tests/support/asker.js';
import { FOLDER, openPlan } from '../../../../tests/support/open-plan.js';
import { compareSince } from './compare-since.js';
import type { CompareAnswer } from './requests.js';

const read = (path: string): string =>
    readFileSync(new URL(`../../../../examples/saltmarsh-hall/${path}`, import.meta.url), 'utf8');
const FILES = ['cupboard.cover', 'house.cover', 'long-gallery.cover', 'lantern-supper.cover'];
const were: Readonly<Record<string, string>> = Object.fromEntries(FILES.map((file) => [file, read(file)]));
const supper = were['lantern-supper.cover']!;
const house = were['house.cover']!;
const since = 'the last commit';

/** Answers as a client does: it gives each earlier text that is asked for. */
async function compared(
    earlier: Readonly<Record<string, string>>,
    now: Readonly<Record<string, string>>,
): Promise<CompareAnswer> {
    const plan = openPlan(
        Object.entries(now)
            .map(([name, text]) => `//- ${name}\n${text}`)
            .join('\n'),
    );
    const before: Record<string, string | null> = {};
    for (let round = 0; round < 5; round++) {
        const answer = (await compareSince(plan, { uri: `${FOLDER}/${plan.path}`, before, since }, anAsker()))!;
        if (!('wanted' in answer)) {
            return answer;
        }
        answer.wanted.forEach((uri) => (before[uri] = earlier[uri.slice(FOLDER.length + 1)] ?? null));
    }
    throw new Error('It never has enough.');
}

describe('what changed since earlier texts', () => {
    it('is nothing where nothing did', async () => {
        expect(await compared(were, were)).toEqual({
            markdown: expect.stringMatching(/Nothing changes for anybody\.\n$/) as string,
        });
    });

    it('is told for people, with what was not saved yet', async () => {
        const [, count] = /guests (\d+)/.exec(supper)!;
        const more = supper.replace(`guests ${count}`, `guests ${Number(count) + 7}`);
        const answer = await compared(were, { ...were, 'lantern-supper.cover': more });
        expect(answer).toEqual({
            markdown: expect.stringMatching(/what changed since the last commit[^]*7 more/) as string,
        });
    });

    it('takes the files that the plan uses as they were, too', async () => {
        const [, owned] = /own (\d+)/.exec(house) ?? [];
        expect(owned, 'the house owns pieces').toBeDefined();
        const answer = await compared(were, { ...were, 'house.cover': house.replaceAll(/own \d+/g, 'own 1') });
        expect(answer).toEqual({ markdown: expect.stringContaining('### Findings') as string });
    });

    it('says where there was no event yet', async () => {
        expect(await compared({}, were)).toEqual({
            refused: 'In the last commit `lantern-supper.cover` held no event yet.',
        });
    });
});
