/** What brings a liquid to its guest as it is wanted: another pour, another bowl, both, or a cover. All within what is safe. */
import { degreesLike } from '../plan/degrees.js';
import type { Quantity } from '../plan/quantity.js';
import type { Dish } from '../plan/types.js';
import type { Answer } from '../service/heat/inverse.js';
import type { Answers, DishHeat } from '../service/heat/types.js';
import type { DishFacts } from '../service/types.js';
import { degreesBeyond, misses, startOf } from './at-the-guest.js';
import type { Fix, Intention } from './fixes.js';
import { quoted } from './wording.js';

type Side = 'hot' | 'cold';

/** Best first; none where a thermometer reading stands beside the figures, which would no longer be true. */
export function mendsAtTheGuest(facts: DishFacts, { side, answers }: DishHeat): Fix[] {
    const wanted = facts.dish.served.temperature;
    if (!wanted || !answers || side === 'frozen' || facts.dish.measured) {
        return [];
    }
    return [
        ...anotherPour(facts, wanted, answers, side),
        ...anotherVessel(facts, wanted, answers, side),
        ...both(facts, wanted, answers),
        ...cover(facts.dish, wanted, answers),
    ];
}

/** Another figure in the clause that says what the dish starts from. */
export function startAt(dish: Dish, words: string): Fix[] {
    const start = startOf(dish);
    const title = dish.leavesPass
        ? `Have ${quoted(dish.title)} leave the pass at ${words}`
        : `Hold ${quoted(dish.title)} at ${words}`;
    return start
        ? [{ title, safety: 'unsafe', changes: [{ do: 'replace', at: start.temperature.origin, words }] }]
        : [];
}

function anotherPour({ dish }: DishFacts, wanted: Quantity, { pass }: Answers, side: Side): Fix[] {
    return pass && 'celsius' in pass ? startAt(dish, degreesBeyond(wanted, pass.celsius, side)) : [];
}

function anotherVessel(facts: DishFacts, wanted: Quantity, { vessel }: Answers, side: Side): Fix[] {
    if (!vessel || !('celsius' in vessel)) {
        return [];
    }
    const words = degreesBeyond(wanted, vessel.celsius, side);
    const changes = vesselTo(facts, words, side);
    const title = `${side === 'hot' ? 'Warm' : 'Chill'} the ${quoted(facts.vessel!.name)} to ${words}`;
    return changes.length > 0 ? [{ title, safety: 'unsafe', changes }] : [];
}

function both(facts: DishFacts, wanted: Quantity, { together }: Answers): Fix[] {
    if (!together || !('celsius' in together.pass)) {
        return [];
    }
    const vessel = degreesLike(wanted, together.vessel);
    const changes = vesselTo(facts, vessel, 'hot');
    const words = degreesBeyond(wanted, together.pass.celsius, 'hot');
    const [pour] = startAt(facts.dish, words);
    const title = `Warm the ${quoted(facts.vessel!.name)} to ${vessel} and pour it at ${words}`;
    return changes.length > 0 && pour ? [{ ...pour, title, changes: [...changes, ...pour.changes] }] : [];
}

function cover({ title, carried, origin }: Dish, wanted: Quantity, { covered }: Answers): Fix[] {
    if (covered === undefined || misses(wanted, covered, 'hot')) {
        return [];
    }
    const change: Intention = carried
        ? { do: 'replace', at: carried.origin, words: 'carried covered' }
        : { do: 'add-clause', to: origin, clause: 'carried covered' };
    return [{ title: `Carry ${quoted(title)} covered`, safety: 'unsafe', changes: [change] }];
}

/** The vessel warmed or chilled to a figure; only one that the plan names. */
function vesselTo({ dish, vessel }: DishFacts, words: string, side: Side): Intention[] {
    const stated = dish.served.vessel;
    const state = side === 'hot' ? 'warmed' : 'chilled';
    if (!stated || !vessel || (stated.state !== undefined && stated.state !== state)) {
        return [];
    }
    return stated.to
        ? [{ do: 'replace', at: stated.to.origin, words }]
        : [{ do: 'append', at: stated.origin, words: `${stated.state ? '' : `${state} `}to ${words}` }];
}

/** Why neither will do, where nothing mends it: `A hotter pour …: it would have to be 97 °C, …`. */
export function whyNothingMends(wanted: Quantity, { answers, side }: DishHeat): string | undefined {
    const [pour, bowl] = side === 'cold' ? ['A colder pour', 'A colder vessel'] : ['A hotter pour', 'A warmer vessel'];
    const reasons = [whyNot(wanted, pour, answers?.pass), whyNot(wanted, bowl, answers?.vessel)];
    return reasons.filter((each) => each !== undefined).join(' ') || undefined;
}

const REFUSED: Readonly<Record<string, (limit: string) => string>> = {
    'touch-limit': (limit) => `above ${limit} it never stands before a guest`,
    boiling: (limit) => `nothing leaves the kitchen above ${limit}`,
    freezing: (limit) => `nothing is made colder than ${limit}`,
    scalds: (limit) => `the first guest would be scalded above ${limit}`,
    holding: (limit) => `the local code has it kept at ${limit}`,
};

function whyNot(wanted: Quantity, what: string, answer: Answer | undefined): string | undefined {
    if (!answer || !('refused' in answer)) {
        return undefined;
    }
    const limit = degreesLike(wanted, answer.limit);
    return `${what} will not do: it would have to be ${degreesLike(wanted, answer.needed)}, and ${REFUSED[answer.refused]!(limit)}.`;
}
