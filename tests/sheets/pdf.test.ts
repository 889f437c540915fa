import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Element, Nodes, Root } from 'hast';
import { fromHtml } from 'hast-util-from-html';
import { describe, expect, it } from 'vitest';
import { check, filesInMemory, sheets, whatIf, type Paper, type SheetFile } from 'underliner-language';
import { sheetPdf } from '../../packages/cli/src/pdf/sheet-pdf.js';
import { EVENINGS } from './evenings.js';
import { readPdf, type Part, type ReadPdf } from './read-pdf.js';
import { workspace } from './workspace.js';

// The PDF of each sheet, read by PDF.js, against its page of HTML, read by parse5.

const { resolve } = createRequire(import.meta.url);
const font = (name: string): Uint8Array => readFileSync(resolve(`@expo-google-fonts/noto-sans/${name}`));
const letters = { regular: font('400Regular/NotoSans_400Regular.ttf'), bold: font('700Bold/NotoSans_700Bold.ttf') };

const PAPER = { a4: [595.28, 841.89], letter: [612, 792] } as const;
/** The least margin of any sheet, pt. */
const MARGIN = (11 / 25.4) * 72;

function made(evening: string): SheetFile[] {
    const checked = check(`${evening}.cover`, workspace);
    const first = checked.plan.menu!.courses[0]!.title;
    const late = whatIf(checked, { underway: { minutes: 20 * 60, done: first } });
    return [...sheets(checked), ...(typeof late === 'string' ? [] : sheets(late.checked))];
}

const printed = ({ sheet, foot }: SheetFile, paper: Paper = 'a4') => sheetPdf(sheet, foot, { paper, letters });

/** The words of a page as one string without spaces: lines are broken elsewhere. */
const tight = (text: string): string => text.replace(/[\s•]+/g, '');

function wordsOfHtml({ html }: SheetFile): string {
    const isLeftOut = ({ tagName }: Element): boolean => ['head', 'footer', 'title', 'desc'].includes(tagName);
    const words = (node: Nodes | Root): string => {
        if (node.type === 'text') {
            return node.value;
        }
        return 'children' in node && !(node.type === 'element' && isLeftOut(node))
            ? node.children.map(words).join(' ')
            : '';
    };
    return tight(words(fromHtml(html)));
}

const wordsOfPdf = ({ pages }: ReadPdf): string =>
    tight(pages.flatMap(({ written }) => written.filter(({ isAside }) => !isAside).map(({ text }) => text)).join(''));

const partsIn = (parts: readonly Part[]): Part[] => parts.flatMap((part) => [part, ...partsIn(part.parts)]);

describe.each(EVENINGS)('the PDF sheets of %s', (evening) => {
    // The sheets of servers are made alike: the first one stands for all.
    const all = made(evening).filter(({ name }) => !/^server-(?!1$)/.test(name));

    it('say what the pages of HTML say, in 12 pt and more, inside the margins', async () => {
        expect(all.length).toBeGreaterThan(8);
        for (const [index, file] of all.entries()) {
            const paper = index % 2 === 0 ? 'a4' : 'letter';
            const pdf = await readPdf((await printed(file, paper)).bytes);
            expect(wordsOfPdf(pdf), file.name).toBe(wordsOfHtml(file));
            for (const { width, height, written } of pdf.pages) {
                expect([width, height].map(Math.round)).toEqual(PAPER[paper].map(Math.round));
                const wrong = written.filter(
                    ({ text, size, left, right }) =>
                        text.trim() !== '' && (size < 11.99 || left < MARGIN - 1 || right > width - MARGIN + 1),
                );
                expect({ sheet: file.name, wrong }).toEqual({ sheet: file.name, wrong: [] });
            }
        }
    });

    it('give the captain one page, and the card with the new times another', async () => {
        const one = all.filter(({ name }) => ['captain', 'running-late'].includes(name));
        expect(one.length).toBe(2);
        for (const file of one) {
            for (const paper of ['a4', 'letter'] as const) {
                const { pages } = await readPdf((await printed(file, paper)).bytes);
                expect(pages.length, `${file.name} ${paper}`).toBe(1);
            }
        }
    });
});

