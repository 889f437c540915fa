/** The glass of a drink: at how many covers it stands, and when it leaves by the house's customs. */
import type { CoverGlass, Step, TableItem, Variation } from '../types.js';
import type { GlassUse, PourNeed, PourUse } from './types.js';

/**
 * The glass of a pour at the covers that have it; of a drink offered in a pour's place with a glass of its own, one for each
 * drinker. `undefined` where nobody says what it is poured into.
 */
export function glassOf(uses: readonly PourUse[], variations: readonly Variation[]): GlassUse | undefined {
    const title = uses[0]!.facts.pour.title;
    const found = variations.flatMap((variation) => {
        const { glasses, broughtGlasses } = variation.cover;
        const glass = [...glasses, ...broughtGlasses].find(({ pour }) => pour?.title === title);
        return glass ? [{ glass, variation }] : [];
    });
    const [first] = found;
    if (first) {
        return {
            piece: first.glass.piece.name,
            count: found.reduce((sum, { variation }) => sum + variation.count, 0),
            comes: first.glass.when === 'laid' ? 'laid' : 'with-its-course',
            leaves: leaves(first.variation, first.glass),
        };
    }
    return ownGlass(uses, variations);
}

/** The glass of the water at every cover. */
export function waterGlass(variations: readonly Variation[]): GlassUse | undefined {
    const [variation] = variations;
    const glass = variation?.cover.glasses.find(({ water }) => water);
    return variation && glass
        ? {
              piece: glass.piece.name,
              count: variations.reduce((sum, { count }) => sum + count, 0),
              comes: 'laid',
              leaves: leaves(variation, glass),
          }
        : undefined;
}

/** Glasses that no cover holds: those of drinks offered in another's place, where they name one of another sort. */
export function broughtForOffers(
    needs: readonly PourNeed[],
): { readonly piece: string; readonly course: number; readonly count: number }[] {
    return needs.flatMap(({ glass, uses, facts }) => {
        const standing = uses.map(({ insteadOf }) => insteadOf?.glass?.name);
        return glass && uses.every(({ insteadOf }) => insteadOf) && !standing.includes(glass.piece)
            ? [{ piece: glass.piece, course: facts.course, count: glass.count }]
            : [];
    });
}

/** A drink offered in another's place comes into the glass of that, or is brought in its own, which leaves when that one does. */
function ownGlass(uses: readonly PourUse[], variations: readonly Variation[]): GlassUse | undefined {
    const named = uses.filter(({ facts }) => facts.pour.glass && facts.glass);
    const [use] = named;
    const replaced = use?.insteadOf && glassOf([{ ...use, facts: use.insteadOf, insteadOf: undefined }], variations);
    return use?.facts.glass && replaced
        ? {
              piece: use.facts.glass.name,
              count: Math.max(...named.map(({ drinkers }) => drinkers)),
              comes: use.facts.glass.name === replaced.piece ? replaced.comes : 'with-its-course',
              leaves: replaced.leaves,
          }
        : undefined;
}

function leaves({ cover, steps }: Variation, glass: CoverGlass): Step {
    const isLike = ({ piece, course }: { readonly piece: string; readonly course: number }): boolean =>
        piece === glass.piece.name && course === glass.course;
    // Two drinks of one course in the same sort of glass: the first glass of the cover is the first on the table.
    const place = [...cover.glasses, ...cover.broughtGlasses]
        .filter((each) => isLike({ piece: each.piece.name, course: each.course }))
        .indexOf(glass);
    const isIt = (item: TableItem): boolean => item.sort === 'glass' && isLike(item);
    const ids = [...new Set(steps.flatMap((step) => step.brought.filter(isIt).map(({ id }) => id)))];
    const takes = (step: Step): boolean => step.cleared.some(({ id }) => id === ids[place]);
    return steps.find(takes) ?? steps.at(-1)!;
}
