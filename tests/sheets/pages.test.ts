import { existsSync } from 'node:fs';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, sheets, whatIf, type SheetFile } from 'underliner-language';
import { EVENINGS } from './evenings.js';
import { lookOfPage, type Look } from './in-page.mjs';
import { workspace } from './workspace.js';

// The sheets as pages in a browser: what a program can see of them. `docs/sheets.md` says which were looked at as pictures.

/** Width of the paper less both margins, at 96 px to the inch. */
const PAPER = { A4: 210 - 26, Letter: 215.9 - 26 } as const;

const program = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(existsSync);
if (program === undefined) {
    console.warn('No browser here: the sheets are not looked at as pages. `npm run test:editor` installs one.');
}

let browser: Browser | undefined;
let page: Page;
beforeAll(async () => {
    if (program !== undefined) {
        browser = await chromium.launch({ executablePath: program, args: ['--no-sandbox', '--disable-gpu'] });
        page = await browser.newPage();
    }
});
afterAll(() => browser?.close());

function made(evening: string): SheetFile[] {
    const checked = check(`${evening}.cover`, workspace);
    const first = checked.plan.menu!.courses[0]!.title;
    const late = whatIf(checked, { underway: { minutes: 20 * 60, done: first } });
    return [...sheets(checked), ...(typeof late === 'string' ? [] : sheets(late.checked))];
}

async function look(sheet: SheetFile, paper: keyof typeof PAPER): Promise<Look> {
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: Math.floor((PAPER[paper] / 25.4) * 96), height: 1000 });
    await page.setContent(sheet.html);
    return page.evaluate(lookOfPage);
}

/** Pages and their size, as the browser prints them. */
async function printed(sheet: SheetFile, format: 'A4' | 'Letter'): Promise<{ pages: number; sizes: string[] }> {
    await page.setContent(sheet.html);
    const pdf = (await page.pdf({ format })).toString('latin1');
    const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g) ?? [];
    const sizes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/g)].map(
        ([, width, height]) => `${Math.round(Number(width))} × ${Math.round(Number(height))}`,
    );
    return { pages: pages.length, sizes: [...new Set(sizes)] };
}

describe.skipIf(program === undefined).each(EVENINGS)('the sheets of %s', (evening) => {
    it.each(['A4', 'Letter'] as const)('fit %s, are large and dark enough, and read in order', async (paper) => {
        const all = made(evening);
        expect(all.length).toBeGreaterThan(8);
        for (const sheet of all) {
            const { headings, ...found } = await look(sheet, paper);
            expect({ sheet: sheet.name, ...found }).toEqual({
                sheet: sheet.name,
                tooWide: [],
                small: [],
                pale: [],
                outside: [],
                stops: 0,
                fetched: 0,
            });
            expect(headings[0], sheet.name).toBe(1);
            expect(headings.filter((level) => level === 1).length, sheet.name).toBe(1);
            headings.forEach((level, index) =>
                expect(level - (headings[index - 1] ?? level), sheet.name).toBeLessThanOrEqual(1),
            );
        }
    });

    it('give the captain one page, and the card with the new times another', async () => {
        const one = made(evening).filter(({ name }) => ['captain', 'running-late'].includes(name));
        expect(one.length).toBe(2);
        for (const sheet of one) {
            expect(await printed(sheet, 'A4'), sheet.name).toEqual({ pages: 1, sizes: ['596 × 843'] });
            expect(await printed(sheet, 'Letter'), sheet.name).toEqual({ pages: 1, sizes: ['612 × 792'] });
        }
    });
});

it.skipIf(program === undefined)('finds what does not fit, what is small, pale or outside its picture', async () => {
    const wrong = made('examples/saltmarsh-hall/table-of-eight')[0]!;
    const html = wrong.html
        .replace('</main>', '<p style="width: 2000px">wide</p><p style="font-size: 9pt; color: #888">faint</p></main>')
        .replace('</main>', '<svg width="100" height="20"><text x="90" y="15">outside</text></svg></main>');
    const found = await look({ ...wrong, html }, 'A4');
    expect(found.tooWide.length).toBeGreaterThan(0);
    expect(found.small).toEqual(['P: faint']);
    expect(found.pale).toEqual(['P: faint']);
    expect(found.outside).toEqual(['text: outside']);
    const long = wrong.html.replace('</main>', `${'<p>line</p>'.repeat(80)}</main>`);
    expect((await printed({ ...wrong, html: long }, 'A4')).pages).toBeGreaterThan(1);
});
