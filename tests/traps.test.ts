import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lacking } from './support/evidence.js';

// docs/traps.md says which test keeps each trap shut: here it is made sure that each of them is there.

/** How many traps each part of the page has at least. */
const PARTS = { P: 31, E: 20, L: 27 } as const;

interface Trap {
    readonly number: string;
    readonly evidence: readonly string[];
}

const page = readFileSync(new URL('../docs/traps.md', import.meta.url), 'utf8');
const traps: readonly Trap[] = [...page.matchAll(/^\| ([PEL]\d+) \| .*? \| (.*) \|$/gm)].map(
    ([, number, evidence]) => ({
        number: number!,
        evidence: evidence!.split('<br>').filter((each) => each !== ''),
    }),
);

describe('docs/traps.md', () => {
    it.each(Object.entries(PARTS))(
        'numbers the traps of part %s one after the other, and has them all',
        (part, most) => {
            const own = traps.map(({ number }) => number).filter((number) => number.startsWith(part));
            expect(own).toEqual(own.map((_, index) => `${part}${index + 1}`));
            expect(own.length).toBeGreaterThanOrEqual(most);
        },
    );

    it('names a test for each, and each of them is there', () => {
        const missing = traps.flatMap(({ number, evidence }) =>
            evidence.flatMap((each) => lacking(each) ?? []).map((what) => `${number}: ${what}`),
        );
        expect(missing).toEqual([]);
        const untested = traps.filter(
            ({ evidence }) => !evidence.some((each) => /\.(test|e2e)\.ts`|^`npm run /.test(each)),
        );
        expect(untested.map(({ number }) => number)).toEqual([]);
    });
});
