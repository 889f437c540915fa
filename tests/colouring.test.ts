import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import type * as oniguruma from 'vscode-oniguruma';
import type * as textmate from 'vscode-textmate';

// How the extension's colouring grammar cuts a text, by the library that the editor uses.

// Modules of the old kind, which have no names to import.
const require = createRequire(import.meta.url);
const { createOnigScanner, createOnigString, loadWASM } = require('vscode-oniguruma') as typeof oniguruma;
const { INITIAL, parseRawGrammar, Registry } = require('vscode-textmate') as typeof textmate;

const root = new URL('../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const SYNTAX = 'packages/extension/syntaxes/cover.tmLanguage.json';

let grammar: textmate.IGrammar;
beforeAll(async () => {
    const wasm = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
    await loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength));
    const registry = new Registry({
        onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
        loadGrammar: () => Promise.resolve(parseRawGrammar(read(SYNTAX), 'cover.tmLanguage.json')),
    });
    grammar = (await registry.loadGrammar('source.cover'))!;
});

interface Coloured {
    readonly words: string;
    /** The innermost scope; absent for what is not coloured. */
    readonly scope?: string;
}

function colour(text: string): readonly (readonly Coloured[])[] {
    let state = INITIAL;
    return text.split('\n').map((line) => {
        const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
        state = ruleStack;
        return tokens.map(({ startIndex, endIndex, scopes }) => ({
            words: line.slice(startIndex, endIndex),
            ...(scopes.length > 1 ? { scope: scopes.at(-1)!.replace(/\.cover$/, '') } : {}),
        }));
    });
}

/** Each line, and under it its coloured parts. */
function shown(text: string): string {
    const lines = colour(text).map((parts) => {
        const line = parts.map(({ words }) => words).join('');
        const under = parts.flatMap(({ words, scope }) => (scope ? [`        ${scope}: ${words.trim()}`] : []));
        return [line, ...under].join('\n');
    });
    return `${lines.join('\n').trimEnd()}\n`;
}

describe('the colouring', () => {
    it('of every sort of word is as recorded', async () => {
        await expect(shown(read('tests/colouring/every-sort.cover'))).toMatchFileSnapshot('colouring/every-sort.txt');
    });

    it('never takes a part of a name for a word of the language', () => {
        for (const example of ['lantern-supper', 'mess-night', 'house']) {
            const text = read(`examples/saltmarsh-hall/${example}.cover`);
            for (const [index, line] of colour(text).entries()) {
                for (const [place, { words, scope }] of line.entries()) {
                    const before = line[place - 1]?.words ?? '';
                    const after = line[place + 1]?.words ?? '';
                    const isCut = /[\p{L}\p{N}]-?$/u.test(before) && /^[\p{L}-]/u.test(words);
                    const goesOn = /^-[\p{L}\p{N}]/u.test(after) && /\p{L}$/u.test(words);
                    expect(
                        scope?.startsWith('keyword') && (isCut || goesOn),
                        `${example}:${index + 1} ${words}`,
                    ).not.toBe(true);
                }
            }
        }
    });

    it('knows every word that begins a line of an example', () => {
        const text = read('examples/saltmarsh-hall/lantern-supper.cover');
        const unknown = colour(text)
            .map((line) => line.find(({ words }) => words.trim() !== ''))
            .filter((first) => first !== undefined && /^\s*[a-z]/.test(first.words) && first.scope === undefined);
        expect(unknown).toEqual([]);
    });
});
