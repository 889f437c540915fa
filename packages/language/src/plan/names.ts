/** Looking names up and comparing them. Pure; shared by rules and calculations. */
import type { Cupboard, Kind, Piece, Substance } from './cupboard.js';
import type { Course, Menu } from './types.js';

/** True where a kind is `name` or descends from it. */
export function isKindOf(kind: Kind | undefined, name: string): boolean {
    return kind?.lineage.includes(name) === true;
}

/** True where the piece says it suits the kind, one of its parents, or where one of those says it is eaten with it. */
export function suits(piece: Piece, kind: Kind, cupboard: Cupboard): boolean {
    const isNamed = piece.suits.some((named) => kind.lineage.includes(named.name));
    const isAsked = kind.lineage.some((name) => {
        const each = cupboard.kinds.get(name) ?? cupboard.drinks.get(name);
        return (
            each?.eaten?.some((group) => group.some((use) => use.piece.name === piece.name)) === true ||
            each?.vessels.some((vessel) => vessel.names.some((named) => named.name === piece.name)) === true
        );
    });
    return isNamed || isAsked;
}

/** Itself and everything it is a sort of: `pine-nut`, `tree-nuts`. A circle in the declarations ends where it closes. */
export function withParents(name: string, substances: ReadonlyMap<string, Substance>): Set<string> {
    const found = new Set<string>();
    const open = [name];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
        if (!found.has(next)) {
            found.add(next);
            open.push(...(substances.get(next)?.parents ?? []).map((parent) => parent.name));
        }
    }
    return found;
}

/**
 * True where food with `contained` may not go to someone without `excluded`. The widest meaning: a sort of what is excluded
 * (pine-nut for tree-nuts), and the whole of which the excluded thing is a sort (tree-nuts, unnamed, for almond).
 */
export function clashes(contained: string, excluded: string, substances: ReadonlyMap<string, Substance>): boolean {
    return withParents(contained, substances).has(excluded) || withParents(excluded, substances).has(contained);
}

/** The course a name means: its kind, else its title. The last of its kind where there are several. */
export function findCourse(menu: Menu | undefined, name: string): Course | undefined {
    const courses = menu?.courses ?? [];
    return courses.findLast((course) => course.kind.name === name) ?? courses.find((course) => course.title === name);
}

/**
 * True where the code requires guests to be told of it: by its own name, or as a sort of something the code names as a whole
 * (a prawn is a crustacean); not where the code lists the sorts one by one (a pine nut is no EU nut).
 */
export function isRequiredBy(
    code: string,
    name: string,
    substances: ReadonlyMap<string, Substance>,
    below: ReadonlySet<string> = new Set(),
): boolean {
    const substance = substances.get(name);
    if (!substance || below.has(name)) {
        return false;
    }
    const isNamed = substance.requiredIn.some((named) => named.name === code);
    return (
        isNamed ||
        substance.parents.some(
            (parent) =>
                !substances.get(parent.name)?.eachByName &&
                isRequiredBy(code, parent.name, substances, new Set([...below, name])),
        )
    );
}
