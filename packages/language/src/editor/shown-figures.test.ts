import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openPlan } from '../../../../tests/support/open-plan.js';
import { codeLenses } from './code-lens.js';
import { inlayHints } from './inlay-hints.js';
import { DEFAULT_SETTINGS, settingsOf } from './settings.js';

// Figures between and above the lines.

const example = (name: string): string =>
    readFileSync(new URL(`../../../../examples/saltmarsh-hall/${name}.cover`, import.meta.url), 'utf8');

const files = ['cupboard', 'house', 'long-gallery'].map((name) => `//- ${name}.cover\n${example(name)}`).join('');
const supper = openPlan(`${files}//- lantern-supper.cover\n${example('lantern-supper')}`);
const whole = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };

/** Each hint behind the words of its line. */
function hints(settings = DEFAULT_SETTINGS): string[] {
    const lines = supper.text.split('\n');
    return inlayHints(supper, whole, settings).map(
        ({ position, label }) => `${lines[position.line]!.slice(0, position.character).trim()} ‹${label as string}›`,
    );
}

describe('hints between the words', () => {
    it('tell when a course is served', () => {
        const soup = hints().find((hint) => hint.startsWith('course soup'));
        expect(soup).toMatch(/^course soup "Roast squash soup" ‹19:\d\d to (19|20):\d\d›$/);
        expect(hints().some((hint) => /^toast .* ‹2\d:\d\d›$/.test(hint))).toBe(true);
    });

    it('tell how many get a dish where the plan leaves it open, and the bottles to open', () => {
        const main = hints().filter((hint) => hint.startsWith('dish'));
        expect(main.some((hint) => /^dish "Braised chicken" is poultry for the rest ‹\d+ guests›$/.test(hint))).toBe(
            true,
        );
        expect(main.some((hint) => hint.includes('for 40 ‹'))).toBe(false);
        expect(hints().some((hint) => /^pour "Country red" .*‹\d+ bottles›$/.test(hint))).toBe(true);
    });

    it('tell how warm it is at the last guest, in the unit of the line', () => {
        expect(hints().some((hint) => /^served in soup-bowl .* at 6\d °C ‹\d+ °C at the last guest›$/.test(hint))).toBe(
            true,
        );
    });

    it('are switched off each kind for itself', () => {
        const all = hints().length;
        const kinds = ['times', 'counts', 'temperatures'] as const;
        const left = kinds.map((kind) => hints(settingsOf({ hints: { [kind]: false } })).length);
        expect(left.every((count) => count < all)).toBe(true);
        expect(left.reduce((sum, count) => sum + (all - count), 0)).toBe(all);
        expect(hints(settingsOf({ hints: { times: false, counts: false, temperatures: false } }))).toEqual([]);
    });

    it('keep to the lines asked for, and know nothing where nothing is computed', () => {
        const line = supper.text.split('\n').findIndex((each) => each.includes('course soup'));
        const one = { start: { line, character: 0 }, end: { line: line + 1, character: 0 } };
        expect(inlayHints(supper, one, DEFAULT_SETTINGS)).toHaveLength(1);
        expect(inlayHints(openPlan('menu { course soup {} }'), whole, DEFAULT_SETTINGS)).toEqual([]);
        expect(inlayHints(openPlan('event "S" { guests'), whole, DEFAULT_SETTINGS)).toEqual([]);
    });
});

describe('lines of figures above', () => {
    it('tell the fewest and the most where covers differ', () => {
        const { folder, path } = openPlan(`event "S" { guests 8 { 2 vegetarian } }
menu { course main {
    dish "Sirloin" is steak for the rest { served on dinner-plate   pour "Red" 4 fl oz into red-wine-glass }
    dish "Barley" is grain-main for vegetarian { served on dinner-plate }
} }`);
        expect(codeLenses({ folder, path }).at(1)!.command!.title).toBe(
            'laid at each place: 1 left, 1 right and 1 to 2 glasses',
        );
    });

    it('tell of guests, of the cover, and of what comes next', () => {
        const titles = codeLenses(supper).map(({ range, command }) => [
            supper.text.split('\n')[range.start.line]!.trim(),
            command!.title,
        ]);
        expect(titles[0]![0]).toContain('event');
        expect(titles[0]![1]).toMatch(/^84 guests · \d+ sorts of guests · \d+ covers · over at 2\d:\d\d$/);
        expect(titles[1]![1]).toMatch(/^laid at each place: \d left, \d right/);
        expect(titles[1]![1]).toMatch(/and \d( to \d)? glasses$/);
        const soup = titles.find(([line]) => line!.startsWith('course soup'));
        expect(soup![1]).toMatch(/^called 19:\d\d · cleared \d\d:\d\d · then Quince sorbet at \d\d:\d\d$/);
    });
});
