import { expect, it } from 'vitest';
import { check } from '../check.js';
import { filesInMemory } from '../plan/files.js';

// A fixture can't show it: what the fixture expects would stand inside the comment.
it('finds a comment that does not close where it opens, and nothing that follows from it', () => {
    const text =
        'event "Harbour lunch" {\n    date 2026-10-17\n    /* zone America/Halifax\n    guests 24\n}\nmenu { }\n';
    const { findings } = check('lunch.cover', filesInMemory({ 'lunch.cover': text }));
    expect(findings.map(({ rule, at }) => [rule, text.slice(at.start, at.end)])).toEqual([['written-otherwise', '/*']]);
});
