import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import * as documents from './documents.mjs';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const others = join(root, 'tests', 'bench', 'servers');
const installed = (path) => join(others, 'node_modules', ...path.split('/'));
const version = (name) => JSON.parse(readFileSync(installed(`${name}/package.json`), 'utf8')).version;

/** Installs the general-purpose servers where they are not yet, in a folder of their own. */
export function installServers() {
    const lock = readFileSync(join(others, 'package-lock.json'));
    const stamp = join(others, 'node_modules', '.of-lockfile');
    const hash = createHash('sha256').update(lock).digest('hex');
    if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== hash) {
        execFileSync('npm', ['ci', '--ignore-scripts', '--loglevel=error'], { cwd: others, stdio: 'inherit' });
        writeFileSync(stamp, hash);
    }
}

/** The built command as it is now, so that a build meanwhile changes nothing of what is measured. */
export function copyProgram(folder) {
    rmSync(folder, { recursive: true, force: true });
    for (const part of ['bin', 'dist', 'package.json']) {
        cpSync(join(root, 'packages', 'cli', part), join(folder, part), { recursive: true });
    }
    return join(folder, 'bin', 'underliner.cjs');
}

/** The framework's server as it comes, bundled as ours is. */
export async function makeBareServer(outfile) {
    const bare = join(root, 'tests', 'bench', 'bare');
    const generator = join(root, 'node_modules', 'langium-cli', 'bin', 'langium.js');
    execFileSync(process.execPath, [generator, 'generate'], { cwd: bare, stdio: 'pipe' });
    await build({
        entryPoints: [join(bare, 'server.ts')],
        outfile,
        bundle: true,
        minify: true,
        keepNames: true,
        format: 'cjs',
        platform: 'node',
        target: 'node20.19',
        mainFields: ['module', 'main'],
        define: { 'process.env.NODE_ENV': '"production"' },
        logLevel: 'error',
    });
}

/**
 * @param program ours
 * @param bareServer bundle of the framework's server
 * @param schema file of the schema for YAML and JSON
 * `keys` are places to type, by what is typed there: a pattern of which the first group is where, and the key.
 * `pull` is the request that asks for findings, of a server that is asked.
 */
export function serversWith(program, bareServer, schema) {
    const words = { pattern: /[a-z](?=[a-z-]{3})/g, key: 'x' };
    const figures = { pattern: /\d(?![\d-])/g, key: '1' };
    const texts = { pattern: /"[A-Z][a-z](?=[^"\n]{2})/g, key: 'x' };
    return [
        {
            id: 'underliner',
            title: 'Underliner',
            language: 'cover',
            extension: 'cover',
            command: [program, 'lsp', '--stdio'],
            document: documents.plan,
            keys: {
                names: { pattern: /[a-z]-[a-z](?=[a-z])/g, key: 'x' },
                figures,
                comments: { pattern: /\/\/ \w/g, key: 'x' },
                titles: texts,
                clauses: { pattern: /\n +[a-z]{2}(?=[a-z])/g, key: 'x' },
            },
        },
        {
            id: 'bare',
            title: 'bare Langium 4.2.1',
            language: 'bare',
            extension: 'bare',
            command: [bareServer, '--stdio'],
            document: documents.bare,
            keys: {
                names: { pattern: /[a-z]-[a-z](?=[a-z])/g, key: 'x' },
                figures,
                comments: { pattern: /\/\/ \w/g, key: 'x' },
                titles: texts,
                clauses: { pattern: /\n +[a-z]{2}(?=[a-z])/g, key: 'x' },
            },
        },
        {
            id: 'yaml',
            title: `yaml-language-server ${version('yaml-language-server')}`,
            language: 'yaml',
            extension: 'yaml',
            command: [installed('yaml-language-server/bin/yaml-language-server'), '--stdio'],
            settings: {
                yaml: {
                    validate: true,
                    hover: true,
                    completion: true,
                    format: { enable: true },
                    schemaStore: { enable: false },
                    schemas: { [schema]: '*.yaml' },
                },
            },
            document: documents.yaml,
            keys: {
                names: { pattern: /[a-z]-[a-z](?=[a-z])/g, key: 'x' },
                figures,
                comments: { pattern: /# \w/g, key: 'x' },
                titles: texts,
                clauses: { pattern: /\n +(?:- )?[a-z]{2}(?=[a-z]+:)/g, key: 'x' },
            },
        },
        {
            id: 'json',
            title: `vscode-json-languageserver ${version('vscode-json-languageserver')}, asked`,
            language: 'json',
            extension: 'json',
            command: [installed('vscode-json-languageserver/bin/vscode-json-languageserver'), '--stdio'],
            pull: 'json/validate',
            options: { provideFormatter: true },
            settings: {
                json: {
                    validate: { enable: true },
                    format: { enable: true },
                    schemas: [{ fileMatch: ['*.json'], schema: documents.schema }],
                },
            },
            document: documents.json,
            keys: {
                names: { pattern: /"[a-z]+(?=[a-z]+"[,\]])/g, key: 'x' },
                figures,
                titles: texts,
                clauses: { pattern: /\n +"[a-z]{2}(?=[a-z])/g, key: 'x' },
            },
        },
        {
            id: 'typescript',
            title: `typescript-language-server ${version('typescript-language-server')}, typescript ${version('typescript')}`,
            language: 'typescript',
            extension: 'ts',
            command: [installed('typescript-language-server/lib/cli.mjs'), '--stdio'],
            options: { tsserver: { path: installed('typescript/lib/tsserver.js') } },
            document: documents.typescript,
            keys: {
                names: { ...words, pattern: /dishes\.p(?=ush)/g },
                figures,
                comments: { pattern: /\/\/ \w/g, key: 'x' },
                titles: texts,
                clauses: { pattern: /\n +re(?=turn)/g, key: 'x' },
            },
        },
    ];
}
