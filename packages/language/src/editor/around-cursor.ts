import type { Checked } from '../check.js';
import type { Kind } from '../plan/cupboard.js';
import type { Origin } from '../plan/origin.js';
import type { Dish } from '../plan/types.js';
import { bothScales } from './about-figure.js';

/** What the cursor is in, as far as its plan can be read. */
export interface Around {
    readonly dish?: Dish;
    /** Of the dish. */
    readonly kind?: Kind;
    /** Of the drink, in a pour. */
    readonly drink?: Kind;
    /** Of the drink, the sauce or the garnish, else of the dish. */
    readonly title?: string;
}

/** The dish and the drink around an offset. @param file of the plan: its own, or one it uses */
export function aroundAt({ plan }: Checked, file: string, offset: number): Around {
    const holds = ({ origin }: { readonly origin: Origin }): boolean =>
        origin.file === file && origin.start <= offset && offset <= origin.end;
    const course = plan.menu?.courses.find(holds);
    const dish = course?.hasDishes === false ? course.dishes[0] : course?.dishes.find(holds);
    const isInBread = plan.menu?.bread !== undefined && holds(plan.menu.bread);
    const pour = [...(dish?.pours ?? []), ...(course?.pours ?? [])].find(holds);
    const beside = [...(dish?.accompaniments ?? []), ...(plan.menu?.bread?.accompaniments ?? [])].find(holds);
    return {
        dish,
        kind: plan.cupboard.kinds.get(isInBread ? 'bread' : ((dish?.kind ?? course?.kind)?.name ?? '')),
        drink: plan.cupboard.drinks.get(pour?.kind?.name ?? ''),
        title: pour?.title ?? (beside ? beside.title : dish?.title),
    };
}

/** Whether a vessel is to be warmed or chilled for a dish of this kind, and to what. */
export function warmthHint(kind: Kind | undefined, { plan: { customs } }: Checked): string | undefined {
    switch (kind?.band) {
        case 'hot':
        case 'warm':
            return `warm to ${bothScales(customs['warmed-to'].value)}`;
        case 'cold':
        case 'frozen':
            return `chill to ${bothScales(customs['chilled-to'].value)}`;
        default:
            return undefined;
    }
}
