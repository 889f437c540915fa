import { readText } from '../plan/read-text.js';
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
 * Only the item of the file around the cursor is read, closed as its blocks ask.
 */
export function wantedNameAt({ item, openBlocks }: Cursor, stand: 'name' | 'text'): WantedName {
    const words = stand === 'name' ? STAND_IN : `"${STAND_IN}"`;
    const blank = item === '' || /\s$/.test(item) ? '' : ' ';
    let partly: WantedName = {};
    for (const going of GOING_ON) {
        const reading = read(`${item}${blank}${words}${going}`, openBlocks);
        const occurrence = reading.occurrences.find(({ name, role }) => name === STAND_IN && role === 'uses');
        const found: WantedName = occurrence ? { occurrence } : { madeUp: madeUpIn(reading) };
        if ((found.occurrence ?? found.madeUp) && reading.syntax.length === 0) {
            return found;
        }
        partly = (partly.occurrence ?? partly.madeUp) ? partly : found;
    }
    return partly;
}

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
export function wantedUnitAt({ item, openBlocks }: Cursor): UnitProblem | undefined {
    const end = item.trimEnd().length;
    return read(item, openBlocks).unitProblems.find(({ origin, unit }) => unit === undefined && origin.end === end);
}

function read(item: string, openBlocks: number): Reading {
    return readText('item.cover', `${item}${' }'.repeat(openBlocks)}`);
}
