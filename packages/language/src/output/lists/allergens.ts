import { sayNeed } from '../../service/guests.js';
import { CONTACT_CAUTION } from '../plan-seats.js';
import { courseTitle, type SheetSource } from '../sheets/evening.js';
import type { List, ListCell, ListColumn } from './list.js';

/** Stands where nothing is known, so that no empty cell is taken for a promise. */
const NOT_KNOWN = '?';

const READING = `A cell names what carries the allergen. An empty cell says that the plan states none; “${NOT_KNOWN}” that it states nothing, so that any of them may be in it.`;

/** What carries which allergen, in the order served and in the words of the local code. */
export function allergenList({ plan, service }: SheetSource): Pick<List, 'title' | 'columns' | 'rows' | 'cautions'> {
    const { columns, rows } = service.allergens;
    const called = (names: readonly { readonly called: string }[]): string =>
        names.map(({ called: word }) => word).join(', ');
    return {
        title: 'Allergens',
        columns: [
            { key: 'course', head: 'Course' },
            { key: 'sort', head: 'Sort' },
            { key: 'title', head: 'Title' },
            { key: 'with', head: 'With' },
            { key: 'contents', head: 'Contents' },
            ...columns.map((column): ListColumn => ({ key: `contains-${column.name}`, head: column.called })),
            { key: 'beyond', head: 'Beyond the local code' },
            { key: 'usually', head: 'Usually, where nothing is stated' },
            { key: 'left-off-for', head: 'Left off for' },
        ],
        rows: rows.map((row): ListCell[] => [
            courseTitle(plan, row.course),
            row.sort,
            row.title,
            row.with,
            row.isStated ? 'stated' : 'not stated',
            ...columns.map(({ name }) => {
                const cell = row.cells.find(({ column }) => column === name);
                return cell ? called(cell.by) : row.isStated ? undefined : NOT_KNOWN;
            }),
            called(row.beyond),
            row.isStated ? undefined : called(row.usually),
            row.leftOffFor.map(sayNeed).join('; '),
        ]),
        cautions: [READING, CONTACT_CAUTION],
    };
}
