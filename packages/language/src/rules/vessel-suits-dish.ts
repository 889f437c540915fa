import type { Piece } from '../plan/cupboard.js';
import { suits } from '../plan/names.js';
import { show } from '../plan/quantity.js';
import type { Plan } from '../plan/types.js';
import { firstInHouse } from '../service/facts.js';
import type { DishFacts } from '../service/types.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { pieceLineage } from '../plan/suiting.js';
import { asName, listed, quoted } from './wording.js';

const BEFORE = `event "Harbour supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 24 }
menu {`;

const soup = (served: string): string => `${BEFORE}
    course cold-soup "Chilled cucumber soup" {
        served ${served} chilled at 6 °C
        lasts 15 min
        contains milk
    }
}`;

const beef = (served: string): string => `${BEFORE}
    course main "Braised beef" {
        served ${served} at 62 °C
        lasts 35 min
        contains beef
    }
}`;

export default defineRule({
    id: 'vessel-suits-dish',
    group: 'cover',
    since: '0.1.0',
    title: 'A dish on something too flat, too small or too narrow for it',
    why: 'What is measured by volume runs over a flat rim, and a main course hangs over the edge of a side plate: onto the cloth or the guest. Nobody can use a knife in a cup.',
    source: [
        'table-service 7.21',
        'table-service 3.53',
        'table-service 3.56',
        'table-service 3.57',
        'common practice, no source',
    ],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Soup on a flat plate', text: soup('on <|dinner-plate|>') },
            { title: 'A main course on a small plate', text: beef('on <|bread-plate|> warmed to 60 °C') },
            { title: 'A main course in a cup', text: beef('in <|coffee-cup|> warmed to 60 °C') },
        ],
        right: [{ text: soup('in soup-plate') }, { text: beef('on dinner-plate warmed to 60 °C') }],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        for (const facts of service.facts) {
            const { dish, kind, vessel } = facts;
            const stated = dish.served.vessel;
            if (!stated || !kind || !vessel || dish.served.under || isSuited(plan, facts)) {
                continue;
            }
            const why = tooFlat(facts) ?? tooNarrow(plan, facts) ?? tooSmall(plan, facts);
            if (!why || !isNew(stated.piece.origin)) {
                continue;
            }
            const usual = kind.vessels.flatMap(({ names }) => names.map(({ name }) => name));
            const fitting = firstInHouse(usual, plan.cupboard, plan.house);
            report({
                at: stated.piece.origin,
                message: `${quoted(vessel.name)} ${why}.`,
                hint: fitting ? `Serve it ${howOf(facts, fitting)} ${quoted(fitting.name)}.` : undefined,
                fixes: fitting ? [serveIn(plan, facts, fitting)] : [],
            });
        }
    },
});

function isSuited({ cupboard }: Plan, { kind, vessel }: DishFacts): boolean {
    return pieceLineage(cupboard, vessel!.name).some((piece) => suits(piece, kind!, cupboard));
}

/** A plate that holds nothing, under a dish that is measured by volume and whose kind is served in something. */
function tooFlat({ dish, kind, vessel }: DishFacts): string | undefined {
    const isFlat = vessel!.family === 'plate' && vessel!.measures.holds === undefined;
    const wantsDepth =
        kind!.portion?.high.dimension === 'volume' &&
        kind!.vessels.length > 0 &&
        kind!.vessels.every(({ how }) => how === 'in');
    const names = kind!.vessels.flatMap((each) => each.names.map(({ name }) => quoted(name)));
    return isFlat && wantsDepth
        ? `is flat, and ${quoted(dish.title)} is ${quoted(kind!.name)}, which is served in ${listed(names, 'or')}`
        : undefined;
}

/** A cup or glass, where the kind asks for none and the dish is cut with a knife. */
function tooNarrow({ cupboard }: Plan, { dish, kind, vessel }: DishFacts): string | undefined {
    const isNarrow = ({ family }: Piece): boolean => family === 'cup' || family === 'glass';
    const knife = (dish.eaten ?? kind!.eaten ?? [])
        .flat()
        .find(({ piece }) => cupboard.pieces.get(piece.name)?.family === 'knife');
    return isNarrow(vessel!) && knife && !usualOf(cupboard, kind!).some(isNarrow)
        ? `leaves no room to cut in, and ${quoted(dish.title)} is eaten with ${quoted(knife.piece.name)}`
        : undefined;
}

/** A plate well below the smallest plate that the kind names: a salad plate may do for a main course, a bread plate not. */
const WELL_BELOW = 3 / 4;

function tooSmall({ cupboard }: Plan, { dish, kind, vessel }: DishFacts): string | undefined {
    const across = vessel!.family === 'plate' ? vessel!.measures.across : undefined;
    const [smallest] = usualOf(cupboard, kind!)
        .filter(({ family, measures }) => family === 'plate' && measures.across)
        .toSorted((a, b) => a.measures.across!.low - b.measures.across!.low);
    const least = smallest?.measures.across;
    return across && least && across.high < least.low * WELL_BELOW
        ? `is ${show(across.high, 'mm')} across and too small for ${quoted(dish.title)}: ${quoted(kind!.name)} is served on ${quoted(smallest.name)}, ${show(least.low, 'mm')} and more`
        : undefined;
}

function usualOf(cupboard: Plan['cupboard'], kind: NonNullable<DishFacts['kind']>): readonly Piece[] {
    return kind.vessels.flatMap(({ names }) => names.flatMap(({ name }) => cupboard.pieces.get(name) ?? []));
}

function howOf({ kind }: DishFacts, piece: Piece): 'in' | 'on' {
    return kind!.vessels.find(({ names }) => names.some(({ name }) => name === piece.name))!.how;
}

function serveIn({ cupboard, customs, house }: Plan, facts: DishFacts, piece: Piece): Fix {
    const stated = facts.dish.served.vessel!;
    const state = stated.state ? ` ${stated.state}${stated.to ? ` to ${stated.to.written}` : ''}` : '';
    const under =
        customs.underliner.value === 'stated' &&
        firstInHouse(
            piece.on.map(({ name }) => name),
            cupboard,
            house,
        );
    const words = `${howOf(facts, piece)} ${asName(piece.name)}${state}${under ? ` on ${asName(under.name)}` : ''}`;
    return {
        title: `Serve ${quoted(facts.dish.title)} ${howOf(facts, piece)} ${quoted(piece.name)}`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at: stated.origin, words }],
    };
}
