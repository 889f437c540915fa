import { customSpecs } from '../plan/customs.js';
import type { NameSort, Occurrence, Plan } from '../plan/types.js';
import { DERIVED_TASKS } from '../service/preparations/derived-tasks.js';
import type { RuleInput } from './rule.js';

/** The roles of a team that service is computed with; a house may name others. */
export const TEAM_ROLES = [
    'captain',
    'server',
    'runner',
    'plater',
    'plating-line',
    'sommelier',
    'bartender',
    'busser',
].flatMap((role) => [role, `${role}s`]);

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
        case 'role':
            return TEAM_ROLES;
        case 'dish-title':
        case 'pour-title':
            return plan.menu && declared(plan, sort);
        case 'task-title':
            // What is derived has titles too, and a task may come after it.
            return [...declared(plan, sort), ...Object.values(DERIVED_TASKS).flat()];
    }
}

/** In the order of the text. */
function declared({ readings }: Plan, sort: NameSort): readonly string[] {
    let bySort = declaredIn.get(readings);
    if (!bySort) {
        bySort = new Map<NameSort, string[]>();
        declaredIn.set(readings, bySort);
        for (const { occurrences } of readings) {
            for (const each of occurrences) {
                if (each.role === 'declares') {
                    const names = bySort.get(each.sort);
                    if (names) {
                        names.push(each.name);
                    } else {
                        bySort.set(each.sort, [each.name]);
                    }
                }
            }
        }
    }
    return bySort.get(sort) ?? [];
}

/** Asked for once for every sort of name that is used. */
const declaredIn = new WeakMap<Plan['readings'], Map<NameSort, string[]>>();

/**
 * How far a name of each sort may be unknown. `closed`: all its names are in reach of a house or menu edited alone. `open`: the
 * writer may use words of their own (a role, what the crew eats), so that only a near miss is a mistake. The others may be
 * declared by a file that uses this one.
 */
export const REACH: Partial<Record<NameSort, 'closed' | 'open'>> = {
    custom: 'closed',
    choice: 'closed',
    rule: 'closed',
    shape: 'closed',
    course: 'closed',
    table: 'closed',
    'pour-title': 'closed',
    'task-title': 'closed',
    role: 'open',
    'dish-title': 'open',
};
