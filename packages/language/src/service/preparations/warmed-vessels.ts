import type { Plan } from '../../plan/types.js';
import type { Service } from '../types.js';
import { remember } from '../remember.js';
import type { WarmingLoad } from './types.js';
import { planWarming, type WarmingInput } from './warming.js';

type Warmed = Pick<Service, 'facts' | 'servings' | 'run'>;

const remembered = remember(planWarming);

/** What goes into the plan's warmers and when; nothing where no run sheet tells when it is wanted. */
export function warmingOf(plan: Plan, service: Warmed): readonly WarmingLoad[] {
    return remembered(warmingInput(plan, service));
}

/** Plain data: the same for every plan that warms in the same way. */
export function warmingInput(plan: Plan, service: Warmed): WarmingInput {
    return {
        wanted: warmedVessels(service),
        gear: warmingGear(plan),
        minutes: plan.customs['plate-warming'].value,
    };
}

/** Vessels that dishes are served in warmed, with the time in which they are plated; none where no run sheet tells it. */
function warmedVessels({ facts, servings, run }: Warmed): WarmingInput['wanted'] {
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
function warmingGear({ house, event }: Plan): WarmingInput['gear'] {
    return [...house.stock, ...(event?.rents ?? [])].flatMap(({ piece, count, holds }) => {
        const plates = holds.find(({ what }) => what.includes('plate')) ?? holds[0];
        return piece.name === 'plate-warmer' && plates
            ? Array.from({ length: count.count }, () => ({ name: piece.name, holds: plates.count }))
            : [];
    });
}
