import { listOf, listText, type ListFormat, type ListName } from 'underliner-language';
import { BYTE_ORDER_MARK } from 'underliner-language/node';
import { CannotRun } from './cannot-run.js';
import { eventToCarry, type CarryOptions } from './event-to-carry.js';
import { writeMade } from './made.js';
import { oneInput } from './inputs.js';
import { writeTalk } from './output.js';

export interface ListOptions extends CarryOptions {
    readonly what: ListName;
    readonly format: ListFormat;
    readonly bom?: boolean;
    readonly names?: boolean;
    readonly stdinName?: string;
    readonly root?: string;
}

/** `underliner list`: one list of an event as a table. Writes nothing while something is wrong. */
export function runList(path: string, options: ListOptions): number {
    const { what, format, bom, names } = options;
    if (bom && format !== 'csv') {
        throw new CannotRun('`--bom` is for `--format csv`.');
    }
    const checked = eventToCarry(oneInput(path, options), options, 'list');
    if (typeof checked === 'number') {
        return checked;
    }
    const list = listOf(checked, what, { names: names ?? false });
    if (!list) {
        throw new CannotRun(whyNot(what));
    }
    writeMade((bom ? BYTE_ORDER_MARK : '') + listText(list, format), options);
    if (format === 'csv') {
        // CSV has no place for them.
        writeTalk(list.cautions.map((caution) => `${caution}\n`).join(''));
    }
    return 0;
}

/** What the plan would have to state. */
function whyNot(what: ListName): string {
    return what === 'seats'
        ? 'There are no seats to list: the plan has no room with tables.'
        : 'There is no run sheet to list. It wants guests, a menu, a room with tables, and a team with servers.';
}
