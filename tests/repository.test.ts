import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const root = new URL('../', import.meta.url);

function read(path: string): string {
    return readFileSync(new URL(path, root), 'utf8');
}

describe('the repository', () => {
    it('keeps a lockfile that names no registry', () => {
        const lockfile = JSON.parse(read('package-lock.json')) as { packages: Record<string, { resolved?: string }> };
        const resolved = Object.values(lockfile.packages).flatMap((entry) => entry.resolved ?? []);
        expect(resolved.filter((place) => !place.startsWith('packages/'))).toEqual([]);
    });

    it('keeps one langium, one parser library and one protocol', () => {
        const { packages } = JSON.parse(read('package-lock.json')) as { packages: Record<string, { version: string }> };
        for (const name of ['langium', 'chevrotain', 'vscode-languageserver', 'vscode-uri']) {
            const places = Object.keys(packages).filter((place) => place.endsWith(`node_modules/${name}`));
            expect(places, name).toEqual([`node_modules/${name}`]);
        }
        expect(packages['node_modules/langium']?.version).toBe('4.2.1');
    });

    it('pins every dependency exactly', () => {
        for (const manifest of ['', 'packages/language/', 'packages/cli/', 'packages/extension/']) {
            const content = JSON.parse(read(`${manifest}package.json`)) as {
                dependencies?: Record<string, string>;
                devDependencies?: Record<string, string>;
            };
            const versions = Object.values({ ...content.dependencies, ...content.devDependencies });
            expect(versions.filter((version) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
        }
    });

    it('has every file that the extension manifest names', () => {
        const { contributes } = JSON.parse(read('packages/extension/package.json')) as {
            contributes: { languages: { configuration: string }[]; grammars: { path: string }[] };
        };
        const named = [
            ...contributes.languages.map((language) => language.configuration),
            ...contributes.grammars.map((grammar) => grammar.path),
        ];
        const extension = new URL('packages/extension/', root);
        expect(named.filter((path) => !existsSync(new URL(path, extension)))).toEqual([]);
    });
});
