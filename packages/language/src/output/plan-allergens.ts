/** The allergen matrix, in the words of the local code, for the compiled plan. */
import type { AllergenRow } from '../service/allergens/types.js';
import type { Telling } from './plan-menu.js';
import { CONTACT_CAUTION } from './plan-seats.js';
import { at, needJson, type Json } from './plan-values.js';

export function allergensJson(telling: Telling): Json {
    const { plan, service } = telling;
    const { columns, rows } = service.allergens;
    const { code } = plan;
    return {
        code: code.name,
        codeCalled: code.called,
        columns,
        rows: rows.map((row) => rowJson(telling, row)),
        rule: 'An empty cell of a row that is stated says that the plan states nothing of the sort in it. A row that is not stated may hold any of them.',
        caution: CONTACT_CAUTION,
    };
}

function rowJson({ plan, places }: Telling, row: AllergenRow): Json {
    return {
        course: row.course < 0 ? 'bread' : (plan.menu?.courses[row.course]?.title ?? 'coffee'),
        sort: row.sort,
        title: row.title,
        with: row.with,
        ...at(places, row.origin),
        contents: row.isStated ? 'stated' : 'not stated',
        contains: row.cells.map(({ column, by, from }) => ({
            allergen: column,
            by: by.map(({ called }) => called),
            told: by.map(({ told }) => told),
            because: from === 'kind' ? 'its kind is made of it' : 'stated',
        })),
        beyondTheCode: row.beyond.map(({ called }) => called),
        usually: row.isStated ? undefined : row.usually.map(({ called }) => called),
        leftOffFor: row.leftOffFor.map(needJson),
    };
}
