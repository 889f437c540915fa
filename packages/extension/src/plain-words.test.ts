import { expect, it } from 'vitest';
import { plainWords } from './plain-words.js';

it('puts in quotes what Markdown would show as code', () => {
    expect(plainWords('There is no course `Soup`. It has `soup`, `main`.')).toBe(
        'There is no course “Soup”. It has “soup”, “main”.',
    );
    expect(plainWords('A single ` stays.')).toBe('A single ` stays.');
});
