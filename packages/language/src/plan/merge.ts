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

/** The last cupboards, by what they were merged of: a plan is typed in far more often than its cupboard. */
const known: { readonly of: readonly unknown[]; readonly merged: Merged }[] = [];
const MOST_KNOWN = 4;

/**
 * As long as the same things are declared, the same cupboard is given.
 * @param levels the files of each level, farthest first: the used files, the event's file
 * @param base what they are laid over, each thing with only what it states itself: the standard cupboard
 */
export function mergeCupboards(levels: readonly (readonly Reading[])[], base: Cupboard = NOTHING): Merged {
    const of = [base, ...levels.flatMap((level) => [LEVEL, ...level.flatMap(declarationsIn)])];
    const place = known.findIndex((each) => each.of.length === of.length && each.of.every((one, at) => one === of[at]));
    const [held = { of, merged: merged(levels, base) }] = place < 0 ? [] : known.splice(place, 1);
    known.unshift(held);
    known.length = Math.min(known.length, MOST_KNOWN);
    return held.merged;
}

/** Stands before what a level declares. */
const LEVEL = 'level';

const declarationsIn = ({ pieces, kinds, substances, diets, codes }: Reading): readonly unknown[] => [
    ...pieces,
    ...kinds,
    ...substances,
    ...diets,
    ...codes,
];

function merged(levels: readonly (readonly Reading[])[], base: Cupboard): Merged {
    const twice: Twice[] = [];
    const merge = <T extends Declared>(
        what: string,
        of: (reading: Reading) => readonly T[],
        onto: (base: T, own: T) => T,
        from: ReadonlyMap<string, T>,
    ): ReadonlyMap<string, T> => {
        const all = new Map<string, T[]>();
        for (const level of levels) {
            const here = new Map<string, T>();
            for (const own of level.flatMap(of)) {
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
            return from;
        }
        const lay = (beneath: T | undefined, own: T): T => (beneath && !own.fresh ? onto(beneath, own) : own);
        return new Declarations([...from.keys(), ...all.keys()], (name) =>
            (all.get(name) ?? []).reduce(lay, from.get(name))!,
        );
    };
    const kindsOf = (sort: Kind['sort']) => (reading: Reading) => reading.kinds.filter((kind) => kind.sort === sort);
    const cupboard: Cupboard = {
        pieces: inherit(
            merge('piece', (reading) => reading.pieces, pieceOnto, base.pieces),
            pieceOnto,
        ),
        kinds: inherit(merge('kind', kindsOf('kind'), kindOnto, base.kinds), childOnto),
        drinks: inherit(merge('drink', kindsOf('drink'), kindOnto, base.drinks), childOnto),
        substances: merge('substance', (reading) => reading.substances, substanceOnto, base.substances),
        diets: merge('diet', (reading) => reading.diets, dietOnto, base.diets),
        codes: merge('code', (reading) => reading.codes, codeOnto, base.codes),
    };
    return { cupboard, twice };
}

/** What `own` states, over what `base` states. Empty lists state nothing. */
function over<T extends object>(base: T, own: T): T {
    const stated = Object.entries(own).filter(
        ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    );
    return { ...base, ...Object.fromEntries(stated) };
}

const pieceOnto = (base: Piece, own: Piece): Piece => ({
    ...over(base, own),
    measures: { ...base.measures, ...own.measures },
});
const kindOnto = (base: Kind, own: Kind): Kind => over(base, own);
const substanceOnto = (base: Substance, own: Substance): Substance => ({
    ...over(base, own),
    eachByName: base.eachByName || own.eachByName,
});
const dietOnto = (base: Diet, own: Diet): Diet => ({
    ...over(base, own),
    statedOnly: base.statedOnly || own.statedOnly,
});
const codeOnto = (base: LocalCode, own: LocalCode): LocalCode => ({
    ...over(base, own),
    figures: { ...base.figures, ...own.figures },
});

/** A kind has what its parent has, save its words, and knows its line. */
function childOnto(parent: Kind, own: Kind): Kind {
    const { called: _called, ...heritage } = parent;
    return { ...over(heritage as Kind, own), lineage: [own.name, ...parent.lineage] };
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
