import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';

/** A process that makes much and keeps some of it for a while. @returns bytes the engine keeps for what was made last */
function youngAfter(first: string): number {
    const program = `
        import { getHeapSpaceStatistics } from 'node:v8';
        import { clearEarly } from 'underliner-language/node';
        ${first}
        let kept = [];
        for (let round = 0; round < 60; round++) {
            for (let n = 0; n < 20_000; n++) kept.push({ n, pair: [n, n + 1] });
            if (kept.length > 200_000) kept = [];
            await new Promise((resolve) => setImmediate(resolve));
        }
        console.log(getHeapSpaceStatistics().find(({ space_name }) => space_name === 'new_space').space_size);`;
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', program], {
        encoding: 'utf8',
    });
    expect(stderr).toBe('');
    return Number(stdout);
}

it('keeps half as much at most for what was made last as the engine would by itself', () => {
    const byItself = youngAfter('');
    expect(byItself).toBeGreaterThan(0);
    expect(youngAfter('clearEarly();')).toBeLessThanOrEqual(byItself / 2);
});
