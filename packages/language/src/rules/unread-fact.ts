import { CODE_FIGURES, MATERIAL_WORDS, PIECE_FLAGS, PIECE_MEASURES } from '../plan/fact-words.js';
import type { Dimension } from '../plan/quantity.js';
import type { Stranger } from '../plan/types.js';
import { nearest } from './nearest.js';
import { defineRule } from './rule.js';
import { didYouMean, listed, quoted } from './wording.js';

export default defineRule({
    id: 'unread-fact',
    group: 'text',
    since: '0.1.0',
    title: 'A measure of a piece or a figure of a code that nothing reads',
    why: 'A plate whose width stands under a mistyped word is taken for a plate of usual width, and a code whose figure does for one that gives none. A material of the house’s own is let be.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'file',
    examples: {
        wrong: [
            { title: 'A letter too few', text: 'plate tide-plate {\n    <|acros|> 290 mm\n    porcelain 700 g\n}\n' },
            { title: 'A word nothing is computed with', text: 'glass reed-glass {\n    <|contents|> 300 ml\n}\n' },
            {
                title: 'A weight of nobody knows what',
                text: 'plate tide-plate {\n    across 290 mm\n    <|weight|> 700 g\n}\n',
            },
            {
                title: 'A figure of a code',
                text: 'code harbour {\n    <|hot-holdng|> 60 °C\n    cold-holding 5 °C\n}\n',
            },
            {
                title: 'A measure without its figure',
                text: 'plate tide-plate {\n    <|across|>\n    porcelain 700 g\n}\n',
            },
            { title: 'A bare word', text: 'glass reed-glass {\n    holds 300 ml\n    <|stm|>\n}\n' },
        ],
        right: [
            { text: 'plate tide-plate {\n    across 290 mm\n    porcelain 700 g\n}\n' },
            { text: 'code harbour {\n    hot-holding 60 °C\n    cold-holding 5 °C\n}\n' },
            {
                title: 'Materials and words of the house’s own',
                text: 'gear salt-board {\n    driftwood 900 g\n    heirloom\n}\n',
            },
        ],
    },
    check({ plan, report }) {
        for (const stranger of plan.readings.flatMap((reading) => reading.strangers)) {
            const { word, of, size, origin } = stranger;
            if (!size && Object.hasOwn(PIECE_MEASURES, word)) {
                report({
                    at: origin,
                    message: `${quoted(word)} stands without its figure.`,
                    hint: `Write the figure behind it${PIECE_MEASURES[word] === 'count' ? '' : ', with its unit'}.`,
                });
                continue;
            }
            const near = nearest(word, wordsFor(stranger));
            if (near.length === 0 && mayBeItsOwn(stranger)) {
                continue;
            }
            report({
                at: origin,
                // A fact of the house's own harms nobody.
                severity: near.length > 0 ? undefined : 'warning',
                message: size
                    ? `${quoted(word)} is no ${of === 'piece' ? 'measure of a piece' : 'figure of a code'}: its ${size.written} counts for nothing.`
                    : `No piece is described with ${quoted(word)}.`,
                hint: near.length > 0 ? didYouMean(near) : hintFor(stranger),
                fixes: near.map((each) => ({
                    title: `Write ${quoted(each)}`,
                    safety: 'unsafe',
                    preferred: near.length === 1,
                    changes: [{ do: 'replace', at: origin, words: each }],
                })),
            });
        }
    },
});

const SORTS: Partial<Record<Dimension, string>> = {
    length: 'A length',
    volume: 'A content',
    share: 'A share',
    temperature: 'A temperature',
    time: 'A time',
    mass: 'A weight',
};

function sortOf({ of, size }: Stranger): string {
    return `${(size?.unit && SORTS[size.dimension]) ?? 'A figure'} of a ${of}`;
}

/** What figures of the same sort stand under; of any sort, where no unit tells. */
function measuresFor({ of, size }: Stranger): readonly string[] {
    return Object.entries(of === 'piece' ? PIECE_MEASURES : CODE_FIGURES)
        .filter(([, dimension]) => size?.unit === undefined || dimension === size.dimension)
        .map(([word]) => word);
}

/** Every word that may be meant. */
function wordsFor(stranger: Stranger): readonly string[] {
    const { of, size } = stranger;
    if (!size) {
        return [...PIECE_FLAGS, ...MATERIAL_WORDS];
    }
    const isBare = size.unit === undefined;
    return [
        ...measuresFor(stranger),
        ...(of === 'piece' && (isBare || size.dimension === 'mass') ? MATERIAL_WORDS : []),
        ...(of === 'piece' && isBare ? ['tines'] : []),
    ];
}

/** What one may write for a weight, which is computed with only where one knows of what it is. */
const WEIGHTS = ['mass', 'weight', 'weighs'];

function hintFor(stranger: Stranger): string | undefined {
    if (WEIGHTS.includes(stranger.word)) {
        return 'Write the weight behind what the piece is made of, such as `porcelain 700 g`.';
    }
    const words = measuresFor(stranger);
    return words.length > 0 ? `${sortOf(stranger)} is ${listed(words.map(quoted), 'or')}.` : undefined;
}

/** Materials nobody can list, nor what a house says of its pieces in a bare word. */
function mayBeItsOwn({ word, of, size }: Stranger): boolean {
    return of === 'piece' && (!size || (size.dimension === 'mass' && !WEIGHTS.includes(word)));
}
