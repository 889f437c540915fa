/** What every evening needs done before its guests and after them, derived from covers, tables and the pull list. */
import { show } from '../../plan/quantity.js';
import type { Link, Part, TaskDraft } from './drafts.js';
import type { Hands } from './hands.js';

/** Titles of the tasks that are derived: a task of the plan with one of them is that task, and others may come after it. */
export const DERIVED_TASKS = {
    setup: ['Cloths', 'Polishing', 'Folding', 'Covers', 'Place cards'],
    strike: ['Clearing', 'Linen', 'Breakdown', 'Washing', 'Counting'],
} as const;

/** What there is to do. */
export interface Workload {
    /** In the order of the room. */
    readonly tables: readonly {
        readonly name: string;
        /** Cloths of the table. */
        readonly cloths: number;
        /** Pieces laid at its covers. */
        readonly laid: number;
        /** Pieces that stand there when guests have gone. */
        readonly left: number;
        readonly cards: number;
    }[];
    /** Flatware and glasses. */
    readonly polished: number;
    readonly napkins: number;
    /** Every piece pulled. */
    readonly pulled: number;
    /** Racks still to be washed, with the minute at which they are in the dish room. */
    readonly racks: readonly { readonly racks: number; readonly from?: number }[];
}

/** min each */
export interface Rates {
    readonly cloth: number;
    readonly piece: number;
    readonly napkin: number;
    readonly card: number;
    readonly polish: number;
    readonly strikePiece: number;
    readonly strip: number;
    readonly breakDown: number;
    readonly count: number;
    /** Of the machine; absent where the house says nothing of it. */
    readonly rack?: number;
}

/** What one person polishes, folds or counts in one go, min: others can begin with it, and help. */
const AT_ONCE = 5;

/** People who lay a cloth or put a table away together. */
const TOGETHER = 2;

export function setUpTasks({ tables, polished, napkins }: Workload, rates: Rates, hands: Hands): TaskDraft[] {
    const total = (of: (table: Workload['tables'][number]) => number): number =>
        tables.reduce((sum, table) => sum + of(table), 0);
    const atTables = partsAt(tables);
    const cloths = total((table) => table.cloths);
    const laid = total((table) => table.laid);
    const cards = total((table) => table.cards);
    return draftAll('setup', {
        Cloths: {
            parts: atTables((table) => hands.together(table.cloths * rates.cloth, TOGETHER)),
            because: said(cloths, 'cloth', rates.cloth, 'two people '),
        },
        Polishing: {
            parts: chunks(polished, rates.polish).map((minutes) => hands.alone(minutes)),
            because: said(polished, 'piece', rates.polish),
        },
        Folding: {
            parts: chunks(napkins, rates.napkin).map((minutes) => hands.alone(minutes)),
            because: said(napkins, 'napkin', rates.napkin),
        },
        Covers: {
            parts: atTables((table) => hands.alone(table.laid * rates.piece)),
            because: said(laid, 'piece', rates.piece),
            after: [
                ['Cloths', 'table'],
                ['Polishing', 'share'],
                ['Folding', 'share'],
            ],
        },
        'Place cards': {
            parts: atTables((table) => hands.alone(table.cards * rates.card)),
            because: said(cards, 'card', rates.card),
            after: [['Covers', 'table']],
        },
    });
}

export function strikeTasks({ tables, napkins, pulled, racks }: Workload, rates: Rates, hands: Hands): TaskDraft[] {
    const left = tables.reduce((sum, table) => sum + table.left, 0);
    const { rack } = rates;
    const atTables = partsAt(tables);
    return draftAll('strike', {
        Clearing: {
            parts: atTables((table) => hands.alone(table.left * rates.strikePiece)),
            because: said(left, 'piece', rates.strikePiece),
        },
        Linen: {
            parts: atTables((table) => hands.alone(table.cloths > 0 || napkins > 0 ? rates.strip : 0)),
            because: said(tables.length, 'table', rates.strip),
            after: [['Clearing', 'table']],
        },
        Breakdown: {
            parts: atTables(() => hands.together(rates.breakDown, TOGETHER)),
            because: said(tables.length, 'table', rates.breakDown, 'two people '),
            after: [['Linen', 'table']],
        },
        Washing: {
            parts: rack === undefined ? [] : racks.map((load) => hands.machine(load.racks * rack, load.from)),
            because: said(
                racks.reduce((sum, load) => sum + load.racks, 0),
                'rack',
                rack ?? 0,
            ),
        },
        Counting: {
            parts: chunks(pulled, rates.count).map((minutes) => hands.alone(minutes)),
            because: said(pulled, 'piece', rates.count),
            after: [
                ['Clearing', 'whole'],
                ['Washing', 'whole'],
            ],
        },
    });
}

/** One part at each table. */
function partsAt(tables: Workload['tables']): (of: (table: Workload['tables'][number]) => Part) => Part[] {
    return (of) => tables.map((table) => ({ ...of(table), table: table.name }));
}

interface Outline {
    readonly parts: readonly Part[];
    readonly because: string;
    readonly after?: readonly (readonly [title: string, how: Link['how']])[];
}

/** Parts without work stay, so that table goes with table; a task with nothing to do at all is left out. */
function draftAll(when: 'setup' | 'strike', outlines: Readonly<Record<string, Outline>>): TaskDraft[] {
    const titles: readonly string[] = DERIVED_TASKS[when];
    const kept = titles.filter((title) => outlines[title]!.parts.some((part) => part.minutes > 0));
    return kept.map((title) => {
        const { parts, because, after = [] } = outlines[title]!;
        const links = after.flatMap(([earlier, how]): Link[] => {
            const task = kept.indexOf(earlier);
            return task < 0 ? [] : [{ task, how }];
        });
        return { title, because, parts, after: links };
    });
}

/** Work on so many pieces in goes of a few minutes each: 2.5 min a piece, 5 pieces: 5, 5 and 2.5. */
function chunks(count: number, minutes: number): number[] {
    const size = Math.max(1, Math.floor(AT_ONCE / minutes));
    const whole = Math.floor(count / size);
    const rest = count - whole * size;
    return [...Array.from({ length: whole }, () => size * minutes), ...(rest > 0 ? [rest * minutes] : [])];
}

function said(count: number, noun: string, minutes: number, who = ''): string {
    const each = minutes < 1 ? show(minutes, 's', 1) : show(minutes, 'min', 1);
    return `${count} ${noun}${count === 1 ? '' : 's'}, ${who}${each} each`;
}
