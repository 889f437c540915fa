import { nearest } from './nearest.js';
import { defineRule } from './rule.js';
import { didYouMean, listed, quoted } from './wording.js';

/** The words that can stand where the reader took one for another, by the word it took it for. */
const WORDS: Readonly<Record<string, readonly string[]>> = {
    event: ['event', 'house', 'room'],
    menu: ['menu', 'team', 'seating'],
    course: ['course'],
    dish: ['dish'],
    fork: [
        'fork',
        'knife',
        'spoon',
        'glass',
        'bowl',
        'plate',
        'cup',
        'linen',
        'gear',
        'kind',
        'drink',
        'allergen',
        'ingredient',
        'diet',
        'code',
    ],
};

export default defineRule({
    id: 'misspelt-word',
    group: 'text',
    since: '0.1.0',
    title: 'A block whose first word is mistyped',
    why: 'The first word says what a block is. Until it is right the rest is read by guess.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'file',
    examples: {
        wrong: [{ text: '<|menue|> {\n    speech "Welcome", lasts 5 min\n}\n' }],
        right: [{ text: 'menu {\n    speech "Welcome", lasts 5 min\n}\n' }],
    },
    check({ plan, report }) {
        for (const { word, meant, origin } of plan.readings.flatMap((reading) => reading.misspelt)) {
            const words = WORDS[meant] ?? [meant];
            const near = nearest(word, words);
            report({
                at: origin,
                message: `${quoted(word)} starts no block.`,
                hint:
                    near.length > 0 ? didYouMean(near) : `A block here starts with ${listed(words.map(quoted), 'or')}.`,
                fixes: near.map((each) => ({
                    title: `Write ${quoted(each)}`,
                    safety: near.length === 1 ? 'safe' : 'unsafe',
                    preferred: near.length === 1,
                    changes: [{ do: 'replace', at: origin, words: each }],
                })),
            });
        }
    },
});
