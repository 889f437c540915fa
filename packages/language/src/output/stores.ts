import type { PieceFamily } from '../plan/cupboard.js';
import type { Plan } from '../plan/types.js';
import type { PullLine, Service } from '../service/types.js';

/** Where a house keeps what, in the order the steward goes round. */
const STORES: readonly { readonly store: string; readonly families: readonly PieceFamily[] }[] = [
    { store: 'Flatware', families: ['fork', 'knife', 'spoon'] },
    { store: 'China', families: ['plate', 'bowl', 'cup'] },
    { store: 'Glass', families: ['glass'] },
    { store: 'Linen', families: ['linen'] },
    { store: 'Gear', families: ['gear'] },
];

/** What is pulled from each store, in the order the steward goes round; stores that nothing is pulled from are left out. */
export function pullByStore(
    plan: Plan,
    service: Service,
): readonly { readonly store: string; readonly lines: readonly PullLine[] }[] {
    const familyOf = (piece: string): PieceFamily => plan.cupboard.pieces.get(piece)?.family ?? 'gear';
    return STORES.flatMap(({ store, families }) => {
        const lines = service.pull
            .filter(({ piece, pull: count }) => count > 0 && families.includes(familyOf(piece)))
            .toSorted((a, b) => families.indexOf(familyOf(a.piece)) - families.indexOf(familyOf(b.piece)));
        return lines.length === 0 ? [] : [{ store, lines }];
    });
}
