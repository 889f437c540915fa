/** Where the pieces of a cover lie, for the compiled plan. */
import { factsOf } from '../service/cover-geometry/cover-geometry.js';
import { originOfPiece } from '../service/cover-geometry/cover-to-place.js';
import type { CoverOnTable, PlacedPiece } from '../service/cover-geometry/types.js';
import type { Variation } from '../service/types.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

const FRAME =
    'Millimetres from the table edge in front of the guest, x to the right, y away from the guest; degrees counter-clockwise, 0 with the tip away from the guest. Sizes are the middle of what the cupboard says.';

/** Every piece alone, and the cover on each sort of table in the room. */
export function coverGeometryJson(telling: Telling, variation: Variation): Json {
    const geometry = telling.service.coverGeometry[variation.index]!;
    const pieces = (list: readonly PlacedPiece[]): Json[] => list.map((piece) => pieceJson(telling, variation, piece));
    return {
        frame: FRAME,
        pieces: pieces(geometry.pieces),
        onTables: geometry.onTables.map(({ tables, on }) => ({
            tables,
            laid: on.laid,
            centre: tenth(on.centre),
            overlaps: on.overlaps.map(({ by, ...overlap }) => ({ ...overlap, by: tenth(by) })),
            overTheEdge: on.offTable.map(({ by, ...over }) => ({ ...over, by: tenth(by) })),
            pieces: placesOf(on),
        })),
    };
}

function pieceJson({ plan, service, places }: Telling, variation: Variation, piece: PlacedPiece): Json {
    return {
        id: piece.id,
        piece: piece.name,
        row: piece.row,
        shape: piece.shape,
        brought: piece.when === 'brought' || undefined,
        course: plan.menu?.courses[piece.course]?.title,
        length: tenth(piece.length),
        width: tenth(piece.width),
        ...placeJson(piece),
        ...at(places, originOfPiece(variation.cover, factsOf(variation, service.facts), piece.id)),
    };
}

/** On a table only the places differ. */
function placesOf({ pieces }: CoverOnTable): Json[] {
    return pieces.map((piece) => ({ id: piece.id, ...placeJson(piece) }));
}

const placeJson = ({ x, y, degrees }: PlacedPiece): Json => ({ x: tenth(x), y: tenth(y), degrees });

/** To a tenth of a millimetre. */
export const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;
