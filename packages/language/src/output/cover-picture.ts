import type { Plan } from '../plan/types.js';
import type { Service, Variation } from '../service/types.js';
import { drawCover } from './draw-cover.js';

/** The picture of what lies at the cover when guests sit, for one set of dishes. SVG text; see `drawCover`. */
export function coverPicture(
    { plan, service }: { readonly plan: Plan; readonly service: Service },
    variation: Variation,
): string {
    const { cover } = variation;
    const event = plan.event?.title ?? plan.file;
    const title = service.variations.length > 1 ? `${event}: ${variation.label}` : event;
    const list = (pieces: readonly { readonly piece: { readonly name: string } }[]): string =>
        pieces.map(({ piece }) => piece.name).join(', ') || 'nothing';
    const description =
        `Left of the plate, outermost first: ${list(cover.left)}. Right of it: ${list(cover.right)}. Above it: ${list(cover.above)}. ` +
        `Glasses from the knife outward: ${list(cover.glasses)}.`;
    const pieces = service.coverGeometry[variation.index]!.pieces.filter((piece) => piece.when === 'laid');
    return drawCover(pieces, { title, description });
}
