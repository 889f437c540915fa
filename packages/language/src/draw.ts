import type { Checked } from './check.js';
import { coverPicture } from './output/cover-picture.js';

/** What `draw` is to show. */
export interface Picture {
    /** `cover`: what lies at one guest's place when guests sit. */
    readonly of: 'cover';
    /** Which set of dishes: its index in `Service.variations`, 0 where absent. Guests with other dishes have another cover. */
    readonly variation?: number;
}

/**
 * Draws a part of a checked plan to scale, named, with a scale bar, in black on white. The same plan gives the same bytes.
 * @returns SVG text, its words escaped, with a title and a description for those who can't see it; nothing where the plan has
 *     no such part, such as a variation that no guest gets
 */
export function draw({ plan, service }: Checked, { variation: index = 0 }: Picture): string | undefined {
    const variation = service.variations[index];
    return variation && coverPicture({ plan, service }, variation);
}
