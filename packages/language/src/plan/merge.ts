/** One namespace out of many files: the nearer declaration wins and keeps what it does not state itself, unless it is `fresh`. */
import type { Cupboard, Kind, LocalCode, Piece, Substance, Diet } from './cupboard.js';
import type { Origin } from './origin.js';
import type { Plan, Reading } from './types.js';

interface Declared {
    readonly name: string;
    readonly fresh: boolean;
    readonly nameOrigin: Origin;
}

type Twice = Plan['twice'][number];

/** @param levels the files of each level, farthest first: the standard cupboard, the used files, the event's file */
export function mergeCupboards(
    levels: readonly (readonly Reading[])[],
    base?: Cupboard,
): { cupboard: Cupboard; twice: Twice[] } {
    const twice: Twice[] = [];
    const merge = <T extends Declared>(
        what: string,
        of: (reading: Reading) => readonly T[],
        onto: (base: T, own: T) => T,
        from?: ReadonlyMap<string, T>,
    ): Map<string, T> => {
        const merged = new Map<string, T>(from);
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
                const beneath = merged.get(own.name);
                merged.set(own.name, beneath && !own.fresh ? onto(beneath, own) : own);
            }
        }
        return merged;
    };
    const kinds = merge(
        'kind',
        (reading) => reading.kinds.filter((kind) => kind.sort === 'kind'),
        kindOnto,
        base?.kinds,
    );
    const drinks = merge(
        'drink',
        (reading) => reading.kinds.filter((kind) => kind.sort === 'drink'),
        kindOnto,
        base?.drinks,
    );
    const cupboard: Cupboard = {
        pieces: inherit(
            merge('piece', (reading) => reading.pieces, pieceOnto, base?.pieces),
            pieceOnto,
        ),
        kinds: inherit(kinds, childOnto),
        drinks: inherit(drinks, childOnto),
        substances: merge('substance', (reading) => reading.substances, substanceOnto, base?.substances),
        diets: merge('diet', (reading) => reading.diets, dietOnto, base?.diets),
        codes: merge('code', (reading) => reading.codes, codeOnto, base?.codes),
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

/** Fills every thing in from its parent (`clear-soup is soup`); a circle of parents ends where it closes. */
function inherit<T extends { readonly name: string; readonly parent?: { readonly name: string } }>(
    all: ReadonlyMap<string, T>,
    onto: (parent: T, own: T) => T,
): Map<string, T> {
    const done = new Map<string, T>();
    const visit = (own: T, below: ReadonlySet<string>): T => {
        const known = done.get(own.name);
        if (known) {
            return known;
        }
        const parent = own.parent && !below.has(own.parent.name) ? all.get(own.parent.name) : undefined;
        const full = parent ? onto(visit(parent, new Set([...below, own.name])), own) : own;
        done.set(own.name, full);
        return full;
    };
    for (const own of all.values()) {
        visit(own, new Set([own.name]));
    }
    return done;
}
