import type { Cupboard } from '../plan/cupboard.js';
import { Declarations } from '../plan/declarations.js';
import { standardDeclarations, standardIndex } from './generated/standard.js';

/** For each shelf of the cupboard the names on it, in order, each with the length of its declaration's text. */
export type StandardIndex = Readonly<Record<keyof Cupboard, readonly (readonly [name: string, length: number])[]>>;

let standard: Cupboard | undefined;

/**
 * The standard cupboard, each thing with what it states itself. Read at build time: nothing is parsed when the program
 * starts, and of the data only what is asked for.
 */
export function standardCupboard(): Cupboard {
    standard ??= openCupboard(JSON.parse(standardIndex) as StandardIndex);
    return standard;
}

function openCupboard(index: StandardIndex): Cupboard {
    let end = 0;
    const shelf = <T>(name: keyof Cupboard): ReadonlyMap<string, T> => {
        const places = new Map<string, readonly [number, number]>();
        for (const [thing, length] of index[name]) {
            places.set(thing, [end, end + length]);
            end += length;
        }
        return new Declarations(
            places.keys(),
            (thing) => JSON.parse(standardDeclarations.slice(...places.get(thing)!)) as T,
        );
    };
    // In the order in which the generator writes them.
    return {
        pieces: shelf('pieces'),
        kinds: shelf('kinds'),
        drinks: shelf('drinks'),
        substances: shelf('substances'),
        diets: shelf('diets'),
        codes: shelf('codes'),
    };
}
