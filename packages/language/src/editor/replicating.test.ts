import { describe, expect, it } from 'vitest';
import { CancellationTokenSource } from 'vscode-languageserver';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { replicate } from './replicating.js';

const plan = `event "S" { seated 19:00  guests 8  replications 20 seed 7 }
room "R" { table T1: round 60 inch, 8 seats }
team { servers 1 }
menu { course soup "Broth" { lasts 15 min, give or take 4 min } }
`;

/** What is told while it is worked out. */
function telling(onReport: (percent: number) => void = () => undefined) {
    const told: (string | number)[] = [];
    return {
        told,
        begin: () => told.push('begin'),
        report: (percent: unknown) => {
            told.push(percent as number);
            onReport(percent as number);
        },
        done: () => told.push('done'),
    };
}

describe('evenings run again', () => {
    it('tell how far they are, and come out as in one go', async () => {
        const checked = openPlan(plan).folder.checked('plan.cover');
        const progress = telling();
        const { token } = new CancellationTokenSource();
        expect(await replicate(checked, token, progress)).toBe(true);
        expect(progress.told).toHaveLength(22);
        expect(progress.told.slice(0, 3)).toEqual(['begin', 5, 10]);
        expect(progress.told.slice(-2)).toEqual([100, 'done']);
        expect(checked.service.run!.replications).toEqual(
            openPlan(plan.replace('"S"', '"T"')).folder.checked('plan.cover').service.run!.replications,
        );
    });

    it('are stopped between two evenings, by a message that is read meanwhile', async () => {
        const checked = openPlan(plan).folder.checked('plan.cover');
        const source = new CancellationTokenSource();
        const progress = telling((percent) => {
            if (percent === 25) {
                // As a message does that arrives.
                setImmediate(() => source.cancel());
            }
        });
        expect(await replicate(checked, source.token, progress)).toBe(false);
        expect(progress.told.at(-1)).toBe('done');
        expect(progress.told.slice(-2)).toEqual([25, 'done']);
    });

    it('are nothing where a plan asks for none', async () => {
        const { token } = new CancellationTokenSource();
        const progress = telling();
        const checked = openPlan(plan.replace('replications 20 seed 7', '')).folder.checked('plan.cover');
        expect(await replicate(checked, token, progress)).toBe(true);
        expect(progress.told).toEqual([]);
    });
});
