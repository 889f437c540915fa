import type { Piece } from '../plan/cupboard.js';
import { degreesLike } from '../plan/degrees.js';
import { suitsDrink } from '../plan/suiting.js';
import { heatOfDish } from '../service/heat/heat.js';
import { materialOf } from '../service/heat/materials.js';
import { touchLimits } from '../service/heat/touch-limits.js';
import type { DishFacts, PourFacts } from '../service/types.js';
import { isDoubtful } from './doubt.js';

import { firstSight } from './first-sight.js';
import { defineRule, type Report, type RuleInput } from './rule.js';
import { quoted } from './wording.js';

const evening = (items: string, course: string): string => `${items}

event "Lantern supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

menu {
    ${course}
}
`;

const punch = (glass: string): string =>
    evening(
        'drink hot-punch is hot-drink { in tumbler or tea-cup }',
        `course dessert "Apple cake" is cake {
        served on dessert-plate at 16 °C
        eaten with cake-fork
        lasts 20 min
        contains wheat, egg, milk
        pour "Spiced apple punch" 150 ml into ${glass} at 62 °C, is hot-punch, brought with the course { contains nothing }
    }`,
    );

const soup = (bowl: string): string =>
    evening(
        'bowl copper-pot is soup-bowl { copper 500 g  for soup }',
        `course soup "Roast squash soup" {
        served in ${bowl} warmed to 45 °C at 64 °C, portion 250 ml
        leaves the pass at 78 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }`,
    );

export default defineRule({
    id: 'vessel-too-hot-to-touch',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'A vessel that its contents make too hot to hold',
    why: 'A glass without a handle is as hot as the drink in it, and metal carries the heat of a soup to rim and handle. Guests take both in the bare hand.',
    source: ['temperature 4.2', 'temperature B4', 'temperature B10', 'temperature B12'],
    fix: 'sometimes',
    noFix: 'Where nothing else that suits the dish is in the house, its vessel needs a cloth, a holder or another dish.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'A hot drink in a glass', text: punch('<|tumbler|>') },
            { title: 'Soup in copper', text: soup('<|copper-pot|>') },
        ],
        right: [{ text: punch('tea-cup') }, { text: soup('soup-bowl') }],
    },
    check(input) {
        const { plan, service, report } = input;
        const isNew = firstSight();
        const tell = (found: Report | undefined): void => {
            if (found && isNew(found.at)) {
                report(found);
            }
        };
        for (const facts of service.pours) {
            tell(isDoubtful(plan, facts.pour.origin) ? undefined : hotGlass(input, facts));
        }
        for (const facts of service.facts) {
            tell(isDoubtful(plan, facts.dish.origin) ? undefined : hotMetal(input, facts));
        }
    },
});

/** A glass is what its drink is: wanted at 62 °C, so is the hand's side of it, nearly. */
function hotGlass({ plan }: RuleInput, { pour, kind, glass }: PourFacts): Report | undefined {
    const { temperature: wanted, title } = pour;
    if (!wanted || glass?.family !== 'glass' || (kind && suitsDrink(plan.cupboard, glass, kind) === false)) {
        return undefined;
    }
    const { told, never } = touchLimits(glass);
    if (wanted.value <= told || hasHandle(glass)) {
        return undefined;
    }
    const cup = kind?.vessels
        .flatMap(({ names }) => names)
        .flatMap(({ name }) => plan.cupboard.pieces.get(name) ?? [])
        .find((piece) => piece.family === 'cup' && (piece.measures.holds?.low ?? 0) > (pour.amount?.value ?? 0));
    return {
        at: pour.glass?.origin ?? pour.titleOrigin,
        severity: wanted.value > never ? 'error' : 'warning',
        message: `${quoted(title)} at ${wanted.written} makes its ${quoted(glass.name)} too hot to hold: glass above ${degreesLike(wanted, told)} is not for the bare hand.`,
        hint: 'Pour it into something with a handle, or stand it in a holder or on a saucer with a napkin; tell the guest that it is hot.',
        fixes:
            cup && pour.glass
                ? [
                      {
                          title: `Pour ${quoted(title)} into ${quoted(cup.name)}`,
                          safety: 'unsafe',
                          changes: [{ do: 'replace', at: pour.glass.origin, words: cup.name }],
                      },
                  ]
                : [],
    };
}

function hasHandle(piece: Piece): boolean {
    return piece.flags.some((flag) => flag.name === 'handle');
}

/** Metal is as hot at its rim as where the soup stands. */
function hotMetal({ plan, service }: RuleInput, facts: DishFacts): Report | undefined {
    const { dish, vessel, kind } = facts;
    const heat = heatOfDish(service.heat, facts);
    const stated = dish.served.vessel;
    const found = heat?.first?.temperature?.celsius ?? heat?.poured?.celsius;
    if (!vessel || !stated || found === undefined || materialOf(vessel)?.isMetal !== true) {
        return undefined;
    }
    const { never } = touchLimits(vessel);
    if (found <= never) {
        return undefined;
    }
    const like = dish.served.temperature ?? dish.leavesPass?.temperature ?? dish.heldAt?.temperature;
    const other = kind?.vessels
        .flatMap(({ names }) => names)
        .flatMap(({ name }) => plan.cupboard.pieces.get(name) ?? [])
        .find(
            (piece) =>
                materialOf(piece)?.isMetal === false &&
                (piece.measures.holds?.low ?? 0) > (heat?.liquid?.grams ?? 0) &&
                piece.family === vessel.family,
        );
    return like
        ? {
              at: stated.piece.origin,
              message: `${quoted(dish.title)} makes its ${quoted(vessel.name)} ${degreesLike(like, found)} hot; metal above ${degreesLike(like, never)} is never put before a guest.`,
              hint: 'Serve it in china, or in a holder that a hand can take; carry it with a cloth and tell the guest that it is hot.',
              fixes: other
                  ? [
                        {
                            title: `Serve ${quoted(dish.title)} in ${quoted(other.name)}`,
                            safety: 'unsafe',
                            changes: [{ do: 'replace', at: stated.piece.origin, words: other.name }],
                        },
                    ]
                  : [],
          }
        : undefined;
}