describe('the PDF sheets of the lantern supper', () => {
    const all = made(EVENINGS[0]!);
    const read = async (name: string): Promise<ReadPdf> =>
        readPdf((await printed(all.find((file) => file.name === name)!)).bytes);

    it('say event, day, revision and the number of the page at the foot of every page', async () => {
        const { pages } = await read('kitchen');
        expect(pages.length).toBeGreaterThan(2);
        pages.forEach(({ written }, index) => {
            const aside = written.filter(({ isAside }) => isAside).map(({ text }) => text);
            expect(aside).toContain('Lantern night supper · Saturday 17 October 2026 · revision 4 · Kitchen');
            expect(aside).toContain(`${index + 1} of ${pages.length}`);
        });
    });

    it('repeat the head of a table on every page that it goes on to', async () => {
        const { pages } = await read('kitchen');
        const heads = pages.map(
            ({ written }) => written.filter(({ text, isAside }) => isAside && text === 'Dish, and for whom').length,
        );
        expect(heads.slice(0, 2)).toEqual([0, 1]);
    });

    it('are tagged for screen readers: language, title, headings, heads of tables, what pictures show', async () => {
        const pdf = await read('server-3');
        expect(pdf).toMatchObject({ title: 'Server 3: Lantern night supper', lang: 'en', isTagged: true });
        const parts = partsIn(pdf.pages.flatMap((page) => page.parts));
        const roles = parts.map(({ role }) => role);
        expect(roles.filter((role) => role === 'H1').length).toBe(1);
        expect(roles.indexOf('H1')).toBeLessThan(roles.indexOf('H2'));
        expect(roles).toEqual(expect.arrayContaining(['Table', 'TR', 'TH', 'TD', 'L', 'LI', 'Note']));
        const figures = parts.filter(({ role }) => role === 'Figure');
        expect(figures.length).toBe(2);
        expect(figures[0]!.alt).toMatch(/^Lantern night supper: table T3\. 8 seats, 8 covers\.$/);
        expect(figures[1]!.alt).toContain('Left of the plate, outermost first: salad-fork, dinner-fork.');
    });

    it('have their headings in the outline', async () => {
        const { outline } = await read('bar');
        expect(outline).toEqual(['Bar', 'Into the cold', 'Bottles', 'Glasses', 'Pours', 'Standard drinks']);
    });

    it('draw covers as lines, and hold their fonts', async () => {
        const guide = await printed(all.find(({ name }) => name === 'guide')!);
        const { pages } = await readPdf(guide.bytes);
        expect(pages[0]!.paths).toBeGreaterThan(20);
        expect(pages[0]!.images).toBe(0);
        const text = guide.bytes.toString('latin1');
        const fonts = [...text.matchAll(/\/BaseFont \/([^\s/]+)/g)].map(([, name]) => name);
        expect(fonts.length).toBeGreaterThan(0);
        expect(fonts.every((name) => /^[A-Z]{6}\+NotoSans-(Regular|Bold)$/.test(name!))).toBe(true);
        expect(text.match(/\/FontFile2 /g)?.length).toBe(2);
    });

    it('are the same bytes every time', async () => {
        for (const file of all.filter(({ name }) => ['captain', 'server-3'].includes(name))) {
            expect((await printed(file)).bytes.equals((await printed(file)).bytes), file.name).toBe(true);
        }
    });

    it('keep the menu card on one page of either paper', async () => {
        const card = all.find(({ name }) => name === 'menu-card')!;
        for (const paper of ['a4', 'letter'] as const) {
            expect((await readPdf((await printed(card, paper)).bytes)).pages.length, paper).toBe(1);
        }
    });
});

describe('letters', () => {
    const card = (title: string): SheetFile =>
        sheets(
            check(
                'a.cover',
                filesInMemory({
                    'a.cover': `event "${title}" { guests 2 } menu { course main "${title}" { contains nothing } }`,
                }),
            ),
            { only: ['menu-card'] },
        )[0]!;

    it('are there for every language of Latin, Greek and Cyrillic letters, and for figures', async () => {
        const title = 'Crème brûlée, ½ × 60 °C – Łódź, Ærø, Ağrı, Þórður, Ñandú, Phở, Σύρος, Щи; fi ffi “’” − …';
        const file = card(title);
        const { bytes, lacking } = await printed(file);
        expect(lacking).toEqual([]);
        expect(wordsOfPdf(await readPdf(bytes))).toContain(tight(title));
    });

    it('are told where there are none', async () => {
        expect((await printed(card('Tea with 李 and 王'))).lacking).toEqual(['李', '王']);
    });
});
