// docs/language.md against the grammar: every clause is on it, and every example is read as the clause it is given for.
import { readFileSync } from 'node:fs';
import { AstUtils } from 'langium';
import { describe, expect, it } from 'vitest';
import { CLAUSE_NOTES } from '../packages/language/src/grammar/clause-notes.js';
import { parseText } from '../packages/language/src/grammar/parse.js';

const read = (path: string): string => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');
const page = read('docs/language.md');
const grammar = read('packages/language/src/grammar/cover.langium');

/** Where a clause may stand; the first place that reads it as what it is counts. */
const PLACES: readonly ((clause: string) => string)[] = [
    (clause) => clause,
    (clause) => `event "Supper" { ${clause} }`,
    (clause) => `event "Supper" { guests 20 ${clause} }`,
    (clause) => `event "Supper" { guests 20 { ${clause} } }`,
    (clause) => `seating { "A. Reeve" ${clause} }`,
    (clause) => `menu { ${clause} }`,
    (clause) => `menu { course main "Lamb" { ${clause} } }`,
    (clause) => `menu { course main { dish "Lamb" ${clause} { } } }`,
    (clause) => `house "Saltmarsh Hall" { ${clause} }`,
    (clause) => `room "Long gallery" 18 m by 11 m { ${clause} }`,
    (clause) => `team { ${clause} }`,
];

function readsAs(clause: string, type: string): boolean {
    return PLACES.some((place) => {
        const { tree, problems } = parseText(place(clause));
        return problems.length === 0 && AstUtils.streamAst(tree).some(({ $type }) => $type === type);
    });
}

/** The parts of what it belongs to that a clause may stand in. */
function standsIn(example: string, type: string): Set<string | undefined> {
    const trees = PLACES.map((place) => parseText(place(example))).filter(({ problems }) => problems.length === 0);
    const nodes = trees.flatMap(({ tree }) => AstUtils.streamAst(tree).toArray());
    return new Set(nodes.filter(({ $type }) => $type === type).map((node) => node.$containerProperty));
}

describe('the page of the language', () => {
    it.each(Object.entries(CLAUSE_NOTES))('has %s, with an example that is read as it', (type, { says, example }) => {
        expect(page).toContain(`: ${says}. \`${example}\``);
        expect(readsAs(example, type), example).toBe(true);
    });

    it('leaves no clause of the grammar out', () => {
        const clauses = [...grammar.matchAll(/\{infer (\w+)\}/g)].map(([, name]) => name!);
        expect(clauses.length).toBeGreaterThan(100);
        expect(clauses.filter((name) => !(name in CLAUSE_NOTES) && !/^Custom(Figure|Choice)$/.test(name))).toEqual([]);
    });

    it('tells what stands before the braces of a drink, a sauce, bread or coffee from what stands in them', () => {
        const from = page.slice(page.indexOf('## What goes with it'), page.indexOf('## The house'));
        const lists = from.split('\n\n').filter((part) => part.startsWith('- '));
        const before = from.split('\n\n').filter((part) => /^(Behind|In the|In its) .*:$/.test(part));
        expect(before).toHaveLength(lists.length);
        const faults = lists.flatMap((list, index) => {
            const place = before[index]!.startsWith('Behind') ? 'phrases' : 'clauses';
            return Object.entries(CLAUSE_NOTES)
                .filter(([, { says, example }]) => list.includes(`: ${says}. \`${example}\``))
                .flatMap(([type, { example }]) => (standsIn(example, type).has(place) ? [] : `${type} in ${place}`));
        });
        expect(faults).toEqual([]);
    });
});
