/** One namespace out of many files: the nearer declaration wins and keeps what it does not state itself, unless it is `fresh`. */
import type { Cupboard, Kind, LocalCode, Piece, Substance, Diet } from './cupboard.js';
import { Declarations } from './declarations.js';
import type { Origin } from './origin.js';
import type { Plan, Reading } from './types.js';

interface Declared {
    readonly name: string;
    readonly fresh: boolean;
    readonly nameOrigin: Origin;
}

type Twice = Plan['twice'][number];

const NOTHING: Cupboard = {
    pieces: new Map(),
    kinds: new Map(),
    drinks: new Map(),
    substances: new Map(),
    diets: new Map(),
    codes: new Map(),
};

interface Merged {
    readonly cupboard: Cupboard;
    readonly twice: readonly Twice[];
}

/**
 * As long as the same things of a sort are declared, the same namespace is given.
 * @param levels the files of each level, farthest first: the used files, the event's file
 * @param base what they are laid over, each thing with only what it states itself: the standard cupboard
 */
export function mergeCupboards(levels: readonly (readonly Reading[])[], base: Cupboard = NOTHING): Merged {
    const merged = {
        pieces: pieces(levels, base.pieces),
        kinds: kinds(levels, base.kinds),
        drinks: drinks(levels, base.drinks),
        substances: substances(levels, base.substances),
        diets: diets(levels, base.diets),
        codes: codes(levels, base.codes),
    };
    const names = Object.entries(merged).map(([name, { things }]): [string, unknown] => [name, things]);
    return {
        cupboard: Object.fromEntries(names) as unknown as Cupboard,
        twice: Object.values(merged).flatMap(({ twice }) => twice),
    };
}

/** The things of one sort by name, and those declared twice. */
interface Namespace<T> {
    readonly things: ReadonlyMap<string, T>;
    readonly twice: readonly Twice[];
}

type Merge<T> = (levels: readonly (readonly Reading[])[], from: ReadonlyMap<string, T>) => Namespace<T>;

/** Stands before what a level declares. */
const LEVEL = 'level';
const MOST_KNOWN = 4;

/**
 * @param onto lays what a nearer file states over what a farther one does
 * @param inherit fills things in from their parents, where things of the sort have any
 */
function namespace<T extends Declared>(
    what: string,
    of: (reading: Reading) => readonly T[],
    onto: (base: T, own: T) => T,
    inherit: (stated: ReadonlyMap<string, T>) => ReadonlyMap<string, T> = (stated) => stated,
): Merge<T> {
    /** The last ones, by what they were merged of: a plan is typed in far more often than its cupboard. */
    const known: { readonly of: readonly unknown[]; readonly merged: Namespace<T> }[] = [];
    return (levels, from) => {
        const declared = levels.map((level) => level.flatMap(of));
        const all = [from, ...declared.flatMap((level) => [LEVEL, ...level])];
        const place = known.findIndex(
            (each) => each.of.length === all.length && each.of.every((one, at) => one === all[at]),
        );
        const merge = (): Namespace<T> => {
            const { things, twice } = lay(what, declared, onto, from);
            return { things: inherit(things), twice };
        };
        const [held = { of: all, merged: merge() }] = place < 0 ? [] : known.splice(place, 1);
        known.unshift(held);
        known.length = Math.min(known.length, MOST_KNOWN);
        return held.merged;
    };
}

function lay<T extends Declared>(
    what: string,
    levels: readonly (readonly T[])[],
    onto: (base: T, own: T) => T,
    from: ReadonlyMap<string, T>,
): Namespace<T> {
    const twice: Twice[] = [];
    const all = new Map<string, T[]>();
    for (const level of levels) {
        const here = new Map<string, T>();
        for (const own of level) {
            const first = here.get(own.name);
            if (own.name === '') {
                continue;
            }
            if (first) {
                twice.push({ what, name: own.name, first: first.nameOrigin, again: own.nameOrigin });
                continue;
            }
            here.set(own.name, own);
            all.set(own.name, [...(all.get(own.name) ?? []), own]);
        }
    }
    if (all.size === 0) {
        return { things: from, twice };
    }
    const over = (beneath: T | undefined, own: T): T => (beneath && !own.fresh ? onto(beneath, own) : own);
    const things = new Declarations([...from.keys(), ...all.keys()], (name) =>
        (all.get(name) ?? []).reduce(over, from.get(name))!,
    );
    return { things, twice };
}

