import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { toHtml } from 'hast-util-to-html';
import {
    cellText,
    footText,
    SHORT_TABLE,
    type Block,
    type Cell,
    type Sheet,
    type SheetFoot,
    type Table,
} from './sheet.js';
import { SHEET_STYLE } from './style.js';

/** One self-contained page: no script, nothing fetched, printing on A4 and Letter. The same sheet gives the same bytes. */
export function sheetHtml(sheet: Sheet, foot: SheetFoot): string {
    const said = footText(foot);
    const page = h('html', { lang: 'en' }, [
        h('head', [
            h('meta', { charset: 'utf-8' }),
            h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
            h('title', `${sheet.title}: ${foot.event}`),
            h('style', `${SHEET_STYLE}${pageStyle(sheet, said)}`),
        ]),
        h('body', { class: [sheet.orientation ?? 'portrait', ...(sheet.onePage ? ['one-page'] : [])] }, [
            h('header', [
                h('p', { class: 'event' }, said),
                h('h1', sheet.title),
                ...(sheet.subtitle ? [h('p', { class: 'subtitle' }, sheet.subtitle)] : []),
            ]),
            h('main', sheet.blocks.map(block)),
            h('footer', [h('p', `${said} · ${sheet.title}`)]),
        ]),
    ]);
    return `<!doctype html>\n${toHtml(page, { allowDangerousHtml: true })}\n`;
}

/** What stands at the foot of every printed page: event, day and revision, the sheet, and the number of the page. */
function pageStyle({ orientation = 'portrait', title, onePage }: Sheet, said: string): string {
    const size = onePage ? 'margin: 9mm 11mm 13mm;' : '';
    const left = `@bottom-left { content: ${cssText(`${said} · ${title}`)}; }`;
    return `@page { size: ${orientation}; ${size} ${left} @bottom-right { content: counter(page) " of " counter(pages); } }`;
}

/** A text as CSS writes one; whatever could end it, or the style, by its number. */
function cssText(text: string): string {
    const escaped = text.replace(/[^\p{L}\p{N} ·,.:–-]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `);
    return `"${escaped}"`;
}

function block(each: Block): ElementContent {
    switch (each.sort) {
        case 'heading':
            return h(each.level === 3 ? 'h3' : 'h2', each.text);
        case 'text':
            return h('p', each.text);
        case 'caution':
            return h('p', { class: 'caution', role: 'note' }, each.text);
        case 'list':
            return h(
                'ul',
                each.items.map((item) => h('li', item)),
            );
        case 'table':
            return table(each);
        case 'picture':
            return h('figure', { style: `width: ${Math.round(each.share * 100)}%` }, [
                // Our own drawing, whose words are escaped.
                { type: 'raw', value: each.svg } as unknown as Element,
                h('figcaption', each.caption),
            ]);
        case 'check':
            return h('p', { class: 'check' }, [
                h('span', { class: 'box', ariaHidden: 'true' }),
                h('span', each.text),
                ...each.by.map((who) => h('span', { class: 'sign' }, who)),
            ]);
        case 'cards':
            return h(
                'div',
                { class: 'cards' },
                each.cards.map((card) =>
                    h('section', { class: 'card' }, [
                        h('p', { class: 'name' }, card.title),
                        ...card.lines.map((line) => h('p', line)),
                    ]),
                ),
            );
    }
}

function table({ caption, columns, rows }: Table): Element {
    const align = (index: number): string | undefined =>
        columns[index]?.figures ? 'figures' : columns[index]?.toFill ? 'to-fill' : undefined;
    return h('table', { class: rows.length <= SHORT_TABLE ? 'short' : undefined }, [
        ...(caption ? [h('caption', caption)] : []),
        h(
            'colgroup',
            columns.map(({ share }) => h('col', share ? { style: `width: ${Math.round(share * 100)}%` } : {})),
        ),
        h('thead', [
            h(
                'tr',
                columns.map(({ head }, index) => h('th', { scope: 'col', class: align(index) }, head)),
            ),
        ]),
        h(
            'tbody',
            rows.map((row) =>
                h(
                    'tr',
                    columns.map((_, index) => h('td', { class: align(index) }, cell(row[index] ?? ''))),
                ),
            ),
        ),
    ]);
}

const cell = (each: Cell): ElementContent =>
    typeof each === 'string' ? { type: 'text', value: each } : h('strong', cellText(each));
