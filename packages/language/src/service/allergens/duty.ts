/** Of what the local code requires guests to be told, and in which words. The words are planning aids: the code itself decides. */
import type { Cupboard, Substance } from '../../plan/cupboard.js';
import { isRequiredBy } from '../../plan/names.js';
import type { AllergenColumn, AllergenName } from './types.js';

type Substances = Cupboard['substances'];

/** The code's own word for it, else the usual one. */
export function wordFor(name: string, code: string, substances: Substances): AllergenName {
    const called = substances.get(name)?.called;
    const own = called?.find((each) => each.code === code) ?? called?.find((each) => each.code === undefined);
    return { name, called: own?.words ?? name };
}

/**
 * As guests have to be told of a substance that the code requires: by its own word where the code names it, else by those of all
 * that it is a sort of, with its own behind: `milk (butter)`; `wheat flour` says both already.
 */
export function toldAs(name: string, code: string, substances: Substances): string {
    const own = wordFor(name, code, substances).called;
    const words = namedAbove(name, code, substances)
        .map((each) => wordFor(each, code, substances).called)
        .filter((word) => !own.toLowerCase().includes(word.toLowerCase()));
    return words.length === 0 ? own : `${words.join(', ')} (${own})`;
}

/** The words for several at once: who is told of `milk (butter)` is told of milk. */
export function toldWords(all: readonly { readonly told: string }[]): string[] {
    const words = [...new Set(all.map(({ told }) => told))];
    return words.filter((word) => !words.some((other) => other.startsWith(`${word} (`)));
}

/** The nearest that the code itself names: the substance, else what it is a sort of, of each that it is. */
export function namedAbove(
    name: string,
    code: string,
    substances: Substances,
    below: readonly string[] = [],
): string[] {
    if (below.includes(name) || !isRequiredBy(code, name, substances)) {
        return [];
    }
    const { requiredIn, parents } = substances.get(name)!;
    if (requiredIn.some((named) => named.name === code)) {
        return [name];
    }
    const ofSorts = parents.filter((parent) => !substances.get(parent.name)?.eachByName);
    return [...new Set(ofSorts.flatMap((parent) => namedAbove(parent.name, code, substances, [...below, name])))];
}

/**
 * The allergens under which the code tells of a substance: the widest that it requires (`tree-nuts` for a pine nut in the United
 * States), one for each thing that it is a sort of (`egg` and `mustard` for a mayonnaise that is both); none where the code requires
 * nothing (the same pine nut in the European Union).
 */
export function columnsUnder(
    name: string,
    code: string,
    substances: Substances,
    below: readonly string[] = [],
): readonly string[] {
    if (below.includes(name) || !isRequiredBy(code, name, substances)) {
        return [];
    }
    const parents = substances.get(name)?.parents ?? [];
    const wider = parents.flatMap((parent) => columnsUnder(parent.name, code, substances, [...below, name]));
    return wider.length > 0 ? [...new Set(wider)] : [name];
}

/** Every allergen that the code names as a whole, in the order of the names. */
export function columnsOf(code: string, substances: Substances): AllergenColumn[] {
    const isNamed = ({ requiredIn }: Substance): boolean => requiredIn.some((named) => named.name === code);
    return [...substances.values()]
        .filter(
            (substance) =>
                isNamed(substance) && columnsUnder(substance.name, code, substances).includes(substance.name),
        )
        .map(({ name }) => wordFor(name, code, substances))
        .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}
