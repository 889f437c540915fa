// A PDF as a reader outside this project takes it: PDF.js.
import { getDocument, OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A piece of text where it stands. */
export interface Written {
    readonly text: string;
    /** Height of the letters, pt. */
    readonly size: number;
    readonly left: number;
    readonly right: number;
    /** Feet, and heads that are repeated: no part of what the document says. */
    readonly isAside: boolean;
}

/** What a screen reader is told of a part. */
export interface Part {
    readonly role: string;
    readonly alt?: string;
    readonly parts: readonly Part[];
}

export interface ReadPage {
    readonly width: number;
    readonly height: number;
    readonly written: readonly Written[];
    readonly parts: readonly Part[];
    /** Lines and outlines drawn, and pictures made of dots. */
    readonly paths: number;
    readonly images: number;
}

export interface ReadPdf {
    readonly title: string;
    readonly lang: string;
    readonly isTagged: boolean;
    readonly outline: readonly string[];
    readonly pages: readonly ReadPage[];
}

type Item = Awaited<ReturnType<PDFPageProxy['getTextContent']>>['items'][number];
interface Node {
    role?: string;
    alt?: string;
    children?: Node[];
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
    const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
    const document = await task.promise;
    const info = (await document.getMetadata()).info as Record<string, unknown>;
    const pages: ReadPage[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
        const page = await document.getPage(number);
        const [, , width, height] = page.view as [number, number, number, number];
        const { items } = await page.getTextContent({ includeMarkedContent: true, disableNormalization: true });
        const { fnArray } = await page.getOperatorList();
        const tree = (await page.getStructTree()) as Node | null;
        const count = (wanted: readonly number[]): number => fnArray.filter((each) => wanted.includes(each)).length;
        pages.push({
            width,
            height,
            written: writtenOf(items),
            parts: (tree?.children ?? []).map(partOf),
            paths: count([OPS.constructPath]),
            images: count([OPS.paintImageXObject, OPS.paintInlineImageXObject]),
        });
    }
    const outline = ((await document.getOutline()) as { title: string }[] | null) ?? [];
    const isTagged = ((await document.getMarkInfo()) as { Marked?: boolean } | null)?.Marked === true;
    await task.destroy();
    return {
        title: String(info.Title),
        lang: String(info.Language),
        isTagged,
        outline: outline.map(({ title }) => title),
        pages,
    };
}

function writtenOf(items: readonly Item[]): Written[] {
    const open: string[] = [];
    return items.flatMap((item): Written[] => {
        if ('type' in item) {
            if (item.type === 'endMarkedContent') {
                open.pop();
            } else {
                open.push((item as { tag?: string }).tag ?? '');
            }
            return [];
        }
        const [a = 0, b = 0, , , left = 0] = item.transform as number[];
        const right = left + (b === 0 ? item.width : 0);
        return [{ text: item.str, size: Math.hypot(a, b), left, right, isAside: open.includes('Artifact') }];
    });
}

const partOf = ({ role = '', alt, children = [] }: Node): Part => ({
    role,
    alt,
    parts: children.filter(({ role: inner }) => inner !== undefined).map(partOf),
});
