import { footText, type Paper, type SheetTypes } from 'underliner-language';
import type { Letters } from '../letters.js';
import { readDrawing, setDrawing } from './drawing.js';
import { BODY, GREY, MM, Page } from './page.js';
import { leastOfTable, setTable } from './table.js';

/** What a document bears where the plan states no day. */
const NO_DAY = '2000-01-01';

/** A sheet as PDF. */
export interface SheetPdf {
    readonly bytes: Buffer;
    /** Letters that the font does not have: a box stands in their place. */
    readonly lacking: readonly string[];
}

/**
 * A sheet as a tagged PDF with its fonts in it and its drawings as lines, saying what its page of HTML says. The same sheet gives
 * the same bytes.
 */
export async function sheetPdf(
    sheet: SheetTypes.Sheet,
    foot: SheetTypes.SheetFoot,
    { paper, letters }: { readonly paper: Paper; readonly letters: Letters },
): Promise<SheetPdf> {
    const said = footText(foot);
    const page = new Page(letters, {
        paper,
        orientation: sheet.orientation ?? 'portrait',
        close: sheet.onePage ?? false,
        title: `${sheet.title}: ${foot.event}`,
        subject: said,
        day: foot.day ?? NO_DAY,
    });
    setHead(page, sheet, said);
    sheet.blocks.forEach((block, index) => {
        setBlock(page, block, sheet.blocks[index + 1]);
    });
    page.foot(`${said} · ${sheet.title}`);
    return { bytes: await page.end(), lacking: page.lacking };
}

function setHead(page: Page, { title, subtitle }: SheetTypes.Sheet, said: string): void {
    setText(page, 'P', said);
    setText(page, 'H1', title, { size: page.close ? 18 : 22, bold: true });
    page.doc.outline.addItem(title);
    if (subtitle) {
        setText(page, 'P', subtitle, { size: page.close ? BODY : 13 });
    }
    page.y += page.close ? 2 : 4;
    page.aside(() =>
        page.doc
            .moveTo(page.left, page.y)
            .lineTo(page.left + page.width, page.y)
            .lineWidth(2)
            .strokeColor('black')
            .stroke(),
    );
    page.y += page.close ? 5 : 10;
}

/** Sets a part of the sheet. @param next that a heading must not be parted from */
function setBlock(page: Page, block: SheetTypes.Block, next: SheetTypes.Block | undefined): void {
    switch (block.sort) {
        case 'heading': {
            const size = block.level === 3 ? 12.5 : page.close ? 13 : 15;
            page.down(page.close ? 5 : block.level === 3 ? 10 : 14);
            page.want(page.heightOf(block.text, { size, bold: true }) + 4 + leastOf(page, next));
            page.doc.outline.addItem(block.text);
            setText(page, block.level === 3 ? 'H3' : 'H2', block.text, { size, bold: true });
            page.y += page.close ? 1 : 4;
            return;
        }
        case 'text':
            setText(page, 'P', block.text);
            page.y += page.close ? 3 : 5;
            return;
        case 'caution':
            setCaution(page, block.text);
            return;
        case 'list':
            setList(page, block.items);
            return;
        case 'table':
            setTable(page, block);
            return;
        case 'picture':
            setPicture(page, block);
            return;
        case 'check':
            setCheck(page, block);
            return;
        case 'cards':
            setCards(page, block.cards);
            return;
    }
}

/** How much of a part has to stand under its heading. */
function leastOf(page: Page, block: SheetTypes.Block | undefined): number {
    switch (block?.sort) {
        case undefined:
            return 0;
        case 'picture':
            return pictureHeight(page, block).all;
        case 'table':
            return leastOfTable(page, block);
        case 'caution':
            return page.heightOf(block.text) + 10;
        default:
            return 40;
    }
}

function setText(
    page: Page,
    role: 'P' | 'H1' | 'H2' | 'H3',
    text: string,
    words: { readonly size?: number; readonly bold?: boolean } = {},
): void {
    const height = page.heightOf(text, words);
    page.want(height);
    page.in(page.tag(role), () => page.write(text, page.y, words));
    page.y += height;
}

function setCaution(page: Page, text: string): void {
    const [x, y] = [7, 4];
    const words = { x: page.left + x, width: page.width - 2 * x };
    const height = page.heightOf(text, words) + 2 * y;
    page.want(height);
    page.aside(() => page.doc.rect(page.left, page.y, page.width, height).lineWidth(1.5).strokeColor('black').stroke());
    page.in(page.tag('Note'), () => page.write(text, page.y + y, words));
    page.y += height + (page.close ? 3 : 5);
}

