import type { Origin } from '../plan/origin.js';
import type { DishFacts } from '../service/types.js';
import { firstSight } from './first-sight.js';
import type { Fix, Intention } from './fixes.js';
import type { RuleInput } from './rule.js';
import { asName, quoted } from './wording.js';

/** Which dishes a rule about vessels judges, and by what. */
export interface VesselDemand {
    readonly dishes: 'hot' | 'cold';
    /** Soups and their bowls, or everything else. */
    readonly soup: boolean;
    /** Whether a vessel that is neither warmed nor chilled will do. */
    readonly plainWillDo: boolean;
    readonly hint: string;
}

/** Reports each dish whose vessel is not warmed for a hot dish, or not chilled for a cold one. */
export function reportVessels({ service, report }: RuleInput, demand: VesselDemand): void {
    const wanted = demand.dishes === 'hot' ? 'warmed' : 'chilled';
    const isNew = firstSight();
    for (const facts of service.facts) {
        const { dish, kind, isHot, isCold } = facts;
        const { vessel, temperature } = dish.served;
        const isJudged = (demand.dishes === 'hot' ? isHot : isCold) && isSoup(kind) === demand.soup;
        const willDo = vessel?.state === wanted || (demand.plainWillDo && vessel?.state === undefined);
        if (!isJudged || willDo) {
            continue;
        }
        const change = vesselChange(facts, wanted);
        if (change && isNew(change.at)) {
            const figure = temperature ? ` at ${temperature.written}` : '';
            report({
                at: change.at,
                message: `${quoted(dish.title)} is served ${demand.dishes}${figure}, and its ${quoted(change.vessel)} is ${vessel?.state ?? `not ${wanted}`}.`,
                hint: demand.hint,
                fixes: [change.fix],
            });
        }
    }
}

export function isSoup(kind: DishFacts['kind']): boolean {
    return kind?.lineage.includes('soup') ?? false;
}

/** Where a dish's vessel is spoken of, and how to have it warmed or chilled; `undefined` for a vessel nobody knows. */
function vesselChange(
    { dish, kind, vessel }: DishFacts,
    state: 'warmed' | 'chilled',
): { readonly vessel: string; readonly at: Origin; readonly fix: Fix } | undefined {
    if (!vessel) {
        return undefined;
    }
    const { vessel: stated, origin } = dish.served;
    const how =
        stated?.how ?? kind?.vessels.find((each) => each.names.some(({ name }) => name === vessel.name))?.how ?? 'on';
    const words = `${how} ${asName(vessel.name)} ${state}`;
    const at = stated?.origin ?? origin ?? dish.head;
    const change: Intention = stated?.state
        ? { do: 'replace', at, words }
        : stated
          ? { do: 'append', at, words: state }
          : origin
            ? { do: 'append', at, words }
            : { do: 'add-clause', to: dish.origin, clause: `served ${words}` };
    const title = `${state === 'warmed' ? 'Warm' : 'Chill'} the ${quoted(vessel.name)}`;
    return { vessel: vessel.name, at, fix: { title, safety: 'unsafe', changes: [change] } };
}
