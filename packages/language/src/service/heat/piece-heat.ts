/** Warmed and chilled pieces on their way to the guest: thin metal, lumped (temperature 13, utensils). */
import type { Piece, PieceUse } from '../../plan/cupboard.js';
import type { Plan } from '../../plan/types.js';
import type { DishRun } from '../run/types.js';
import type { DishFacts } from '../types.js';
import type { Band } from './band.js';
import { materialOf } from './materials.js';
import { approach, contactTemperature, thinTau } from './newton.js';
import type { Air, PieceHeat } from './types.js';

/** Thickness of a spoon, mm, and the transfer of still air to bright metal, W/m²K: usual, least and most (temperature 13). */
const THICKNESS = 2;
const TRANSFER = { usual: 8, least: 6, most: 10 } as const;

const FLATWARE = ['fork', 'knife', 'spoon'];

/** What a dish is eaten with that the plan warms or chills to a figure. It leaves the warmer as the plates leave the pass. */
export function piecesHeat(plan: Plan, { dish, kind }: DishFacts, air: Air, run: DishRun | undefined): PieceHeat[] {
    return (dish.eaten ?? kind?.eaten ?? [])
        .flat()
        .flatMap((use) => pieceHeat(plan, use, air, run))
        .map((heat) => ({
            course: dish.course,
            dish: dish.index,
            ...heat,
        }));
}

function pieceHeat(
    plan: Plan,
    { piece: named, to }: PieceUse,
    air: Air,
    run: DishRun | undefined,
): Omit<PieceHeat, 'course' | 'dish'>[] {
    const piece = plan.cupboard.pieces.get(named.name);
    const material = piece && materialOf(piece);
    if (!to || !piece || !material || !FLATWARE.includes(piece.family)) {
        return [];
    }
    const from = to.value;
    const first = run && carried(piece, from, air, run.first.served - run.first.leftPass);
    const last = run && carried(piece, from, air, run.last.served - run.last.leftPass);
    return [
        {
            piece: named.name,
            from,
            ...(first && { first }),
            ...(last && { last }),
            touch: contactTemperature(first?.celsius ?? from, material.effusivity),
        },
    ];
}

function carried(piece: Piece, from: number, air: Air, minutes: number): Band & { readonly celsius: number } {
    const { density, heatCapacity } = materialOf(piece)!;
    const after = (transfer: number): number =>
        approach(from, air.celsius, thinTau(density, heatCapacity, THICKNESS, transfer), minutes);
    const ends = [after(TRANSFER.least), after(TRANSFER.most)];
    return {
        low: Math.min(...ends),
        celsius: after(TRANSFER.usual),
        high: Math.max(...ends),
        because: '6 to 10 W/m²K to still air, 2 mm thick (temperature 13)',
    };
}
