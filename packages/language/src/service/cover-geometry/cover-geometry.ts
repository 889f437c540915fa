import type { Plan } from '../../plan/types.js';
import { isWaiting } from '../cover.js';
import { lazily, lazilyKept, lazilyKeptEach } from '../../plan/lazily.js';
import { remember } from '../remember.js';
import type { TableToPlace } from '../room/types.js';
import type { DishFacts, Service, Variation } from '../types.js';
import { coverToPlace, vesselsToPlace } from './cover-to-place.js';
import { layCovers } from './covers-on-table.js';
import { drawnTogether, layingDistances } from './laying-distances.js';
import { placeCover, withVessels } from './place-cover.js';
import type { TableTop } from './table-top.js';
import type { CoverOnTable, CoverToPlace, LayingDistances, PlacedPiece } from './types.js';

/** Where the pieces of one variation's cover lie. */
export interface CoverGeometry {
    /** Index of the variation. */
    readonly variation: number;
    /** As the house lays it where there is room enough, at a straight edge. */
    readonly pieces: readonly PlacedPiece[];
    /** On each sort of table in the room. */
    readonly onTables: readonly { readonly tables: readonly string[]; readonly on: CoverOnTable }[];
}

/** Tables of one shape and size with the same seats. */
export interface TableSort {
    readonly tables: readonly string[];
    readonly top: TableTop;
}

const placeAlone = remember(({ cover, distances }: { cover: CoverToPlace; distances: LayingDistances }) =>
    placeCover(cover, distances),
);

type Laid = Pick<Service, 'facts' | 'coffee'>;

/** The geometry of every variation's cover; each is worked out when it is asked for. */
export function coverGeometry(
    plan: Plan,
    service: Laid & Pick<Service, 'variations'>,
    tables: readonly TableToPlace[],
): CoverGeometry[] {
    const sorts = lazily(() => sortsOf(tables));
    return service.variations.map(geometryIn(plan, () => service, sorts));
}

/** The geometry of one variation's cover after another, all in one service. */
export function geometryIn(
    plan: Plan,
    service: () => Laid,
    sorts: () => readonly TableSort[],
): (variation: Variation) => CoverGeometry {
    return (variation) => {
        const { napkin } = variation.cover;
        const dishes = lazilyKeptEach(() => factsOf(variation, service().facts), Object.is);
        const cover = lazilyKept(() => coverToPlace({ plan, coffee: service().coffee }, variation.cover, dishes()));
        const distances = lazilyKept(() => layingDistances(plan.customs, napkin));
        const closer = lazilyKept(() => {
            const isPlateTaken = dishes().some(({ course }) => isWaiting(plan, course.index));
            return drawnTogether(plan.customs, distances(), isPlateTaken);
        });
        const vessels = lazilyKept(() => vesselsToPlace(dishes()));
        const pieces = lazily(() =>
            withVessels(placeAlone({ cover: cover(), distances: distances() }), vessels(), cover(), distances()),
        );
        const served = (on: CoverOnTable): CoverOnTable => {
            const as = on.laid === 'drawn-together' ? closer() : distances();
            return {
                laid: on.laid,
                pieces: withVessels(on.pieces, vessels(), cover(), as),
                // Still worked out when somebody asks.
                get overlaps() {
                    return on.overlaps;
                },
                offTable: on.offTable,
                centre: on.centre,
            };
        };
        const onTables = lazily(() => {
            const on = layCovers({
                cover: cover(),
                distances: distances(),
                drawnTogether: closer(),
                keptFree: centreKept(plan.customs),
            });
            return sorts().map(({ tables, top }) => ({ tables, on: served(on(top)) }));
        });
        return {
            variation: variation.index,
            get pieces() {
                return pieces();
            },
            get onTables() {
                return onTables();
            },
        };
    };
}

/** The width that the house keeps free in the middle of a table, mm. */
export function centreKept({ centre }: Plan['customs']): number {
    return centre.value === 'none' ? 0 : centre.value;
}

export function factsOf({ dishes }: Pick<Variation, 'dishes'>, facts: readonly DishFacts[]): DishFacts[] {
    return dishes.flatMap((dish) => facts.find((each) => each.dish === dish) ?? []);
}

/** Tables that a cover does not tell apart. */
export function sortsOf(tables: readonly TableToPlace[]): TableSort[] {
    const sorts = new Map<string, { tables: string[]; top: TableTop }>();
    let before: { readonly table: TableToPlace; readonly sort: { tables: string[] } } | undefined;
    for (const table of tables) {
        const { name, shape, width, depth, seats } = table;
        // Tables of one line of the text share their seats.
        const isAlike = (other: TableToPlace): boolean =>
            other.seats === seats && other.shape === shape && other.width === width && other.depth === depth;
        if (before && isAlike(before.table)) {
            before.sort.tables.push(name);
            continue;
        }
        const top = {
            shape,
            width,
            depth,
            seats: seats.map(({ number, x, y, degrees }) => ({ number, x, y, degrees })),
        };
        const key = JSON.stringify(top);
        const sort = sorts.get(key) ?? { tables: [], top };
        sort.tables.push(name);
        sorts.set(key, sort);
        before = { table, sort };
    }
    return [...sorts.values()];
}
