/** The covers of several sets of dishes: the first one drawn, the others by what differs. */
import { listed } from '../../rules/wording.js';
import type { Cover, Variation } from '../../service/types.js';
import { coverPicture } from '../drawing/pictures.js';
import { capital, pieceCalled, type SheetSource } from './evening.js';
import { TEXT_WIDTH, type Block } from './sheet.js';

/** More differences than this are drawn rather than told. */
const MOST_TOLD = 3;

/** Share of the page's width that a cover takes. */
const SHARE = 0.9;

/** @param caption what stands under the picture of a set of dishes */
export function coverBlocks(
    source: SheetSource,
    variations: readonly Variation[],
    caption: (variation: Variation) => string,
): Block[] {
    const [first, ...others] = variations;
    if (!first) {
        return [];
    }
    const drawn = (variation: Variation): Block[] => [
        { sort: 'text', text: coverInWords(source, variation.cover) },
        {
            sort: 'picture',
            svg: coverPicture(source, variation, undefined, undefined, { printedWidth: TEXT_WIDTH * SHARE }),
            caption: caption(variation),
            share: SHARE,
        },
    ];
    return [
        ...drawn(first),
        ...others.flatMap((variation): Block[] => {
            const { added, gone } = difference(first.cover, variation.cover);
            const called = (pieces: readonly string[]): string =>
                listed(pieces.map((piece) => pieceCalled(source.plan, piece)));
            if (added.length > MOST_TOLD || gone.length > MOST_TOLD) {
                return drawn(variation);
            }
            const told =
                added.length > 0 && gone.length > 0
                    ? `${called(added)} in place of ${called(gone)}`
                    : added.length > 0
                      ? `${called(added)} besides`
                      : gone.length > 0
                        ? `no ${called(gone)}`
                        : 'the same pieces';
            return [{ sort: 'text', text: `${caption(variation)}: ${told}.` }];
        }),
    ];
}

/** `Left, from outside: salad fork, dinner fork. Right, from outside: …` */
export function coverInWords({ plan }: Pick<SheetSource, 'plan'>, cover: Cover): string {
    const row = (words: string, all: readonly { readonly piece: { readonly name: string } }[]): string[] =>
        all.length === 0 ? [] : [`${words}: ${all.map(({ piece }) => pieceCalled(plan, piece.name)).join(', ')}.`];
    return [
        ...row('Left, from outside', cover.left),
        ...row('Right, from outside', cover.right),
        ...row('Above, nearest the plate first', cover.above),
        ...row('On the bread plate', cover.breadPlate),
        ...row('Glasses, from the knife', cover.glasses),
    ].join(' ');
}

function difference(a: Cover, b: Cover): { readonly added: readonly string[]; readonly gone: readonly string[] } {
    const [was, is] = [laid(a), laid(b)];
    const without = (all: readonly string[], others: readonly string[]): string[] => {
        const left = [...others];
        return all.filter((piece) => {
            const at = left.indexOf(piece);
            left.splice(at < 0 ? left.length : at, 1);
            return at < 0;
        });
    };
    return { added: without(is, was), gone: without(was, is) };
}

const laid = (cover: Cover): string[] =>
    [...cover.left, ...cover.right, ...cover.above, ...cover.breadPlate, ...cover.glasses].map(
        ({ piece }) => piece.name,
    );

/** What somebody reads of a set of dishes: `Grilled sirloin`, `all guests`. */
export const dishesCalled = ({ label }: Variation): string => capital(label);
