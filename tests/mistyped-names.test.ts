import { describe, expect, it } from 'vitest';
import { check } from '../packages/language/src/check.js';
import { filesInMemory } from '../packages/language/src/plan/files.js';
import type { Occurrence } from '../packages/language/src/plan/types.js';
import { filesBelow } from './support/samples.js';

// Every name that stands in an example, one letter left out: it is found there, once, and the right name is offered.

const texts = filesBelow('examples/saltmarsh-hall');

/** Rules that may speak of a mistyped name. */
const NAMERS = ['unknown-name', 'chosen-dish-unknown', 'misspelt-word', 'unreadable-text'];

function usesIn(file: string): Occurrence[] {
    const { plan } = check(file, filesInMemory(texts));
    const uses = plan.readings
        .flatMap((reading) => reading.occurrences)
        .filter(({ role, name }) => role === 'uses' && name.length > 3);
    const byPlace = new Map(uses.map((use) => [`${use.origin.file}:${use.origin.start}`, use]));
    return [...byPlace.values()];
}

/** What is wrong with what is said of the mistyped name; empty where nothing is. */
function judge(file: string, { name, origin }: Occurrence): string[] {
    const text = texts[origin.file]!;
    const middle = Math.floor((origin.start + origin.end) / 2);
    const mistyped = { ...texts, [origin.file]: text.slice(0, middle) + text.slice(middle + 1) };
    const { findings, broken } = check(file, filesInMemory(mistyped));
    const said = findings.filter(({ rule }) => NAMERS.includes(rule));
    const where = `${origin.file}, \`${name}\``;
    const isOffered = said.some(({ fixes }) =>
        fixes.some(({ changes }) => changes.some((change) => 'words' in change && change.words.includes(name))),
    );
    return [
        ...broken.map(({ rule }) => `${where}: ${rule} breaks`),
        ...(said.length === 1
            ? []
            : [`${where}: ${said.length} findings: ${said.map(({ message }) => message).join(' ')}`]),
        ...(isOffered ? [] : [`${where}: the right name is not offered`]),
    ];
}

describe('a mistyped name', () => {
    it.each(['lantern-supper', 'table-of-eight', 'mess-night'])(
        'of %s is found once and the right one offered',
        (event) => {
            const file = `examples/saltmarsh-hall/${event}.cover`;
            const uses = usesIn(file);
            expect(uses.length).toBeGreaterThan(50);
            expect(uses.flatMap((use) => judge(file, use))).toEqual([]);
        },
        60_000,
    );
});

// An é is one character or two, as the keyboard or the page it was copied from has it (Unicode Standard Annex 15).
it('takes a name for the same in both of its Unicode forms', () => {
    const plan = (form: 'NFC' | 'NFD') => `event "S" { guests 8 { 1 vegetarian at ${'"Été"'.normalize(form)} seat 1 } }
room "R" 9 m by 9 m { table "Été": round 60 inch, 8 seats }
menu {
    course main {
        dish "Pâté" { contains nothing }
        pour "Rosé" 100 ml
    }
    toast "Host" after main, with ${'"Rosé"'.normalize(form)}
}
seating { "A. Reed" at ${'"Été"'.normalize(form)} seat 2 chooses ${'"Pâté"'.normalize(form)} }
`;
    const found = (form: 'NFC' | 'NFD') =>
        check('plan.cover', filesInMemory({ 'plan.cover': plan(form) })).findings.map(({ rule }) => rule);
    expect(found('NFD')).toEqual(found('NFC'));
    expect(found('NFC')).not.toEqual(expect.arrayContaining([expect.stringMatching(/unknown/)]));
});
