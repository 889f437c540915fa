import { customSpecs } from '../plan/customs.js';
import type { NameSort, Occurrence, Plan } from '../plan/types.js';
import type { RuleInput } from './rule.js';

/** The shapes a table can have. */
export const TABLE_SHAPES = ['round', 'rectangle', 'square', 'oval', 'half-round', 'serpentine'] as const;

/**
 * Every name of the sort that can stand where this one stands.
 * @returns `undefined` where nobody can tell: no room is in reach, or the custom that is answered is itself unknown
 */
export function namesInReach(
    { sort, of }: Pick<Occurrence, 'sort' | 'of'>,
    { plan, rules }: Pick<RuleInput, 'plan' | 'rules'>,
): readonly string[] | undefined {
    const { cupboard } = plan;
    switch (sort) {
        case 'piece':
            return [...cupboard.pieces.keys()];
        case 'kind':
            return [...cupboard.kinds.keys()];
        case 'drink':
            return [...cupboard.drinks.keys()];
        case 'kind-or-drink':
            return [...cupboard.kinds.keys(), ...cupboard.drinks.keys()];
        case 'substance':
            return [...cupboard.substances.keys()];
        case 'diet':
            return [...cupboard.diets.keys()];
        case 'code':
            return [...cupboard.codes.keys()];
        case 'custom':
            return customSpecs.map((spec) => spec.name);
        case 'choice':
            return customSpecs.find((spec) => spec.name === of)?.choices?.map((choice) => choice.value);
        case 'rule':
            return rules && [...rules.keys()];
        case 'course':
            return plan.menu && declared(plan, 'course');
        case 'table':
            return plan.room && declared(plan, 'table');
        case 'shape':
            return TABLE_SHAPES;
        // A team may have roles of its own, crew may eat what guests don't, and a toast's pour is `toast-without-pour`'s matter.
        case 'role':
        case 'dish-title':
        case 'pour-title':
            return undefined;
    }
}

function declared(plan: Plan, sort: NameSort): string[] {
    return plan.readings.flatMap((reading) =>
        reading.occurrences.filter((each) => each.sort === sort && each.role === 'declares').map((each) => each.name),
    );
}

/** Sorts whose names are all in reach of a house or menu edited alone; the others may be declared by a file that uses it. */
export const CLOSED_SORTS: ReadonlySet<NameSort> = new Set<NameSort>(['custom', 'choice', 'rule', 'shape']);
