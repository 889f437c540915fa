import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import { path, round } from './svg.js';

/** The outline of one piece, to scale. @param x of its middle on the page @param turn clockwise on the page, beside the piece's own */
export function outline(
    piece: Pick<PlacedPiece, 'shape' | 'row' | 'length' | 'width' | 'degrees'>,
    { x, y }: { readonly x: number; readonly y: number },
    turn = 0,
): Element {
    if (piece.shape === 'round') {
        const radius = round(piece.length / 2);
        const at = { cx: `${round(x)}`, cy: `${round(y)}` };
        const rim =
            piece.row === 'glasses'
                ? []
                : [s('circle', { ...at, r: `${round(radius * 0.72)}`, 'stroke-width': '0.8' })];
        return s('g', [s('circle', { ...at, r: `${radius}` }), ...rim]);
    }
    // The page counts clockwise.
    const turned = round((720 - piece.degrees + turn) % 360);
    const transform = `translate(${round(x)} ${round(y)})${turned === 0 ? '' : ` rotate(${turned})`}`;
    const [width, length] = [round(piece.width), round(piece.length)];
    if (piece.shape === 'pair') {
        const apart = round((length - width) / 2);
        return s(
            'g',
            { transform },
            [-apart, apart].map((y0) => s('circle', { cx: '0', cy: `${y0}`, r: `${round(width / 2)}` })),
        );
    }
    if (piece.shape === 'napkin' || piece.shape === 'card') {
        const [left, top] = [round(-width / 2), round(-length / 2)];
        const sheet = s('rect', { x: `${left}`, y: `${top}`, width: `${width}`, height: `${length}` });
        const line = `${round(left + width / 3)}`;
        const fold = s('line', { x1: line, y1: `${top}`, x2: line, y2: `${-top}`, 'stroke-width': '0.8' });
        return s('g', { transform }, piece.shape === 'napkin' ? [sheet, fold] : [sheet]);
    }
    return s('path', { transform, d: PROFILE[piece.shape](length, width) });
}

/** Outlines about the middle of the piece, its tip upward. */
const PROFILE = {
    knife: (length: number, width: number): string => {
        const [half, top, blade] = [width / 2, -length / 2, -length / 2 + length * 0.55];
        // The edge of the blade is straight and toward the plate, which is at the left.
        return path`M ${-half * 0.7} ${blade} L ${-half * 0.7} ${top + width} Q ${-half * 0.5} ${top} ${half * 0.2} ${top} Q ${half} ${top + width} ${half * 0.7} ${blade} L ${half * 0.6} ${length / 2} L ${-half * 0.6} ${length / 2} Z`;
    },
    fork: (length: number, width: number): string => {
        const [half, top] = [width / 2, -length / 2];
        const root = top + length * 0.2;
        const neck = top + length * 0.34;
        const tines = [-1, -1 / 3, 1 / 3, 1]
            .map((place) => path`M ${place * half} ${top} L ${place * half} ${root}`)
            .join(' ');
        return `${tines} ${path`M ${-half} ${root} Q ${-half} ${neck} ${-half * 0.25} ${neck} L ${-half * 0.45} ${length / 2} L ${half * 0.45} ${length / 2} L ${half * 0.25} ${neck} Q ${half} ${neck} ${half} ${root} Z`}`;
    },
    spoon: (length: number, width: number): string => {
        const [half, top] = [width / 2, -length / 2];
        const bowl = top + length * 0.3;
        return path`M ${-half * 0.22} ${bowl} C ${-half * 1.5} ${bowl - length * 0.06} ${-half} ${top} 0 ${top} C ${half} ${top} ${half * 1.5} ${bowl - length * 0.06} ${half * 0.22} ${bowl} L ${half * 0.45} ${length / 2} L ${-half * 0.45} ${length / 2} Z`;
    },
} as const;
