import type { Element, ElementContent, Properties } from 'hast';
import { fromHtml } from 'hast-util-from-html';
import type { Page } from './page.js';

/** What a part of a drawing has from the parts around it. */
interface Look {
    readonly fill: string;
    readonly fillOpacity: number;
    readonly stroke: string;
    readonly strokeWidth: number;
    readonly dash?: readonly number[];
    readonly size: number;
    readonly bold: boolean;
    readonly anchor: 'start' | 'middle' | 'end';
    /** Words leave the lines under them out. */
    readonly clear: boolean;
}

const PLAIN: Look = {
    fill: '#000000',
    fillOpacity: 1,
    stroke: 'none',
    strokeWidth: 1,
    size: 12,
    bold: false,
    anchor: 'start',
    clear: false,
};

/** One of our own drawings, read. */
export interface Drawn {
    readonly width: number;
    readonly height: number;
    /** What it shows, in words. */
    readonly said: string;
    readonly content: readonly ElementContent[];
}

/** Reads the text of one of our own drawings, which are of few sorts of parts: those of `paint`. */
export function readDrawing(svg: string): Drawn {
    const [root] = fromHtml(svg, { fragment: true, space: 'svg' }).children;
    if (root?.type !== 'element' || root.tagName !== 'svg') {
        throw new Error('A drawing is an svg.');
    }
    const { width, height, ariaLabel } = root.properties;
    return { width: Number(width), height: Number(height), said: String(ariaLabel ?? ''), content: root.children };
}

/** Draws it as lines and letters, so wide, its corner at a point of the page. */
export function setDrawing(page: Page, drawn: Drawn, x: number, y: number, width: number): void {
    const { doc } = page;
    doc.save();
    doc.translate(x, y).scale(width / drawn.width);
    drawn.content.forEach((part) => paint(page, part, PLAIN));
    doc.restore();
}

function paint(page: Page, part: ElementContent, around: Look): void {
    if (part.type !== 'element' || part.tagName === 'title' || part.tagName === 'desc') {
        return;
    }
    const { doc } = page;
    const look = lookOf(part.properties, around);
    const { transform } = part.properties;
    doc.save();
    if (typeof transform === 'string') {
        turn(doc, transform);
    }
    if (part.tagName === 'g') {
        part.children.forEach((child) => paint(page, child, look));
    } else if (part.tagName === 'text') {
        letter(page, part, look);
    } else {
        outline(doc, part);
        ink(doc, look);
    }
    doc.restore();
}

function lookOf(own: Properties, around: Look): Look {
    const number = (value: Properties[string], otherwise: number): number =>
        value === undefined || value === null ? otherwise : Number(value);
    const dash = own.strokeDashArray ?? own.strokeDasharray;
    return {
        fill: String(own.fill ?? around.fill),
        fillOpacity: number(own.fillOpacity, around.fillOpacity),
        stroke: String(own.stroke ?? around.stroke),
        strokeWidth: number(own.strokeWidth, around.strokeWidth),
        dash:
            dash === undefined || dash === null
                ? around.dash
                : String(dash)
                      .split(/[\s,]+/)
                      .map(Number),
        size: number(own.fontSize, around.size),
        bold: own.fontWeight === undefined ? around.bold : own.fontWeight === 'bold',
        anchor: (own.textAnchor as Look['anchor'] | undefined) ?? around.anchor,
        clear: own.paintOrder === undefined ? around.clear : own.paintOrder === 'stroke',
    };
}

/** `translate(12 7) rotate(60)`. */
function turn(doc: PDFKit.PDFDocument, transform: string): void {
    for (const [, verb, figures] of transform.matchAll(/(\w+)\(([^)]*)\)/g)) {
        const [a = 0, b = 0] = figures!.split(/[\s,]+/).map(Number);
        if (verb === 'translate') {
            doc.translate(a, b);
        } else if (verb === 'rotate') {
            doc.rotate(a);
        } else {
            throw new Error(`No drawing of ours is turned by ${verb}.`);
        }
    }
}

function outline(doc: PDFKit.PDFDocument, { tagName, properties }: Element): void {
    const at = (name: string): number => Number(properties[name] ?? 0);
    switch (tagName) {
        case 'rect':
            if (at('rx') > 0) {
                doc.roundedRect(at('x'), at('y'), at('width'), at('height'), at('rx'));
            } else {
                doc.rect(at('x'), at('y'), at('width'), at('height'));
            }
            return;
        case 'circle':
            doc.circle(at('cx'), at('cy'), at('r'));
            return;
        case 'ellipse':
            doc.ellipse(at('cx'), at('cy'), at('rx'), at('ry'));
            return;
        case 'line':
            doc.moveTo(at('x1'), at('y1')).lineTo(at('x2'), at('y2'));
            return;
        case 'path':
            doc.path(String(properties.d));
            return;
        default:
            throw new Error(`No drawing of ours has a ${tagName}.`);
    }
}

function ink(doc: PDFKit.PDFDocument, { fill, fillOpacity, stroke, strokeWidth, dash }: Look): void {
    const isFilled = fill !== 'none' && fillOpacity > 0;
    const isDrawn = stroke !== 'none';
    doc.lineWidth(strokeWidth).lineJoin('round').lineCap('round');
    if (dash) {
        const [on = 0, off = on] = dash;
        doc.dash(on, { space: off });
    }
    if (isFilled && isDrawn) {
        doc.fillAndStroke(fill, stroke);
    } else if (isFilled) {
        doc.fill(fill);
    } else if (isDrawn) {
        doc.stroke(stroke);
    }
}

function letter(page: Page, part: Element, { size, bold, anchor, fill, clear }: Look): void {
    const { doc } = page;
    const words = part.children.map((child) => (child.type === 'text' ? child.value : '')).join('');
    const width = page.widthOf(words, { size, bold });
    const x = Number(part.properties.x ?? 0) - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
    const y = Number(part.properties.y ?? 0);
    if (clear) {
        doc.rect(x - size * 0.1, y - size * 0.76, width + size * 0.2, size).fill('white');
    }
    page.note(words);
    doc.fillColor(fill).text(words, x, y, { lineBreak: false, baseline: 'alphabetic' });
}
