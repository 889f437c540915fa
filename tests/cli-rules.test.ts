import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { explain, rules } from 'underliner-language';
import { expect, test } from 'vitest';

// The command line tells of the rules what their own files say.

function underliner(...args: string[]): string {
    const program = join(import.meta.dirname, '../packages/cli/bin/underliner.cjs');
    return spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', env: {} }).stdout;
}

test('explain prints the explanation of each rule asked for', () => {
    const [first, second] = rules;
    expect(underliner('explain', first!.id)).toBe(explain(first!));
    expect(underliner('explain', second!.id, first!.id)).toBe(`${explain(second!)}\n${explain(first!)}`);
});

test('rules lists every rule once, under its group', () => {
    const listed = underliner('rules').split('\n');
    let group = '';
    const found = new Map<string, string>();
    for (const line of listed.filter((line) => line !== '')) {
        const [, id] = /^ {2}([a-z-]+) +(?:error|warning|info|hint) {2}/.exec(line) ?? [];
        if (id === undefined) {
            group = line;
        } else {
            expect(found.has(id)).toBe(false);
            found.set(id, group);
        }
    }
    expect(found).toEqual(new Map(rules.map(({ id, group }) => [id, group])));
});

test('rules gives programs the same', () => {
    const listed = JSON.parse(underliner('rules', '--format', 'json')) as { id: string; title: string }[];
    expect(listed.map(({ id }) => id).sort()).toEqual(rules.map(({ id }) => id).sort());
    expect(listed.every(({ title }) => title !== '')).toBe(true);
});
