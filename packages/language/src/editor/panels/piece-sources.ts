import type { Checked } from '../../check.js';
import type { Origin } from '../../plan/origin.js';
import { factsOf } from '../../service/cover-geometry/cover-geometry.js';
import { originOfPiece } from '../../service/cover-geometry/cover-to-place.js';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import type { Variation } from '../../service/types.js';

/** The words by which a piece lies on the table; for what lies there by custom, those that say how many there are. */
export function writtenAt({ plan, service }: Checked, variation: Variation, piece: PlacedPiece): Origin | undefined {
    const put = originOfPiece(variation.cover, factsOf(variation, service.facts), piece.id);
    return (
        // Of what stands there because there is a menu at all, the word is enough.
        (put === plan.menu?.origin ? plan.menu?.head : put) ??
        (piece.row === 'bread' && piece.shape === 'round' ? service.bread?.bread.head : undefined) ??
        (piece.row === 'saucer' || piece.id.startsWith('cup') ? service.coffee?.coffee.head : undefined) ??
        ownedAt(plan, piece.name) ??
        plan.menu?.head
    );
}

/** Where the house says how many of a piece it has. */
export function ownedAt({ house, event }: Checked['plan'], piece: string): Origin | undefined {
    const isIt = (stock: { readonly piece: { readonly name: string } }): boolean => stock.piece.name === piece;
    return (house.stock.find(isIt) ?? event?.rents.find(isIt))?.origin;
}

/** Where the plan first asks for a piece: at a cover, else wherever it is named; the menu asks for what comes by custom. */
export function usedAt(checked: Checked, piece: string): Origin | undefined {
    const { plan, service } = checked;
    for (const variation of service.variations) {
        const lying = service.coverGeometry[variation.index]!.pieces.find(({ name }) => name === piece);
        const origin = lying && originOfPiece(variation.cover, factsOf(variation, service.facts), lying.id);
        if (origin) {
            return origin;
        }
    }
    const named = plan.readings
        .filter(({ file }) => file === plan.file)
        .flatMap(({ occurrences }) => occurrences)
        .find(({ sort, name, role }) => sort === 'piece' && role === 'uses' && name === piece);
    return named?.origin ?? ownedAt(plan, piece) ?? plan.menu?.head;
}
