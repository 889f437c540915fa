import { s } from 'hastscript';
import { path, round } from '../svg.js';
import { text, widthOf } from './lettering.js';
import type { Page } from './parts.js';
import { FILL, MEANING } from './patterns.js';
import type { Section } from './section.js';

/** What the fills mean that are there, in as many rows as they need. */
export function drawKey({ look: { letters, margin }, width, sink }: Page): Section {
    const swatch = { width: letters * 1.6, height: letters * 0.9 };
    const row = letters * 1.7;
    let [x, y] = [margin, letters * 1.4];
    const parts = MEANING.filter(([fill]) => sink.fills.has(fill)).map(([fill, words]) => {
        const wide = swatch.width + letters / 2 + widthOf(words, letters);
        if (x > margin && x + wide > width - margin) {
            [x, y] = [margin, y + row];
        }
        const at = x;
        x += wide + letters * 1.6;
        const shape =
            fill === 'call'
                ? s('path', {
                      d: path`M ${at + 4} ${y - swatch.height / 2} h ${swatch.height} l ${-swatch.height / 2} ${swatch.height} Z`,
                      fill: FILL.call,
                  })
                : s('rect', {
                      x: `${round(at)}`,
                      y: `${round(y - swatch.height / 2)}`,
                      width: `${round(swatch.width)}`,
                      height: `${round(swatch.height)}`,
                      fill: FILL[fill],
                  });
        return {
            ink: s('g', { class: `meaning ${fill}` }, [shape]),
            words: text(words, at + swatch.width + letters / 2, y + letters * 0.36),
        };
    });
    return {
        height: y + letters * 1.4,
        ink: parts.map((part) => part.ink),
        words: parts.map((part) => part.words),
    };
}
