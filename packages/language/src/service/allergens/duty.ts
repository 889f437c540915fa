/** Of what the local code requires guests to be told, and in which words. The words are planning aids: the code itself decides. */
import type { Cupboard, Substance } from '../../plan/cupboard.js';
import { isRequiredBy, withParents } from '../../plan/names.js';
import type { AllergenColumn, AllergenName } from './types.js';

type Substances = Cupboard['substances'];

/** The code's own word for it, else the usual one. */
export function wordFor(name: string, code: string, substances: Substances): AllergenName {
    const called = substances.get(name)?.called;
    const own = called?.find((each) => each.code === code) ?? called?.find((each) => each.code === undefined);
    return { name, called: own?.words ?? name };
}

/**
 * As guests have to be told of a substance that the code requires: by its own word where the code names it, else by that of what
 * it is a sort of, with its own behind: `milk (butter)`; `wheat flour` says both already.
 */
export function toldAs(name: string, code: string, substances: Substances): string {
    const own = wordFor(name, code, substances).called;
    const named = namedAbove(name, code, substances);
    const word = named === undefined || named === name ? own : wordFor(named, code, substances).called;
    return own.toLowerCase().includes(word.toLowerCase()) ? own : `${word} (${own})`;
}

/** The nearest that the code itself names: the substance, else what it is a sort of. */
function namedAbove(name: string, code: string, substances: Substances): string | undefined {
    return [...withParents(name, substances)].find((each) =>
        substances.get(each)?.requiredIn.some((named) => named.name === code),
    );
}

/**
 * The allergen under which the code tells of a substance: the widest that it requires (`tree-nuts` for a pine nut in the United
 * States); `undefined` where the code requires nothing (the same pine nut in the European Union).
 */
export function columnOf(
    name: string,
    code: string,
    substances: Substances,
    below: readonly string[] = [],
): string | undefined {
    if (below.includes(name) || !isRequiredBy(code, name, substances)) {
        return undefined;
    }
    for (const parent of substances.get(name)?.parents ?? []) {
        const wider = columnOf(parent.name, code, substances, [...below, name]);
        if (wider !== undefined) {
            return wider;
        }
    }
    return name;
}

/** Every allergen that the code names as a whole, in the order of the names. */
export function columnsOf(code: string, substances: Substances): AllergenColumn[] {
    const isNamed = ({ requiredIn }: Substance): boolean => requiredIn.some((named) => named.name === code);
    return [...substances.values()]
        .filter((substance) => isNamed(substance) && columnOf(substance.name, code, substances) === substance.name)
        .map(({ name }) => wordFor(name, code, substances))
        .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}
