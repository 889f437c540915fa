import { besides, lazily, lazilyKept, lazilyKeptEach, lazilyOfEachName } from '../plan/lazily.js';
import type { Plan } from '../plan/types.js';
import { layCover } from './cover.js';
import { stepThrough } from './table.js';
import type { Service, Variation } from './types.js';
import { keyOf, labelOf, type VariationDraft } from './variations.js';

/**
 * The covers of guests who eat alike, each with the steps of its evening. A cover stays as it is, and so do its steps, while
 * nothing changes that lies on it.
 */
export function variationsLaid(
    plan: Plan,
    service: () => Service,
    drafts: () => readonly VariationDraft[],
): () => readonly Variation[] {
    const dishesBy = lazily(() => new Map(drafts().map((draft) => [keyOf(draft), draft.dishes])));
    // By its dishes and not by its guests, who change more often.
    const laidFor = lazilyOfEachName((key) => {
        const had = () => dishesBy().get(key) ?? [];
        const dishes = lazilyKeptEach(
            () => had().map((dish) => service().facts.find((facts) => facts.dish === dish)),
            Object.is,
        );
        const pours = lazilyKeptEach(
            () => service().pours.filter(({ dish }) => !dish || had().includes(dish)),
            Object.is,
        );
        const shared = () => ({ plan, bread: service().bread, coffee: service().coffee, dishes: dishes() });
        const cover = lazilyKept(() => layCover({ ...shared(), pours: pours() }));
        const steps = lazilyKept(() => stepThrough({ ...shared(), cover: cover() }));
        return { cover, steps };
    });
    return () =>
        drafts().map((draft, index) => {
            const { cover, steps } = laidFor(keyOf(draft));
            const label = lazily(() => labelOf(drafts()[index]!, drafts()));
            // A cover does not change with what a dish is called.
            return besides({ ...draft, index, cover: cover(), steps: steps() }, 'label', label);
        });
}
