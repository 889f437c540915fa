import type { Nodes } from 'hast';
import { fromHtml } from 'hast-util-from-html';
import sat from 'sat';
import { widthOfWords } from '../../packages/language/src/output/drawing/svg.js';

/** Words of a picture as they take up its page, measured with the widths that drawings use. */
export interface WordsInPicture {
    readonly words: string;
    readonly size: number;
    readonly corners: readonly (readonly [x: number, y: number])[];
}

/** How far letters reach above and below their baseline, in heights of letters. */
const [ASCENT, DESCENT] = [0.74, 0.2];
/** Boxes that share no more than this lie beside each other; units of the page. */
const NOISE = 0.2;

/** The words of a picture in their order. */
export function wordsInPicture(svg: string): WordsInPicture[] {
    return found(fromHtml(svg, { fragment: true, space: 'svg' }), { x: 0, y: 0, size: 0 });
}

interface Around {
    readonly x: number;
    readonly y: number;
    readonly size: number;
}

function found(part: Nodes, around: Around): WordsInPicture[] {
    if (part.type !== 'element' && part.type !== 'root') {
        return [];
    }
    const own = part.type === 'element' ? part.properties : {};
    const moves = String(own.transform ?? '');
    const [, x = 0, y = 0] = (/translate\((\S+) (\S+)\)/.exec(moves) ?? []).map(Number);
    const [, turn = 0] = (/rotate\((\S+)\)/.exec(moves) ?? []).map(Number);
    const here = { x: around.x + x, y: around.y + y, size: Number(own.fontSize ?? around.size) };
    if (part.type === 'root' || part.tagName !== 'text') {
        if (turn !== 0 && JSON.stringify(part).includes('"tagName":"text"')) {
            throw new Error('Words in a turned group are not measured.');
        }
        return part.children.flatMap((child) => found(child, here));
    }
    const words = part.children.map((child) => (child.type === 'text' ? child.value : '')).join('');
    const width = widthOfWords(words, here.size);
    const left = own.textAnchor === 'middle' ? -width / 2 : own.textAnchor === 'end' ? -width : 0;
    const [sine, cosine] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
    const from = { x: here.x + Number(own.x ?? 0), y: here.y + Number(own.y ?? 0) };
    const corner = (across: number, down: number) =>
        [from.x + across * cosine - down * sine, from.y + across * sine + down * cosine] as const;
    const [top, bottom] = [-ASCENT * here.size, DESCENT * here.size];
    const corners = [corner(left, top), corner(left + width, top), corner(left + width, bottom), corner(left, bottom)];
    return [{ words, size: here.size, corners }];
}

/** Pairs of words that lie over each other, and words that reach out of the picture: each in words, nothing where all is well. */
export function crowdedWords(svg: string): string[] {
    const all = wordsInPicture(svg);
    const [, width, height] = (/viewBox="0 0 (\S+) ([^"]+)"/.exec(svg) ?? []).map(Number);
    return [
        ...all.flatMap((one, index) =>
            all.slice(index + 1).flatMap((other) => (lieOver(one, other) ? [`${one.words} × ${other.words}`] : [])),
        ),
        ...all
            .filter(({ corners }) => corners.some(([x, y]) => x < 0 || y < 0 || x > width! || y > height!))
            .map(({ words }) => `${words} reaches out of the picture`),
    ];
}

function lieOver(one: WordsInPicture, other: WordsInPicture): boolean {
    const response = new sat.Response();
    const [a, b] = [one, other].map(
        ({ corners }) =>
            new sat.Polygon(
                new sat.Vector(0, 0),
                corners.map(([x, y]) => new sat.Vector(x, y)),
            ),
    );
    return sat.testPolygonPolygon(a!, b!, response) && response.overlap > NOISE;
}
