import Papa from 'papaparse';
import type { List } from './list.js';

/**
 * How a cell begins that a spreadsheet would work out instead of showing, also after blanks and in full width. Numbers are left
 * as they are: a minute before guests sit is −1 and no formula.
 */
const FORMULA = /^[\t\r\n]|^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/;

/**
 * The rows under one line of heads, as RFC 4180 has it: every line ends with CR and LF, a cell with a comma, a quote or a line
 * break in it stands in quotes. A cell that a spreadsheet would take for a formula begins with an apostrophe.
 */
export function listCsv({ columns, rows }: List): string {
    const text = Papa.unparse(
        { fields: columns.map(({ head }) => head), data: rows.map((row) => [...row]) },
        { newline: '\r\n', escapeFormulae: FORMULA },
    );
    return `${text}\r\n`;
}
