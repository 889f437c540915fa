import type { Checked } from './check.js';
import { coverPicture, roomPicture, tablePicture } from './output/drawing/pictures.js';

/** What `draw` is to show. */
export type Picture =
    | {
          /** What lies at one guest's place: when guests sit, or as one step of the evening leaves it. */
          readonly of: 'cover';
          /** Which set of dishes: its index in `Service.variations`, 0 where absent. Guests with other dishes have another cover. */
          readonly variation?: number;
          /** Which step: its index in the variation's `steps`; absent for the cover as it is laid. */
          readonly step?: number;
      }
    | {
          /** One table with all its covers, seats numbered. */
          readonly of: 'table';
          readonly table: string;
      }
    /** The room with its tables. */
    | { readonly of: 'room' };

/**
 * Draws a part of a checked plan to scale, named, with a scale bar, in black on white. The same plan gives the same bytes.
 * @returns SVG text, its words escaped, with a title and a description for those who can't see it; nothing where the plan has
 *     no such part, such as a variation that no guest gets, a table that is not there or a room without measures
 */
export function draw({ plan, service }: Checked, picture: Picture): string | undefined {
    switch (picture.of) {
        case 'cover': {
            const variation = service.variations[picture.variation ?? 0];
            const step = picture.step === undefined ? undefined : variation?.steps[picture.step];
            const isThere = variation && (picture.step === undefined || step);
            return isThere ? coverPicture({ plan, service }, variation, step) : undefined;
        }
        case 'table':
            return tablePicture({ plan, service }, picture.table);
        case 'room':
            return roomPicture({ plan, service });
    }
}
