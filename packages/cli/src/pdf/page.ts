import type { Letters } from '../letters.js';
import PDFDocument from 'pdfkit';
import type { Paper } from 'underliner-language';

/** Points to one millimetre. */
export const MM = 72 / 25.4;
export const BODY = 12;
/** How much nearer lines stand where a sheet is to fit on one page, in heights of the letters. */
const CLOSE = -0.18;
/** Thin lines between rows. */
export const GREY = '#767676';

export interface PageLook {
    readonly paper: Paper;
    readonly orientation: 'portrait' | 'landscape';
    /** Set closely, so as to fit on one page. */
    readonly close: boolean;
    readonly title: string;
    readonly subject: string;
    /** `2026-10-17`, the day that the document bears: the clock would give other bytes every time. */
    readonly day: string;
}

/** How words are written. */
export interface Words {
    readonly size?: number;
    readonly bold?: boolean;
    readonly align?: 'left' | 'right' | 'center';
    readonly x?: number;
    readonly width?: number;
}

type Role =
    | 'Document'
    | 'H1'
    | 'H2'
    | 'H3'
    | 'P'
    | 'Note'
    | 'L'
    | 'LI'
    | 'Lbl'
    | 'LBody'
    | 'Table'
    | 'Caption'
    | 'TR'
    | 'TH'
    | 'TD'
    | 'Figure'
    | 'Sect';

/** What a tag says besides: of a head which cells it is for, of a picture what it shows and where. */
interface TagOptions {
    readonly title?: string;
    readonly scope?: 'Column';
    readonly alt?: string;
    readonly bbox?: [left: number, top: number, right: number, bottom: number];
}

/** Tags of a PDF: what a part of the page is, for screen readers. */
export type Tag = PDFKit.PDFStructureElement;

/**
 * The paper on which a sheet is set, and how far down it is written. What has to stay together asks for room first; nothing is
 * broken over pages by itself.
 */
export class Page {
    readonly doc: PDFKit.PDFDocument;
    readonly close: boolean;
    readonly left: number;
    readonly width: number;
    y: number;
    private readonly bottom: number;
    private readonly root: Tag;
    private readonly chunks: Buffer[] = [];
    private readonly written: Promise<Buffer>;
    private readonly unknown = new Set<string>();

    constructor(letters: Letters, { paper, orientation, close, title, subject, day }: PageLook) {
        const [side, top, bottom] = close ? [11, 9, 13] : [13, 13, 17];
        this.close = close;
        this.doc = new PDFDocument({
            size: paper === 'a4' ? 'A4' : 'LETTER',
            layout: orientation,
            margins: { left: side * MM, right: side * MM, top: top * MM, bottom: bottom * MM },
            bufferPages: true,
            pdfVersion: '1.7',
            lang: 'en',
            tagged: true,
            displayTitle: true,
            // No font of the viewer's is used.
            font: null as unknown as string,
            info: { Title: title, Subject: subject, Creator: 'Underliner', CreationDate: new Date(`${day}T00:00:00Z`) },
        });
        this.doc.registerFont('regular', Buffer.from(letters.regular));
        this.doc.registerFont('bold', Buffer.from(letters.bold));
        this.doc.on('data', (chunk: Buffer) => this.chunks.push(chunk));
        this.written = new Promise((resolve) => this.doc.on('end', () => resolve(Buffer.concat(this.chunks))));
        this.left = side * MM;
        this.width = this.doc.page.width - 2 * this.left;
        this.bottom = this.doc.page.height - bottom * MM;
        this.y = top * MM;
        this.root = this.doc.struct('Document', { title });
        this.doc.addStructure(this.root);
    }

    /** Points left on this page. */
    get room(): number {
        return this.bottom - this.y;
    }

    /** Goes to a new page where the rest of this one is too low, unless it has only begun. */
    want(height: number): void {
        if (height > this.room && this.y > this.doc.page.margins.top) {
            this.next();
        }
    }

    next(): void {
        this.doc.addPage();
        this.y = this.doc.page.margins.top;
    }

    down(points: number): void {
        // Nothing has to be kept clear of the top of a page.
        if (this.y > this.doc.page.margins.top) {
            this.y += points;
        }
    }

    /** A part of the page with what it is; inside another part, or in the sheet itself. */
    tag(role: Role, inside: Tag = this.root, options: TagOptions = {}): Tag {
        const tag = this.doc.struct(role, options);
        inside.add(tag);
        return tag;
    }

    /** What is drawn inside a part. */
    in(tag: Tag, draw: () => void): void {
        tag.add(draw);
    }

    /** Lines, boxes and what is repeated: no screen reader tells them. */
    aside(draw: () => void): void {
        this.doc.markContent('Artifact', { type: 'Layout' });
        draw();
        this.doc.endMarkedContent();
    }

    heightOf(text: string, words: Words = {}): number {
        this.lettering(words);
        return text === ''
            ? 0
            : this.doc.heightOfString(text, { width: words.width ?? this.width, lineGap: this.lineGap(words) });
    }

    widthOf(text: string, words: Words = {}): number {
        this.lettering(words);
        return this.doc.widthOfString(text);
    }

    /** Writes at a height, without going down. */
    write(text: string, y: number, words: Words = {}): void {
        if (text === '') {
            return;
        }
        this.lettering(words);
        this.note(text);
        this.doc.fillColor('black').text(text, words.x ?? this.left, y, {
            width: words.width ?? this.width,
            align: words.align ?? 'left',
            lineGap: this.lineGap(words),
        });
    }

    /** Letters that the font does not have. */
    get lacking(): readonly string[] {
        return [...this.unknown].toSorted();
    }

    /** Notes what the font has no letters for. */
    note(text: string): void {
        // The font as its library read it, which pdfkit keeps and does not declare.
        const { font } = (this.doc as unknown as { _font: { font: { hasGlyphForCodePoint(code: number): boolean } } })
            ._font;
        for (const letter of text) {
            if (!font.hasGlyphForCodePoint(letter.codePointAt(0)!) && letter.trim() !== '') {
                this.unknown.add(letter);
            }
        }
    }

    /** At the foot of every page, in two lines at most: what it belongs to, and its number. */
    foot(said: string): void {
        const { start, count } = this.doc.bufferedPageRange();
        for (let page = start; page < start + count; page += 1) {
            this.doc.switchToPage(page);
            const number = `${page + 1} of ${count}`;
            // Below the text nothing may begin another page.
            this.doc.page.margins.bottom = 0;
            this.doc.markContent('Artifact', { type: 'Pagination' });
            const y = this.bottom + 3.5 * MM;
            const width = this.width - this.widthOf(number) - 2 * BODY;
            this.note(said);
            this.doc.fillColor('black').text(said, this.left, y, {
                width,
                lineGap: CLOSE * BODY,
                height: 2 * (1 + CLOSE) * this.doc.currentLineHeight(),
                ellipsis: true,
            });
            this.write(number, y, { align: 'right' });
            this.doc.endMarkedContent();
        }
    }

    /** Ends the document. @returns its bytes, when they are written */
    end(): Promise<Buffer> {
        this.root.end();
        this.doc.end();
        return this.written;
    }

    private lettering({ size = BODY, bold = false }: Words): void {
        this.doc.font(bold ? 'bold' : 'regular').fontSize(size);
    }

    private lineGap({ size = BODY }: Words): number {
        return this.close ? CLOSE * size : 0;
    }
}
