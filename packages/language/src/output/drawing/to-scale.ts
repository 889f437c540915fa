/** What pictures to scale have in common: the title above, the bar of the scale below, and words large enough. */
import type { Element } from 'hast';
import { heading } from './heading.js';
import { nameOfScale, scaleBar, type Scale } from './scale-bar.js';
import { lettered, letterSize, picture, type Drawing, type Lettering } from './svg.js';
import { written, type WordsOnPage } from './words-on-page.js';

export interface Frame {
    readonly drawing: Drawing;
    readonly width: number;
    /** Height of the words. */
    readonly size: number;
    /** Words are as large as they have to be on paper, and the title is left to what stands beside the picture. */
    readonly isPrinted: boolean;
    readonly heading: readonly WordsOnPage[];
    /** What is to be left free above and below what is shown. */
    readonly above: number;
    readonly below: number;
}

/** @param usual height of the words where it is not said how wide the picture is printed */
export function frameOf(drawing: Drawing, width: number, usual: number, lettering: Lettering): Frame {
    const isPrinted = lettering.printedWidth !== undefined;
    const size = letterSize(usual, width, lettering);
    const headed = heading(drawing, { x: size, y: size * 1.6, size: size * 1.2, width: width - size * 2 });
    return {
        drawing,
        width,
        size,
        isPrinted,
        heading: isPrinted ? [] : headed.words,
        above: isPrinted ? 0 : size * 3.4 + headed.more,
        below: size * 2.2,
    };
}

/** Where the words of the frame stand in a picture so high. */
export function wordsOfFrame(frame: Frame, height: number, scale: Omit<Scale, 'size'>): WordsOnPage[] {
    return [...frame.heading, nameOfScale(...foot(frame, height), { ...scale, size: frame.size })];
}

const foot = ({ width, size }: Frame, height: number): readonly [right: number, y: number] => [
    width - size,
    height - size / 2,
];

/** @returns SVG text */
export function toScale(
    frame: Frame,
    height: number,
    scale: Omit<Scale, 'size'>,
    ink: readonly Element[],
    words: readonly Element[],
): string {
    const { drawing, width, size, isPrinted } = frame;
    return picture({ width, height }, drawing, [
        ...ink,
        lettered(
            [...frame.heading.flatMap(written), ...words, ...scaleBar(...foot(frame, height), { ...scale, size })],
            size,
            isPrinted,
        ),
    ]);
}
