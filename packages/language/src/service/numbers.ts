/**
 * The four numbers of guests, and which of them each figure of the plan is reckoned for. They differ on purpose: places are laid for
 * more than come, food is cooked for those who come and a few portions over, and the host pays for what was promised.
 */
import type { Plan } from '../plan/types.js';
import type { Portion } from './types.js';

/** Guests who come; guests the host pays for; covers laid; portions of a dish cooked beyond those that guests get. */
export type GuestNumber = 'expected' | 'guaranteed' | 'set for' | 'extra portions';

export interface NumberUse {
    readonly figure: string;
    /** Where it stands in the compiled plan; `[]` for every entry of a list. */
    readonly in: string;
    readonly of: readonly GuestNumber[];
    /** What else it is reckoned for. */
    readonly beside?: "the crew's meal" | "the house's spare share";
    readonly because: string;
}

/** A figure that a new section reckons from guests gets a line here; the tests hold every line to what it says. */
export const NUMBER_USES: readonly NumberUse[] = [
    {
        figure: 'who gets which dish',
        in: 'service.courses[].portions[].count',
        of: ['expected'],
        because: 'A plate is for a guest who comes.',
    },
    {
        figure: 'portions to cook',
        in: 'service.courses[].portions[].cook',
        of: ['expected', 'extra portions'],
        beside: "the crew's meal",
        because: 'Places are set beyond the guests; food is not cooked for empty ones (quantities 4).',
    },
    {
        figure: 'guests in their seats',
        in: 'service.seats.tables[].guests',
        of: ['expected'],
        because: 'Each guest who comes has one seat.',
    },
    {
        figure: 'covers laid at the tables',
        in: 'service.seats.tables[].covers',
        of: ['expected', 'set for'],
        because: 'Every guest has a cover; those set beyond them wait for guests who come unannounced (quantities 4).',
    },
    {
        figure: 'pieces needed',
        in: 'service.pull[].needed',
        of: ['expected', 'set for'],
        because: 'What each guest uses over the evening; salt, pepper and cards stand at every cover that is laid.',
    },
    {
        figure: 'pieces laid beyond them',
        in: 'service.pull[].overset',
        of: ['expected', 'set for'],
        because: 'An overset cover is laid and not served: its bowls and plates stay in the store.',
    },
    {
        figure: 'pieces pulled',
        in: 'service.pull[].pull',
        of: ['expected', 'set for'],
        beside: "the house's spare share",
        because: 'For guests, for covers set beyond them, and the share that breaks or falls.',
    },
    {
        figure: 'bottles',
        in: 'service.drinks[].bottles[].count',
        of: ['expected'],
        because: 'Wine is poured for guests who come; an empty place drinks nothing.',
    },
    {
        figure: 'water for the tables',
        in: 'service.water[].count',
        of: ['expected'],
        because: 'As for wine.',
    },
    {
        figure: 'bread, butter, coffee, ice, and dishes by the portion',
        in: 'service.supplies[].for',
        of: ['expected', 'extra portions'],
        beside: "the crew's meal",
        because: 'What a guest who comes takes; of a dish, as many portions as are cooked.',
    },
    {
        figure: 'plates to warm and to chill',
        in: 'service.equipment[].plates',
        of: ['expected'],
        because: 'A plate is warmed for a guest who comes.',
    },
    {
        figure: 'linen in use',
        in: 'service.stock.linen[].inUse',
        of: ['expected', 'set for'],
        beside: "the house's spare share",
        because: 'As for all pieces pulled.',
    },
    {
        figure: 'guests of each table on the run sheet',
        in: 'service.run.tables[].guests',
        of: ['expected'],
        because: 'Plates are carried to guests who come.',
    },
    {
        figure: 'work of setting up',
        in: 'service.preparations.setUp.tasks[].workMinutes',
        of: ['expected', 'set for'],
        beside: "the house's spare share",
        because: 'Every cover is laid, and everything pulled is polished.',
    },
    {
        figure: 'guests paid for',
        in: 'service.numbers.paidFor',
        of: ['expected', 'guaranteed'],
        because:
            'The number guaranteed, or the guests who come where they are more; the contract decides (common practice, no source).',
    },
];

/** Portions of a dish that the kitchen cooks: for its guests, the extra ones stated, and the crew where it eats the dish. */
export function portionsToCook({ event }: Plan, { dish, count }: Pick<Portion, 'dish' | 'count'>): number {
    const { crew } = event ?? {};
    return count + (dish.extra?.count ?? 0) + (crew?.dish?.text === dish.title ? crew.count : 0);
}

/** Guests whom the host pays for at the least. */
export function paidFor({ event }: Plan): number {
    const { expected, guaranteed } = event?.guests ?? {};
    return Math.max(expected?.count ?? 0, guaranteed?.count ?? 0);
}
