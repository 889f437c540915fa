import type { Checked } from './check.js';
import { allergenList } from './output/lists/allergens.js';
import { listCsv } from './output/lists/csv.js';
import { listJson } from './output/lists/json.js';
import type { ListFormat, ListName } from './output/lists/list-names.js';
import type { List } from './output/lists/list.js';
import { listMarkdown } from './output/lists/markdown.js';
import { pullList } from './output/lists/pull.js';
import { runList } from './output/lists/run.js';
import { seatsList } from './output/lists/seats.js';
import type { SheetSource } from './output/sheets/evening.js';

/** What stands on a list. */
export interface ListOptions {
    /** Guests of the guest list by their names instead of initials: what they need is health data. */
    readonly names?: boolean;
}

const MAKERS = {
    pull: pullList,
    seats: seatsList,
    run: runList,
    allergens: allergenList,
} as const satisfies Record<
    ListName,
    (source: SheetSource) => Pick<List, 'title' | 'columns' | 'rows' | 'cautions'> | undefined
>;

/**
 * One list of a checked plan, as columns and rows. The same plan gives the same list.
 * @returns nothing where the plan has nothing for it: no tables for `seats`; no guests, room or team for `run`
 */
export function listOf(checked: Checked, name: ListName, { names }: ListOptions = {}): List | undefined {
    const { plan, findings, file } = checked;
    const made = MAKERS[name]({ ...checked, names });
    return (
        made && {
            name,
            event: plan.event?.title ?? file,
            date: plan.event?.date?.iso,
            revision: plan.event?.revision?.count,
            despiteErrors: findings.some(({ severity }) => severity === 'error') || undefined,
            ...made,
        }
    );
}

/**
 * A list as text. CSV as RFC 4180 has it, safe to open in a spreadsheet, UTF-8 without a byte-order mark; a table of Markdown
 * with its escapes; JSON with a version and a schema (`LIST_SCHEMA`). CSV has no place for `cautions`: show them beside it.
 */
export function listText(list: List, format: ListFormat): string {
    switch (format) {
        case 'csv':
            return listCsv(list);
        case 'markdown':
            return listMarkdown(list);
        case 'json':
            return listJson(list);
    }
}