/** What `own` states, over what `base` states. Empty lists state nothing. */
function over<T extends object>(base: T, own: T): T {
    const stated = Object.entries(own).filter(
        ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    );
    return { ...base, ...Object.fromEntries(stated) };
}

/** As `over`; whoever declares a thing again adds to the other words for it. */
function again<T extends { readonly also: readonly string[] }>(base: T, own: T): T {
    return { ...over(base, own), also: [...base.also, ...own.also] };
}

const withMeasures = (base: Piece, own: Piece): Piece['measures'] => ({ ...base.measures, ...own.measures });
const pieceOnto = ofPairs((base: Piece, own: Piece): Piece => ({
    ...again(base, own),
    measures: withMeasures(base, own),
}));
const kindOnto = ofPairs((base: Kind, own: Kind): Kind => again(base, own));
const substanceOnto = ofPairs((base: Substance, own: Substance): Substance => ({
    ...again(base, own),
    eachByName: base.eachByName || own.eachByName,
}));
const dietOnto = ofPairs((base: Diet, own: Diet): Diet => ({
    ...again(base, own),
    statedOnly: base.statedOnly || own.statedOnly,
}));
const codeOnto = ofPairs((base: LocalCode, own: LocalCode): LocalCode => ({
    ...over(base, own),
    figures: { ...base.figures, ...own.figures },
}));

/** A piece has what its parent has, save the other words for it. */
const pieceBelow = ofPairs((parent: Piece, own: Piece): Piece => ({
    ...over(parent, own),
    measures: withMeasures(parent, own),
    also: own.also,
}));

/** A kind has what its parent has, save its words, and knows its line. */
const childOnto = ofPairs((parent: Kind, own: Kind): Kind => {
    const { called: _called, ...heritage } = parent;
    return { ...over(heritage as Kind, own), also: own.also, lineage: [own.name, ...parent.lineage] };
});

/** Of the same two the same third is made, so that a name stays what it was while others are declared. */
function ofPairs<T extends object>(onto: (base: T, own: T) => T): (base: T, own: T) => T {
    const known = new WeakMap<T, WeakMap<T, T>>();
    return (base, own) => {
        const over = known.get(base) ?? new WeakMap<T, T>();
        known.set(base, over);
        const made = over.get(own) ?? onto(base, own);
        over.set(own, made);
        return made;
    };
}

/** Fills a thing in from its parent (`clear-soup is soup`), its parent's parent and so on; a circle ends where it closes. */
function inherit<T extends { readonly name: string; readonly parent?: { readonly name: string } }>(
    stated: ReadonlyMap<string, T>,
    onto: (parent: T, own: T) => T,
): ReadonlyMap<string, T> {
    return new Declarations(stated.keys(), (name) => {
        const line: T[] = [];
        let next = stated.get(name);
        while (next !== undefined && !line.includes(next)) {
            line.push(next);
            next = next.parent && stated.get(next.parent.name);
        }
        return line.reduceRight((parent, own) => onto(parent, own));
    });
}

const kindsOf = (sort: Kind['sort']) => (reading: Reading) => reading.kinds.filter((kind) => kind.sort === sort);
const pieces = namespace(
    'piece',
    (reading) => reading.pieces,
    pieceOnto,
    (stated) => inherit(stated, pieceBelow),
);
const kinds = namespace('kind', kindsOf('kind'), kindOnto, (stated) => inherit(stated, childOnto));
const drinks = namespace('drink', kindsOf('drink'), kindOnto, (stated) => inherit(stated, childOnto));
const substances = namespace('substance', (reading) => reading.substances, substanceOnto);
const diets = namespace('diet', (reading) => reading.diets, dietOnto);
const codes = namespace('code', (reading) => reading.codes, codeOnto);
