import { spawn } from 'node:child_process';
import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const command = join(import.meta.dirname, '../packages/cli/bin/underliner.cjs');
const PLAN = `event "Lunch" { date 2026-06-20  zone America/Halifax  seated 12:30  guests 8 }
menu {
    course vegetable-main "Squash" {
        served on dinner-plate warmed at 62 °C
        lasts 20 min
        contains wheat
    }
}
`;

it('checks again when a file changes, is replaced, goes and comes back, and stops cleanly', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'underliner-watch-'));
    const path = join(folder, 'lunch.cover');
    writeFileSync(path, PLAN);
    const child = spawn(process.execPath, [command, 'check', '--watch', 'lunch.cover'], { cwd: folder });
    let said = '';
    let rounds = 0;
    const seen = (chunk: Buffer): void => {
        said += chunk.toString();
        rounds = said.split('Watching for changes').length - 1;
    };
    child.stdout.on('data', seen);
    child.stderr.on('data', seen);
    /** Waits for the round after `change`, and gives what it said. */
    const roundAfter = async (change: () => void): Promise<string> => {
        const before = rounds;
        const from = said.length;
        change();
        while (rounds === before) {
            await new Promise((resolve) => setTimeout(resolve, 20));
        }
        await new Promise((resolve) => setTimeout(resolve, 300));
        return said.slice(from);
    };
    try {
        expect(await roundAfter(() => undefined)).toContain('nothing found');
        expect(await roundAfter(() => writeFileSync(path, PLAN.replace('dinner-plate', 'diner-plate')))).toContain(
            '`dinner-plate`',
        );
        const replaced = await roundAfter(() => {
            writeFileSync(`${path}~`, PLAN);
            renameSync(`${path}~`, path);
        });
        expect(replaced).toContain('nothing found');
        expect(await roundAfter(() => rmSync(path))).toContain('There is no file `lunch.cover`');
        expect(await roundAfter(() => writeFileSync(path, PLAN))).toContain('nothing found');
        const code = new Promise((resolve) => child.once('exit', resolve));
        child.kill('SIGINT');
        expect(await code).toBe(0);
    } finally {
        child.kill('SIGKILL');
        rmSync(folder, { recursive: true, force: true });
    }
});
