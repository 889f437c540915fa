import type { List } from './list.js';

/** Names the schema that ships with the package, `schema/list.schema.json`. */
export const LIST_SCHEMA = 'https://underliner.example/schema/list-1.json';

/** Raised when a member changes its meaning or goes; new ones may come at any time. */
const LIST_VERSION = 1;

/** The list as JSON: each row an object by the keys of the columns, empty cells left out. */
export function listJson({ name, title, event, date, revision, despiteErrors, columns, rows, cautions }: List): string {
    const json = {
        schema: LIST_SCHEMA,
        version: LIST_VERSION,
        list: name,
        title,
        event,
        date,
        revision,
        despiteErrors,
        columns,
        rows: rows.map((row) =>
            Object.fromEntries(
                columns.flatMap(({ key }, index) => {
                    const cell = row[index];
                    return cell === undefined || cell === '' ? [] : [[key, cell]];
                }),
            ),
        ),
        cautions,
    };
    return `${JSON.stringify(json, undefined, 4)}\n`;
}
