import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const plan = readFileSync(join(root, 'examples/first-plan.cover'), 'utf8');

function underliner(folder: string, ...args: string[]): string {
    const command = join(root, 'packages/cli/bin/underliner.cjs');
    return spawnSync(process.execPath, [command, ...args], { cwd: folder, encoding: 'utf8' }).stdout;
}

it('shows the plan, and the warning that the command gives', () => {
    expect(readme).toContain(plan);
    expect(plan.split('\n').length).toBeLessThanOrEqual(21);
    expect(readme).toContain(underliner(root, 'check', 'examples/first-plan.cover').trimEnd());
});

it('shows the line that the fix writes, and the fix works', () => {
    const folder = mkdtempSync(join(tmpdir(), 'underliner-readme-'));
    try {
        copyFileSync(join(root, 'examples/first-plan.cover'), join(folder, 'plan.cover'));
        underliner(folder, 'check', '--fix', '--unsafe-fixes', 'plan.cover');
        const written = readFileSync(join(folder, 'plan.cover'), 'utf8')
            .split('\n')
            .filter((line) => !plan.split('\n').includes(line));
        expect(written.map((line) => line.trim())).toEqual(['eaten with salad-fork, brought with the course']);
        expect(readme).toContain(`\n${written[0]!.trim()}\n`);
        expect(underliner(folder, 'check', 'plan.cover')).not.toContain('warning');
    } finally {
        rmSync(folder, { recursive: true });
    }
});

it('links to files that exist, and names scripts that exist', () => {
    const links = [...readme.matchAll(/\]\(([^)#]+)\)/g)].map(([, path]) => path!);
    expect(links.filter((path) => !existsSync(join(root, path)))).toEqual([]);
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
        scripts: Record<string, string>;
    };
    for (const [, script] of readme.matchAll(/^ {4}npm (?:run )?(\w+)/gm)) {
        expect(Object.keys(scripts)).toContain(script);
    }
});
