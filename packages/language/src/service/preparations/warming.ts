/** When plates and bowls go into the warmer, backwards from when they are wanted, as far as it holds them. */
import { remember } from '../remember.js';
import type { WarmingLoad } from './types.js';

export interface WarmingInput {
    /** What is warmed for each course. Times in minutes after guests are seated. */
    readonly wanted: readonly Wanted[];
    /** Each piece of gear of the house that warms, and what it holds. */
    readonly gear: readonly { readonly name: string; readonly holds: number }[];
    /** min for one load to warm through. */
    readonly minutes: number;
}

interface Wanted {
    readonly course: number;
    readonly piece: string;
    readonly pieces: number;
    /** °C, where the plan says. */
    readonly to?: number;
    /** The first and the last of them are plated. */
    readonly from: number;
    readonly until: number;
}

/**
 * Seen from the end: the last course's plates leave their gear when the last of them is plated, and go in when that and the time
 * to warm them say. What there is room for stands beside them; a load of an earlier course that finds none has to be out before.
 */
export function planWarming({ wanted, gear, minutes }: WarmingInput): WarmingLoad[] {
    const usable = gear.filter(({ holds }) => holds >= 1).map((each) => ({ ...each, holds: Math.floor(each.holds) }));
    const placed: Placed[] = [];
    for (const all of wanted.toSorted((a, b) => b.until - a.until || b.course - a.course)) {
        const window = all.until - all.from;
        let left = all.pieces;
        let latest = all.until;
        while (left > 0) {
            const until = all.from + (window * left) / all.pieces;
            // What is plated first is not in later than the rest.
            latest = Math.min(latest, until);
            const put = roomFor(usable, placed, left, latest, window + minutes);
            const pieces = put?.pieces ?? left;
            const takes = (window * pieces) / all.pieces + minutes;
            const end = put?.end ?? until;
            latest = end;
            const { course, piece, to } = all;
            placed.push({ course, piece, pieces, to, unit: put?.unit, start: end - takes, end, wantedUntil: until });
            left -= pieces;
        }
    }
    return placed
        .map(({ unit, ...load }) => ({ ...load, gear: unit === undefined ? undefined : nameOf(usable, unit) }))
        .toSorted((a, b) => a.start - b.start || a.course - b.course);
}

type Gear = WarmingInput['gear'];

interface Placed extends Omit<WarmingLoad, 'gear'> {
    /** Index of the gear. */
    readonly unit?: number;
}

/** Where the next load goes, how many pieces it is, and when it has to be out. */
interface Put {
    readonly unit: number;
    readonly pieces: number;
    readonly end: number;
}

/**
 * As late as there is room for all that is left, as even as can be over as few pieces of gear as hold it; else as late as one is
 * empty: what belongs together is not scattered.
 * @param latest it has to be out by then
 * @param takes how long it stands in the gear at most
 * @returns `undefined` where there is no gear
 */
function roomFor(gear: Gear, placed: readonly Placed[], left: number, latest: number, takes: number): Put | undefined {
    const largest = Math.max(...gear.map(({ holds }) => holds));
    // It can be out when it is wanted, or when something else goes in.
    const starts = placed.map(({ start }) => start).filter((start) => start < latest);
    for (const end of [latest, ...starts.toSorted((a, b) => b - a)]) {
        const rooms = gear
            .map(({ holds }, unit) => ({ unit, holds, free: holds - mostIn(placed, unit, end - takes, end) }))
            .toSorted((a, b) => b.free - a.free || a.unit - b.unit);
        const [widest] = rooms;
        let free = 0;
        const together = rooms.findIndex((room) => (free += room.free) >= left) + 1;
        if (widest && together > 0) {
            const others = sum(rooms.slice(1, together).map((room) => room.free));
            const pieces = Math.min(widest.free, Math.max(Math.ceil(left / together), left - others));
            return { unit: widest.unit, pieces, end };
        }
        const empty = rooms.find((room) => room.free === room.holds);
        if (empty) {
            const even = Math.ceil(left / Math.ceil(left / largest));
            return { unit: empty.unit, pieces: Math.min(empty.holds, even), end };
        }
    }
    return undefined;
}

/** The most pieces that stand in a piece of gear at any time between two. */
function mostIn(placed: readonly Placed[], unit: number, from: number, to: number): number {
    const there = placed.filter((load) => load.unit === unit && load.start < to && from < load.end);
    return Math.max(
        0,
        ...[from, ...there.map(({ start }) => start)].map((time) =>
            sum(there.filter(({ start, end }) => start <= time && time < end).map(({ pieces }) => pieces)),
        ),
    );
}

function nameOf(gear: Gear, unit: number): string {
    const { name } = gear[unit]!;
    const same = gear.flatMap((each, index) => (each.name === name ? [index] : []));
    return same.length > 1 ? `${name} ${same.indexOf(unit) + 1}` : name;
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);

/**
 * How long a vessel has stood out of its warmer when it is filled, min; 0 where it comes straight from it.
 * @param loads of its course and piece
 * @param at it is filled
 */
export function minutesOut(loads: readonly WarmingLoad[], at: number): number {
    const inOrder = loads.toSorted((a, b) => a.wantedUntil - b.wantedUntil);
    const load = inOrder.find(({ wantedUntil }) => wantedUntil >= at - ROUNDING) ?? inOrder.at(-1);
    return load && at - load.end > ROUNDING ? at - load.end : 0;
}

/**
 * The longest that vessels stand out of their warmer without a word, min. Common practice, no source; an empty bowl that stands
 * alone loses four tenths of its warmth in it (temperature 13).
 */
const LONGEST_OUT = 5;

export function isOutTooLong({ end, wantedUntil }: Pick<WarmingLoad, 'end' | 'wantedUntil'>): boolean {
    return wantedUntil - end > LONGEST_OUT;
}

interface MoreSought {
    readonly input: WarmingInput;
    /** One more of them; it holds something. */
    readonly more: WarmingInput['gear'][number];
}

/** How many more of a piece of gear let everything come straight from the warmer. */
export const warmersWanted = remember(({ input, more }: MoreSought): number => {
    const most = Math.ceil(sum(input.wanted.map(({ pieces }) => pieces)) / Math.max(1, Math.floor(more.holds)));
    const isEnough = (count: number): boolean =>
        !planWarming({ ...input, gear: [...input.gear, ...Array<typeof more>(count).fill(more)] }).some(isOutTooLong);
    // Enough are more than too few: halved, for each guess plans all the evening's loads.
    let [tooFew, enough] = [-1, most];
    while (enough - tooFew > 1) {
        const middle = Math.floor((tooFew + enough) / 2);
        [tooFew, enough] = isEnough(middle) ? [tooFew, middle] : [middle, enough];
    }
    return enough;
});

/** Differences of less than this are rounding, min. */
const ROUNDING = 0.01;
