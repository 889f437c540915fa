import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import type { MarkupContent } from 'vscode-languageserver';
import { CLIENT, openPlan } from '../../../../tests/support/open-plan.js';
import { hoverAt } from './hover.js';

function hoverOf(written: string, client = CLIENT) {
    const plan = openPlan(written);
    const found = hoverAt(plan, plan.offset, client);
    return found && { ...(found.contents as MarkupContent), on: found.range && plan.words(found.range) };
}

const hover = (written: string): string | undefined => hoverOf(written)?.value;

const example = (name: string): string =>
    readFileSync(new URL(`../../../../examples/saltmarsh-hall/${name}.cover`, import.meta.url), 'utf8');
const files = ['cupboard', 'house', 'long-gallery'].map((name) => `//- ${name}.cover\n${example(name)}`).join('');

/** The lantern supper with the cursor at the mark in some of its words. */
function inSupper(marked: string, client = CLIENT) {
    const supper = example('lantern-supper');
    const words = marked.replace('<|>', '');
    expect(supper.split(words)).toHaveLength(2);
    return hoverOf(`${files}//- lantern-supper.cover\n${supper.replace(words, marked)}`, client)!;
}

describe('hover', () => {
    it('tells a piece: its size, what it is for, how many there are and are needed', () => {
        const said = hover('house "Hall" { own 30 fish-f<|>ork }');
        expect(said).toContain('fork fish-fork');
        expect(said).toMatch(/Length \d+.* mm/);
        expect(said).toContain('For `fish`');
        expect(said).toContain('The house owns 30.');
        expect(said).toMatch(/Source: table-service/);
        const needed = hover(
            '//- house.cover\nhouse "Hall" { own 30 fish-f<|>ork }\n//- supper.cover\nuse "house.cover"\nevent "S" { guests 12 }\nmenu { course fish "Hake" { eaten with fish-fork } }\n',
        );
        expect(needed).toContain('The house owns 30; the evening needs 12, without spares.');
    });

    it('tells a kind, a drink, an allergen, a diet and a local code', () => {
        const kind = hover('menu { course clear-s<|>oup { } }');
        expect(kind).toContain('A sort of `soup`');
        expect(kind).toMatch(/Eaten with .*`bouillon-spoon`/);
        expect(kind).toMatch(/°C \(\d+ °F\)/);
        expect(hover('menu { course soup { pour "Red" is light-red-w<|>ine } }')).toMatch(/Wanted .*°C/);
        expect(hover('menu { course soup { contains tree-n<|>uts } }')).toMatch(/Covers .*`almond`/);
        expect(hover('event "S" { guests 8 { 2 veg<|>an } }')).toMatch(/Excludes /);
        // What it is called is not said twice.
        expect(hover('menu { course soup { contains whe<|>at } }')).not.toContain('*wheat*');
        expect(hover('menu { course soup { contains so<|>y } }')).toContain('*soybeans*');
        expect(hover('house "H" { local code us-m<|>odel }')).toMatch(/hot-holding: \d+ °[CF]/);
    });

    it('tells a custom, what its answers mean and which is in force', () => {
        const said = hover('house "H" { laying { over<|>flow: brought } }');
        expect(said).toContain('- `reported`:');
        expect(said).toContain('This house lays `brought`; the default is `reported`.');
        expect(hover('house "H" { laying { overflow: bro<|>ught } }')).toMatch(/overflow: brought/);
    });

    it('gives a figure in the other units, outside of texts and comments', () => {
        expect(hover('menu { course soup { served at 6<|>4 °C } }')).toContain('64 °C is 147 °F.');
        expect(hover('menu { course soup { served at 147 °<|>F } }')).toContain('147 °F is 63.9 °C.');
        expect(hover('menu { course soup { served in soup-bowl, portion 8 fl<|> oz } }')).toContain(
            '8 fl oz is 237 ml.',
        );
        expect(hover('menu { course soup "At 6<|>4 °C" { } }')).not.toContain('is 147');
        expect(hover('// 6<|>4 °C\n')).toBeUndefined();
    });

    it('says why a finding matters, and where that stands', () => {
        const said = hover('house "Hall" { own 4 dinner-f<|>rok }');
        expect(said).toContain('[unknown-name](underliner-rule:/unknown-name.md)');
        expect(said).toContain('*Source: ');
    });

    it('tells the other words for a name', () => {
        expect(hover('menu { course soup { contains pra<|>wn } }')).toContain('Other words for it: shrimp.');
        expect(hover('event "S" { guests 9 { 2 gluten-f<|>ree } }')).toContain('Other words for it: celiac, coeliac,');
        expect(hover('house "Hall" { own 9 service-p<|>late }')).toContain('Other words for it: charger, show-plate.');
        expect(hover('drink fizz is sparkling-w<|>ine')).toContain('Other words for it: champagne,');
    });

    it('explains a rule where a house sets it', () => {
        expect(hover('house "H" { rule three-per<|>-side is off because "x" }')).toMatch(/\*\*three-per-side\*\*/);
    });

    it('draws a piece, for clients that show pictures', () => {
        const said = hover('house "Hall" { own 30 fish-f<|>ork }')!;
        const [, encoded] = /!\[fish-fork from above\]\(data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)\)/.exec(said)!;
        const svg = Buffer.from(encoded!, 'base64').toString();
        expect(svg).toMatch(/^<svg .*<title>fish fork<\/title>.*191 mm long/);
        expect(said).not.toMatch(/<(svg|img|br)/);
        const words = hoverOf('house "Hall" { own 30 fish-f<|>ork }', { ...CLIENT, showsPictures: false })!;
        expect(words.value).toBe(said.replace(/!\[.*\n\n/, ''));
        expect(hover('house "H" { own 2 table<|>cloth }')).not.toContain('data:image');
    });

    it('tells a piece its stock and its use over the evening', () => {
        const spoon = inSupper('eaten with soup-<|>spoon warmed').value;
        expect(spoon).toMatch(/The house owns \d+; the evening needs 84, with \d+ spare \d+ are pulled\./);
        expect(spoon).toMatch(/- 84 for Roast squash soup: warmed, brought, in use 19:\d\d to 19:\d\d/);
        const fork = inSupper('wash salad-<|>fork after appetizer').value;
        expect(fork).toMatch(/- 84 for Smoked beet and curd: laid before guests sit, in use 19:\d\d/);
        expect(fork).toMatch(
            /- \d+ washed after Smoked beet and curd for Leaves from the walled garden, back at \d\d:\d\d, wanted at \d\d:\d\d/,
        );
    });

    it('tells a temperature what becomes of it at the guest, and why', () => {
        const soup = inSupper('at 62<|> °C, portion 250 ml');
        expect(soup.on).toBe('62 °C');
        expect(soup.value).toContain('62 °C is 144 °F.');
        expect(soup.value).toContain('**Roast squash soup** in front of the guest');
        expect(soup.value).toMatch(/- last guest \(T\d+\), 2\.\d min on the way: about 65 °C, between 61 and 68/);
        expect(soup.value).toContain('- wanted: 62 °C or hotter');
        expect(soup.value).toMatch(
            /Why: it leaves the pass at 78 °C, its vessel is at 60 °C, it is carried \w+ and the room is at/,
        );
        expect(soup.value).toMatch(/One temperature for the liquid .* Error: the larger of 1\.5 °C and 35 %/);
        expect(soup.value).toContain('They do not replace a calibrated probe thermometer');
        expect(inSupper('leaves the pass at 7<|>8 °C').value).toContain('- wanted: 62 °C or hotter');
        expect(inSupper('held at 7<|>5 °C').value).toMatch(
            /- at any guest: between 45 and 61 °C[^]*No model: what plates are known to lose/,
        );
        expect(inSupper('soup-spoon warmed to 4<|>2 °C').value).toMatch(
            /last guest: about \d\d °C, between \d\d and \d\d/,
        );
        expect(inSupper('white-wine-glass at <|>9 °C').value).toMatch(
            /just poured from a bottle at 9 °C: about \d+ °C/,
        );
        expect(inSupper('cook to 5<|>4 °C').value).not.toContain('in front of the guest');
    });

    it('says temperatures in the unit of the line', () => {
        const said = hover(`event "S" { seated 19:00 guests 8 }
room "R" { table T1: round 60 inch, 8 seats }
team { servers 1 }
menu { course soup "Leek" { served in soup-plate at 14<|>5 °F, portion 250 ml  leaves the pass at 172 °F } }`);
        expect(said).toMatch(/last guest \(T1\), \d\.\d min on the way: about 1\d\d °F, between 1\d\d and 1\d\d/);
        expect(said).toContain('wanted: 145 °F or hotter');
    });

    it('tells a course its times, its counts and how warm it arrives', () => {
        const main = inSupper('course main "Main <|>course"');
        expect(main.on).toBe('"Main course"');
        expect(main.value).toMatch(/3 dishes, course 4 of 7\.[^]*Eaten in 35 min\./);
        expect(main.value).toMatch(
            /- called 19:\d\d\n- set down \d\d:\d\d to \d\d:\d\d\n- cleared \d\d:\d\d to \d\d:\d\d\n- then Leaves/,
        );
        expect(main.value).toMatch(/- plates: 40 Grilled sirloin, \d+ Braised chicken and \d+ Barley-stuffed squash/);
        expect(main.value).toContain('- Braised chicken at the guest: 45 to 61 °C, estimated');
        expect(inSupper('course so<|>up "Roast').value).toMatch(
            /at the first guest 71 °C, at the last 65 °C, estimated/,
        );
        const chicken = inSupper('dish "Braised <|>chicken"');
        expect(chicken.value).toContain('- 37 plates: 37 with no special needs');
        const squash = hover(`event "S" { guests 8 { 2 without milk  1 vegetarian at T1 seat 1  1 vegetarian } }
menu { course main { dish "Squ<|>ash" is grain-main for the rest { contains nothing } } }`);
        expect(squash).toContain('- 8 plates: 2 without milk, 2 vegetarian and 4 with no special needs');
        expect(inSupper('coffee after<|> dessert').value).toMatch(/set down 21:\d\d to 2\d:\d\d/);
        expect(inSupper('topped up until dess<|>ert').value).toContain('course 7 of 7');
    });

    it('tells a range of tables once', () => {
        const range = hover('room "R" { table T<|>1 to T9: round 60 inch, 8 seats }')!;
        expect(range.match(/```cover/g)).toHaveLength(1);
    });

    it('gives words alone to clients without Markdown', () => {
        const { kind, value } = inSupper('at 62<|> °C, portion 250 ml', { ...CLIENT, takesMarkdown: false });
        expect(kind).toBe('plaintext');
        expect(value).toContain('Roast squash soup in front of the guest');
        expect(value).not.toMatch(/\*\*|```|\\|data:/);
        const piece = hoverOf('house "Hall" { own 30 fish-f<|>ork }', { ...CLIENT, takesMarkdown: false })!;
        expect(piece.value).toMatch(/^fork fish-fork\n/);
        expect(piece.value).not.toMatch(/data:|!\[/);
    });

    it('is silent about words of the language', () => {
        expect(hover('hou<|>se "H" { }')).toBeUndefined();
    });
});
