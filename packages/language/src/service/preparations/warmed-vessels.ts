import type { Plan } from '../../plan/types.js';
import type { Service } from '../types.js';
import type { WarmingInput } from './warming.js';

/** Vessels that dishes are served in warmed, with the time in which they are plated; none where no run sheet tells it. */
export function warmedVessels({
    facts,
    servings,
    run,
}: Pick<Service, 'facts' | 'servings' | 'run'>): WarmingInput['wanted'] {
    return (run?.courses ?? []).flatMap(({ course, plated }) => {
        const byPiece = new Map<string, { pieces: number; to?: number }>();
        for (const { dish, vessel } of facts.filter((each) => each.course.index === course)) {
            const use = dish.served.vessel;
            const count = servings[course]?.portions.find((portion) => portion.dish === dish)?.count ?? 0;
            if (vessel && use?.state === 'warmed' && count > 0) {
                const before = byPiece.get(vessel.name);
                const to = Math.max(before?.to ?? -Infinity, use.to?.value ?? -Infinity);
                byPiece.set(vessel.name, {
                    pieces: (before?.pieces ?? 0) + count,
                    to: Number.isFinite(to) ? to : undefined,
                });
            }
        }
        return [...byPiece].map(([piece, { pieces, to }]) => ({
            course,
            piece,
            pieces,
            to,
            from: plated.first,
            until: plated.last,
        }));
    });
}

/** Each plate warmer that the house owns or the event rents and that says how many plates it holds. */
export function warmingGear({ house, event }: Plan): WarmingInput['gear'] {
    return [...house.stock, ...(event?.rents ?? [])].flatMap(({ piece, count, holds }) => {
        const plates = holds.find(({ what }) => what.includes('plate')) ?? holds[0];
        return piece.name === 'plate-warmer' && plates
            ? Array.from({ length: count.count }, () => ({ name: piece.name, holds: plates.count }))
            : [];
    });
}
