import { parsePlainly } from '../grammar/plain-parser.js';
import { readFile, readText } from '../plan/read-text.js';
import type { Occurrence, Reading, UnitProblem } from '../plan/types.js';
import type { Cursor } from './cursor.js';

/** Stands for the name that is not typed yet. Nothing is called so. */
const STAND_IN = 'zz-stand-in';

/** What may have to follow a name before its clause can be read: `limit: 3`, `servers 7`, `T1: round 60 inch`. */
const GOING_ON = ['', ': zz-answer', ' 1 mm', ' { }', ' 1', ': round 1 m', ' is off', ' 1 per hour', ' per hour'];

/** What a word that nothing declares says: a measure of a piece, a figure of a local code, what is counted, what a custom is per. */
export type MadeUp =
    { readonly sort: 'measure' | 'figure' | 'counted' } | { readonly sort: 'per'; readonly custom: string };

export interface WantedName {
    readonly occurrence?: Occurrence;
    readonly madeUp?: MadeUp;
}

/**
 * Which sort of name is wanted at the cursor: a name is put there, and the language itself says how it reads it.
 * Only what is near the cursor is read, closed as its blocks ask.
 */
export function wantedNameAt({ near, openBlocks }: Cursor, stand: 'name' | 'text'): WantedName {
    const words = stand === 'name' ? STAND_IN : `"${STAND_IN}"`;
    const blank = near === '' || /\s$/.test(near) ? '' : ' ';
    const texts = GOING_ON.map((going) => closed(`${near}${blank}${words}${going}`, openBlocks));
    // In which nothing is amiss is read in no time; where all of them are wrong, the first that makes sense counts.
    let isPlain = false;
    for (const text of texts) {
        const tree = parsePlainly(text);
        const found = tree && foundIn(readFile(FILE, text, { tree, problems: [] }));
        isPlain ||= found !== undefined;
        if (found && isSomething(found)) {
            return found;
        }
    }
    let partly: WantedName = {};
    for (const text of isPlain ? [] : texts) {
        const reading = readText(FILE, text);
        const found = foundIn(reading);
        if (isSomething(found) && reading.syntax.length === 0) {
            return found;
        }
        partly = isSomething(partly) ? partly : found;
    }
    return partly;
}

function foundIn(reading: Reading): WantedName {
    const occurrence = reading.occurrences.find(({ name, role }) => name === STAND_IN && role === 'uses');
    return occurrence ? { occurrence } : { madeUp: madeUpIn(reading) };
}

const isSomething = ({ occurrence, madeUp }: WantedName): boolean => (occurrence ?? madeUp) !== undefined;

function madeUpIn({ pieces, codes, houses, teams }: Reading): MadeUp | undefined {
    if (pieces.some(({ measures, flags }) => STAND_IN in measures || flags.some(({ name }) => name === STAND_IN))) {
        return { sort: 'measure' };
    }
    if (codes.some(({ figures }) => STAND_IN in figures)) {
        return { sort: 'figure' };
    }
    const custom = houses.flatMap(({ customs }) => customs).find(({ per }) => per?.name === STAND_IN);
    if (custom) {
        return { sort: 'per', custom: custom.name.name };
    }
    const rates = [
        ...houses.flatMap(({ washing }) => washing.flatMap((line) => (line.sort === 'rate' ? [line.rate.what] : []))),
        ...teams.flatMap(({ roles }) => roles.map(({ rate }) => rate?.what)),
        ...houses.flatMap(({ stock }) => stock.flatMap(({ holds }) => holds.map(({ what }) => what))),
    ];
    return rates.includes(STAND_IN) ? { sort: 'counted' } : undefined;
}

/** The figure right before the cursor, where it has no unit and wants one. */
export function wantedUnitAt({ near, openBlocks }: Cursor): UnitProblem | undefined {
    const end = near.trimEnd().length;
    return readText(FILE, closed(near, openBlocks)).unitProblems.find(
        ({ origin, unit }) => unit === undefined && origin.end === end,
    );
}

const FILE = 'near.cover';

const closed = (text: string, openBlocks: number): string => `${text}${' }'.repeat(openBlocks)}`;
