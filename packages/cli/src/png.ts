import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { Letters } from './letters.js';

/** The folder of this bundle, into which the build lays the rasteriser. */
declare const __dirname: string;

let ready: Promise<void> | undefined;

/**
 * A drawing as PNG, its words in the given letters: the same drawing gives the same bytes on every machine.
 * @param width in pixels
 */
export async function svgPng(
    svg: string,
    { width, letters }: { width: number; letters: Letters },
): Promise<Uint8Array> {
    ready ??= initWasm(readFileSync(join(__dirname, 'resvg.wasm')));
    await ready;
    const drawn = new Resvg(svg, {
        fitTo: { mode: 'width', value: width },
        font: {
            fontBuffers: [letters.regular, letters.bold],
            defaultFontFamily: 'Noto Sans',
            sansSerifFamily: 'Noto Sans',
        },
    });
    return drawn.render().asPng();
}
