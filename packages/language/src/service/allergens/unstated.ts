/** What words tell of a food — a recipe's list, a title — and the plan says nothing of. */
import { clashes, withParents } from '../../plan/names.js';
import type { Need, Plan } from '../../plan/types.js';
import { excludedBy, isAllergenNeed } from '../diets.js';
import { ALCOHOL } from '../drinks/alcohol.js';
import type { Service } from '../types.js';
import { namedAbove } from './duty.js';
import type { Contents } from './food-words.js';

/** Words of a recipe or of a title, and what the cupboard knows of the things that they name. */
export interface Told {
    readonly words: string;
    /** Names of the cupboard: `cream`. */
    readonly contents: readonly string[];
}

/** Who and what something is to be held against. */
export interface HeldAgainst {
    readonly plan: Pick<Plan, 'code' | 'cupboard'>;
    readonly groups: Service['groups'];
    /** Diets that it says it suits. */
    readonly suits: readonly string[];
    /** What it is stated or made to be, whoever gets it: guests who must not meet that are kept from it anyway. */
    readonly keptBy: readonly string[];
}

/** What words name and is not stated. */
export interface Unstated {
    /** The words, each once, in their order. */
    readonly words: readonly string[];
    /** What is to be stated of them, by the names of the cupboard. */
    readonly contents: readonly string[];
}

/**
 * What words name, is not among what is stated, and matters here: the local code wants guests told of it, a guest must not meet
 * it, or it says that it suits a diet which leaves it out.
 * @param stated names of the cupboard
 */
export function unstatedOf(told: readonly Told[], stated: readonly string[], held: HeldAgainst): Unstated {
    const { code, cupboard } = held.plan;
    const { substances } = cupboard;
    const exclusions = exclusionsOf(held);
    const duties = (name: string): Duty[] => [
        ...namedAbove(name, code.name, substances).map((each) => ({ state: each, over: each, isAllergen: true })),
        ...exclusions.flatMap((excluded) =>
            keptFrom(name, excluded, substances).map((state) => ({
                state,
                over: excluded.name,
                isAllergen: excluded.isAllergen,
            })),
        ),
    ];
    const isDone = ({ over, isAllergen }: Duty): boolean =>
        stated.some((each) => isMet(each, over, isAllergen, substances));
    const left = told
        .map(({ words, contents }) => ({
            words,
            contents: contents
                .flatMap(duties)
                .filter((duty) => !isDone(duty))
                .map(({ state }) => state),
        }))
        .filter(({ contents }) => contents.length > 0);
    const names = [...new Set(left.flatMap(({ contents }) => contents))];
    return {
        words: [...new Set(left.map(({ words }) => words))],
        // Almonds say all that nuts would.
        contents: names.filter(
            (name) => !names.some((other) => other !== name && withParents(other, substances).has(name)),
        ),
    };
}

/** Whether a guest who must not meet `excluded` meets it in `name`: an allergen in its widest meaning. */
function isMet(name: string, excluded: string, isAllergen: boolean, substances: Contents['substances']): boolean {
    return isAllergen ? clashes(name, excluded, substances) : withParents(name, substances).has(excluded);
}

/** That something has to be stated. */
interface Duty {
    /** The name to state. */
    readonly state: string;
    /** What it has to be told of: the allergen of the code, or what a guest must not meet. */
    readonly over: string;
    readonly isAllergen: boolean;
}

interface Exclusion {
    readonly name: string;
    /** Kept from in its widest meaning. */
    readonly isAllergen: boolean;
}

/** What somebody here must not meet, where nothing but what it contains keeps a dish from them. */
function exclusionsOf({ plan, groups, suits, keptBy }: HeldAgainst): Exclusion[] {
    const { cupboard } = plan;
    const isStatedOnly = (need: Need): boolean =>
        need.sort === 'diet' && cupboard.diets.get(need.diet.name)?.statedOnly === true;
    const needs = groups.flatMap((group) => group.needs).filter((need) => !isStatedOnly(need));
    return [
        ...needs.flatMap((need) => {
            const isAllergen = isAllergenNeed(need, cupboard);
            const excluded = excludedBy(need, cupboard);
            const isKept = excluded.some((name) =>
                keptBy.some((each) => isMet(each, name, isAllergen, cupboard.substances)),
            );
            return isKept ? [] : excluded.map((name) => ({ name, isAllergen }));
        }),
        ...(groups.some(({ children }) => children) ? [{ name: ALCOHOL, isAllergen: false }] : []),
        ...suits.flatMap((diet) =>
            (cupboard.diets.get(diet)?.excludes ?? []).map(({ name }) => ({ name, isAllergen: false })),
        ),
    ];
}

/** As what a food that is excluded is to be stated: cream as milk, and gelatine, for vegetarians, as what it is. */
function keptFrom(name: string, excluded: Exclusion, substances: Contents['substances']): string[] {
    if (withParents(name, substances).has(excluded.name)) {
        const allergens = nearestAllergens(name, substances).filter((each) =>
            withParents(each, substances).has(excluded.name),
        );
        return allergens.length > 0 ? allergens : [name];
    }
    return excluded.isAllergen && clashes(name, excluded.name, substances) ? [name] : [];
}

function nearestAllergens(
    name: string,
    substances: Contents['substances'],
    below: readonly string[] = [],
): readonly string[] {
    const substance = substances.get(name);
    if (!substance || below.includes(name)) {
        return [];
    }
    return substance.sort === 'allergen'
        ? [name]
        : substance.parents.flatMap((parent) => nearestAllergens(parent.name, substances, [...below, name]));
}
