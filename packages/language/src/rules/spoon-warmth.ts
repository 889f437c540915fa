import type { PieceUse } from '../plan/cupboard.js';
import { isFromCupboard, type Origin } from '../plan/origin.js';
import type { Plan } from '../plan/types.js';
import type { DishFacts } from '../service/types.js';
import { writeEaten, writeUse } from './eaten-with.js';
import type { Fix } from './fixes.js';
import { quoted } from './wording.js';

/** A spoon of a dish that is not in the state wanted, where it is spoken of, and how to bring it so. */
export interface SpoonChange {
    readonly spoon: string;
    readonly state?: 'warmed' | 'chilled';
    readonly at: Origin;
    readonly fix: Fix;
}

/** The first spoon a dish is eaten with that is not warmed (or chilled), none of its alternatives being so either. */
export function spoonNot(plan: Plan, { dish, kind }: DishFacts, state: 'warmed' | 'chilled'): SpoonChange | undefined {
    const eaten = dish.eaten ?? kind?.eaten ?? [];
    const isSpoon = (use: PieceUse): boolean => plan.cupboard.pieces.get(use.piece.name)?.family === 'spoon';
    const wanting = eaten.find((uses) => uses.some(isSpoon) && !uses.some((use) => use.state === state));
    const use = wanting?.find(isSpoon);
    if (!use) {
        return undefined;
    }
    const { name } = use.piece;
    const words = writeUse({ name, state, brought: true, laid: false });
    const isStated = dish.eaten !== undefined && !isFromCupboard(use.origin);
    const pieces = eaten.map((uses) => [
        uses === wanting ? words : writeUse({ ...uses[0]!, name: uses[0]!.piece.name }),
    ]);
    return {
        spoon: name,
        ...(use.state && { state: use.state }),
        at: isStated ? use.origin : dish.head,
        fix: {
            title: `Bring the ${quoted(name)} ${state} with the course`,
            safety: 'unsafe',
            changes: [
                isStated
                    ? { do: 'replace', at: use.origin, words }
                    : { do: 'add-clause', to: dish.origin, clause: writeEaten(pieces) },
            ],
        },
    };
}
