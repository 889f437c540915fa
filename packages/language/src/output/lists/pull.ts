import { pieceCalled, type SheetSource } from '../sheets/evening.js';
import { pullByStore } from '../stores.js';
import type { List, ListCell } from './list.js';

/** What is fetched from each store, in the order the steward goes round. */
export function pullList({ plan, service }: SheetSource): Pick<List, 'title' | 'columns' | 'rows' | 'cautions'> {
    return {
        title: 'Pull list',
        columns: [
            { key: 'store', head: 'Store' },
            { key: 'piece', head: 'Piece' },
            { key: 'called', head: 'Called' },
            { key: 'pull', head: 'Pull', figures: true },
            { key: 'needed', head: 'Needed', figures: true },
            { key: 'overset', head: 'For extra covers', figures: true },
            { key: 'washed', head: 'Washed in between', figures: true },
            { key: 'spare', head: 'Spare', figures: true },
            { key: 'owned', head: 'Owned', figures: true },
            { key: 'rented', head: 'Rented', figures: true },
            { key: 'short', head: 'Short', figures: true },
            { key: 'rack', head: 'Rack' },
            { key: 'each', head: 'In a rack', figures: true },
            { key: 'racks', head: 'Racks', figures: true },
        ],
        rows: pullByStore(plan, service).flatMap(({ store, lines }) =>
            lines.map((line): ListCell[] => {
                const rack = service.stock.racks.find(({ piece }) => piece === line.piece);
                return [
                    store,
                    line.piece,
                    pieceCalled(plan, line.piece),
                    line.pull,
                    line.needed,
                    line.overset,
                    line.washed,
                    line.spare,
                    line.owned,
                    line.rented,
                    line.short,
                    rack?.rack,
                    rack?.each,
                    rack?.racks,
                ];
            }),
        ),
        cautions: [],
    };
}