function setList(page: Page, items: readonly string[]): void {
    const list = page.tag('L');
    const words = { x: page.left + 18, width: page.width - 18 };
    for (const item of items) {
        const height = page.heightOf(item, words);
        page.want(height);
        const entry = page.tag('LI', list);
        page.in(page.tag('Lbl', entry), () => page.write('•', page.y, { x: page.left + 6 }));
        page.in(page.tag('LBody', entry), () => page.write(item, page.y, words));
        page.y += height;
    }
    page.y += page.close ? 3 : 6;
}

function pictureHeight(page: Page, { svg, share, caption }: SheetTypes.Picture): { picture: number; all: number } {
    const { width, height } = readDrawing(svg);
    const picture = (page.width * share * height) / width;
    return { picture, all: picture + 12 + page.heightOf(caption, { bold: true }) };
}

function setPicture(page: Page, block: SheetTypes.Picture): void {
    const drawn = readDrawing(block.svg);
    const { picture, all } = pictureHeight(page, block);
    page.want(all);
    const [x, y, width] = [page.left, page.y + 6, page.width * block.share];
    const figure = page.tag('Figure', undefined, { alt: drawn.said, bbox: [x, y, x + width, y + picture] });
    page.in(figure, () => setDrawing(page, drawn, x, y, width));
    page.y += picture + 6;
    setText(page, 'P', block.caption, { bold: true });
    page.y += 6;
}

/** A box, what is checked, and a line for each who signs. */
function setCheck(page: Page, { text, by }: Extract<SheetTypes.Block, { sort: 'check' }>): void {
    const sign = { width: 34 * MM, gap: 10 };
    const box = 12;
    const x = page.left + box + sign.gap;
    const width = page.width - box - sign.gap - by.length * (sign.width + sign.gap);
    const height = page.heightOf(text, { x, width }) + 7;
    page.want(height);
    const base = page.y + height - 2;
    const tag = page.tag('P');
    page.in(tag, () => page.write(text, page.y + 5, { x, width }));
    by.forEach((who, index) => {
        const at = x + width + sign.gap + index * (sign.width + sign.gap);
        page.in(tag, () => page.write(who, base - page.heightOf(who), { x: at, width: sign.width }));
        page.aside(() =>
            page.doc
                .moveTo(at, base)
                .lineTo(at + sign.width, base)
                .lineWidth(1)
                .dash(1, { space: 2 })
                .stroke('black')
                .undash(),
        );
    });
    page.aside(() => {
        page.doc
            .rect(page.left + 1, base - box - 1, box, box)
            .lineWidth(1.5)
            .stroke('black');
        page.doc
            .moveTo(page.left, page.y + height)
            .lineTo(page.left + page.width, page.y + height)
            .lineWidth(0.5)
            .stroke(GREY);
    });
    page.y += height;
}

/** Two to a row, with lines to cut along. */
function setCards(page: Page, cards: readonly SheetTypes.Card[]): void {
    const [across, least, inside] = [page.width / 2, 52 * MM, 6 * MM];
    for (let index = 0; index < cards.length; index += 2) {
        const row = cards.slice(index, index + 2);
        const heights = row.map(
            ({ title, lines }) =>
                page.heightOf(title, { size: 20, width: across - 2 * inside }) +
                lines.reduce((sum, line) => sum + page.heightOf(line, { width: across - 2 * inside }) + 5, 0),
        );
        const height = Math.max(least, ...heights.map((each) => each + 24 * MM));
        page.want(height);
        row.forEach(({ title, lines }, place) => {
            const left = page.left + place * across;
            const words = { x: left + inside, width: across - 2 * inside, align: 'center' as const };
            page.aside(() =>
                page.doc.rect(left, page.y, across, height).lineWidth(0.5).dash(3, { space: 3 }).stroke(GREY).undash(),
            );
            let y = page.y + (height - heights[place]!) / 2;
            const card = page.tag('Sect');
            page.in(page.tag('P', card), () => page.write(title, y, { ...words, size: 20 }));
            y += page.heightOf(title, { ...words, size: 20 });
            for (const line of lines) {
                page.in(page.tag('P', card), () => page.write(line, y, words));
                y += page.heightOf(line, words) + 5;
            }
        });
        page.y += height;
    }
}
