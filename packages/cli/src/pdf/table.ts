import { SHORT_TABLE, type SheetTypes } from 'underliner-language';
import { GREY, MM, type Page, type Words } from './page.js';

/** A cell to write into by hand. */
const TO_FILL = { height: 8 * MM, width: 14 * MM };

/** Sets a table; where it goes on over pages its head is repeated. */
export function setTable(page: Page, table: SheetTypes.Table): void {
    const { caption } = table;
    const { padding, captionHeight, head, body, least } = measure(page, table);
    page.want(least);
    const tag = page.tag('Table');
    if (caption) {
        page.in(page.tag('Caption', tag), () => page.write(caption, page.y, { bold: true }));
        page.y += captionHeight;
    }
    const line = (width: number, colour: string): void =>
        page.aside(() => {
            page.doc
                .moveTo(page.left, page.y)
                .lineTo(page.left + page.width, page.y)
                .lineWidth(width)
                .strokeColor(colour)
                .stroke();
        });
    const headRow = page.tag('TR', tag);
    setRow(page, head, padding.y, (write) => page.in(page.tag('TH', headRow, { scope: 'Column' }), write));
    line(1.5, 'black');
    for (const row of body) {
        if (row.height > page.room) {
            page.next();
            // Told once: what is repeated is there for the eye.
            page.aside(() => setRow(page, head, padding.y, (write) => write()));
            line(1.5, 'black');
        }
        const bodyRow = page.tag('TR', tag);
        setRow(page, row, padding.y, (write) => page.in(page.tag('TD', bodyRow), write));
        line(0.5, GREY);
        boxes(page, row, padding.x);
    }
    page.y += page.close ? 3 : 10;
}

/** How much of a table has to stand together: all of a short one, the head and the first row of another. */
export const leastOfTable = (page: Page, table: SheetTypes.Table): number => measure(page, table).least;

interface Measured {
    readonly padding: Padding;
    readonly captionHeight: number;
    readonly head: Row;
    readonly body: readonly Row[];
    readonly least: number;
}

interface Padding {
    readonly x: number;
    readonly y: number;
}

function measure(page: Page, table: SheetTypes.Table): Measured {
    const { caption, columns, rows } = table;
    const padding = page.close ? { x: 4, y: 1 } : { x: 5, y: 2.5 };
    const widths = columnWidths(page, table, padding.x);
    const head = measureRow(
        page,
        table,
        widths,
        padding,
        columns.map((column) => ({ text: column.head, strong: true })),
    );
    const toFill = columns.some((column) => column.toFill) ? TO_FILL.height : 0;
    const body = rows
        .map((row) => measureRow(page, table, widths, padding, row))
        .map((row) => ({ ...row, height: Math.max(row.height, toFill) }));
    const captionHeight = caption ? page.heightOf(caption, { bold: true }) + 4 : 0;
    const together = rows.length <= SHORT_TABLE ? body : body.slice(0, 1);
    const least = sum([captionHeight, head.height, ...together.map(({ height }) => height)]);
    return { padding, captionHeight, head, body, least };
}

function measureRow(
    page: Page,
    { columns }: SheetTypes.Table,
    widths: readonly number[],
    padding: Padding,
    row: readonly SheetTypes.Cell[],
): Row {
    let x = page.left;
    const cells = columns.map((column, index): SetCell => {
        const cell = row[index] ?? '';
        const words: Words = {
            x: x + padding.x,
            width: widths[index]! - 2 * padding.x,
            bold: typeof cell !== 'string',
            align: column.figures ? 'right' : 'left',
        };
        x += widths[index]!;
        return { text: (typeof cell === 'string' ? cell : cell.text).trim(), words, column };
    });
    const tallest = Math.max(page.heightOf('x'), ...cells.map(({ text, words }) => page.heightOf(text, words)));
    return { cells, height: tallest + 2 * padding.y };
}

interface SetCell {
    readonly text: string;
    readonly words: Words;
    readonly column: SheetTypes.Column;
}

interface Row {
    readonly cells: readonly SetCell[];
    readonly height: number;
}

/** Writes the cells of a row, each as `tagged` says what it is, and goes below it. */
function setRow(page: Page, { cells, height }: Row, padding: number, tagged: (write: () => void) => void): void {
    for (const { text, words } of cells) {
        tagged(() => page.write(text, page.y + padding, words));
    }
    page.y += height;
}

/** The frames of cells to write into, in the row just set. */
function boxes(page: Page, { cells, height }: Row, padding: number): void {
    const toFill = cells.filter(({ column }) => column.toFill);
    if (toFill.length > 0) {
        page.aside(() => {
            for (const { words } of toFill) {
                page.doc.rect(words.x! - padding, page.y - height, words.width! + 2 * padding, height);
            }
            page.doc.lineWidth(0.75).strokeColor('black').stroke();
        });
    }
}

/** Shares of the width as the sheet states them, the rest evenly; but none narrower than its longest word. */
function columnWidths(page: Page, { columns, rows }: SheetTypes.Table, padding: number): number[] {
    const stated = columns.reduce((sum, { share = 0 }) => sum + share, 0);
    const open = columns.filter(({ share }) => share === undefined).length;
    const wanted = columns.map(({ share }) => page.width * (share ?? (1 - stated) / open));
    const least = columns.map(({ head, figures, toFill }, index) => {
        const texts = rows.map((row) => row[index] ?? '');
        const all = [
            ...widest(page, [head], true, figures),
            ...texts.flatMap((cell) =>
                typeof cell === 'string'
                    ? widest(page, [cell], false, figures)
                    : widest(page, [cell.text], true, figures),
            ),
        ];
        return Math.max(toFill ? TO_FILL.width : 0, ...all) + 2 * padding + 0.5;
    });
    const missing = wanted.map((width, index) => Math.max(0, least[index]! - width));
    const spare = wanted.map((width, index) => Math.max(0, width - least[index]!));
    const [short, long] = [sum(missing), sum(spare)];
    return wanted.map((width, index) =>
        missing[index]! > 0
            ? least[index]!
            : long === 0
              ? width
              : width - (spare[index]! * Math.min(short, long)) / long,
    );
}

/** How wide the words of texts are; figures are not parted. */
const widest = (page: Page, texts: readonly string[], bold: boolean, figures = false): number[] =>
    texts.flatMap((text) => (figures ? [text] : text.split(/\s+/))).map((word) => page.widthOf(word, { bold }));

const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0);
