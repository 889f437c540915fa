import type { Checked } from './check.js';
import { drawEvening as eveningDrawn, type DrawnEvening, type EveningView } from './output/drawing/draw-evening.js';
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
    | { readonly of: 'room' }
    /** Who does what at which table over the clock, and how warm it arrives. */
    | { readonly of: 'evening' };

/**
 * Draws a part of a checked plan, in black on white, named; what lies or stands somewhere to scale, with a scale bar. The same plan gives the same bytes.
 * @returns SVG text, its words escaped, with a title and a description for those who can't see it; nothing where the plan has
 *     no such part, such as a variation that no guest gets, a table that is not there, a room without measures,
 *     or an evening without guests, room or team
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
        case 'evening':
            return drawEvening({ plan, service })?.drawing;
    }
}

/**
 * The evening of a checked plan, drawn: the tasks of the set-up before the doors; captain, servers by station, runners and kitchen
 * lines, then the tables, over the clock; the bottleneck marked; under them how warm each hot or cold dish is at its first and its
 * last guest, as a band with the line of what is wanted; the strike after the guests. Minutes run to the right, letters are 12 pt.
 * The same plan gives the same bytes.
 * @param view a part alone, or all of it on a page of a given width
 * @returns SVG text and the places in the plan that its parts, by their `data-at`, come from; nothing where the plan names no
 *     guests, tables or servers, so that there are no times
 */
export function drawEvening(
    { plan, service }: Pick<Checked, 'plan' | 'service'>,
    view: EveningView = {},
): DrawnEvening | undefined {
    return eveningDrawn({ plan, service }, view);
}
