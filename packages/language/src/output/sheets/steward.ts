import { counted } from '../../rules/wording.js';
import type { PullLine } from '../../service/types.js';
import { isOutTooLong } from '../../service/preparations/warming.js';
import { pullByStore } from '../stores.js';
import { courseTitle, faces, pieceCalled, piecesCalled, type SheetSource } from './evening.js';
import type { Block, Cell, Sheet } from './sheet.js';

/** What is fetched, washed, polished and counted back. */
export function stewardSheet(source: SheetSource): Sheet {
    const { service } = source;
    const { wash } = service.stock;
    return {
        name: 'steward',
        title: 'Steward',
        subtitle: [
            `${counted(service.guestCount, 'guest')}, covers for ${service.setFor}`,
            counted(wash.racks, 'rack'),
            ...(wash.carts ? [counted(wash.carts, 'cart')] : []),
        ].join(' · '),
        blocks: [...pull(source), ...washing(source), ...warming(source), ...supplies(source)],
    };
}

function pull(source: SheetSource): Block[] {
    const { plan, service } = source;
    const tables = pullByStore(plan, service).map(({ store, lines }): Block => ({
        sort: 'table',
        caption: store,
        columns: [
            { head: 'Piece' },
            { head: 'Pull', figures: true, share: 0.1 },
            { head: 'Of these', share: 0.37 },
            { head: 'Racks', share: 0.13 },
            { head: 'Back', toFill: true, share: 0.12 },
        ],
        rows: lines.map((line) => lineRow(source, line)),
    }));
    const short = service.pull.filter((line) => line.short > 0);
    return [
        { sort: 'heading', text: 'Pull list' },
        ...(short.length > 0
            ? [
                  {
                      sort: 'caution' as const,
                      text: `Short: ${short.map((line) => piecesCalled(plan, line.piece, line.short)).join(', ')}.`,
                  },
              ]
            : []),
        ...tables,
        {
            sort: 'text',
            text: 'Count broken and missing pieces under “Back”. Broken glass: gloves and brush; throw away ice and food it fell near.',
        },
    ];
}

function lineRow({ plan, service }: SheetSource, line: PullLine): Cell[] {
    const rack = service.stock.racks.find(({ piece }) => piece === line.piece);
    const of = [
        line.overset > 0 ? `${line.overset} for extra covers` : undefined,
        line.spare > 0 ? `${line.spare} spare` : undefined,
        line.washed > 0 ? `${line.washed} washed in between` : undefined,
        line.rented > 0 ? `${line.rented} rented` : undefined,
        line.short > 0 ? `${line.short} short` : undefined,
    ];
    return [
        pieceCalled(plan, line.piece),
        { text: String(line.pull), strong: true },
        of.filter((word) => word !== undefined).join(', '),
        rack ? `${rack.racks} × ${rack.each}` : '',
        '',
    ];
}

function washing(source: SheetSource): Block[] {
    const { plan, service } = source;
    const { turnarounds, wash, dishRoom } = service.stock;
    const face = faces(plan);
    const polishing = service.preparations?.setUp.tasks.find(({ title }) => title === 'Polishing');
    const stated = turnarounds.filter((each) => each.stated);
    return [
        { sort: 'heading', text: 'Wash, relay, polish' },
        ...(stated.length > 0
            ? [
                  {
                      sort: 'table' as const,
                      caption: 'Washed in between',
                      columns: [
                          { head: 'Piece' },
                          { head: 'Cleared', figures: true, share: 0.14 },
                          { head: 'Back by', figures: true, share: 0.14 },
                          { head: 'Wanted', figures: true, share: 0.14 },
                          { head: 'For', share: 0.3 },
                      ],
                      rows: stated.map(({ piece, count, times, for: course }): Cell[] => [
                          piecesCalled(plan, piece, count),
                          face(times?.cleared),
                          { text: face(times?.back), strong: true },
                          face(times?.wanted),
                          courseTitle(plan, course),
                      ]),
                  },
              ]
            : []),
        {
            sort: 'list',
            items: [
                `${counted(wash.racks, 'rack')} after the evening${wash.hours === undefined ? '' : `, about ${wash.hours.toFixed(1)} h at the machine`}.`,
                ...(wash.carts ? [`${counted(wash.carts, 'cart')} to carry them.`] : []),
                ...(polishing ? [`Polish ${face(polishing.start)}–${face(polishing.end)}: ${polishing.because}.`] : []),
                ...(dishRoom?.assumed.length
                    ? [`Assumed, not stated by the house: ${dishRoom.assumed.join(', ')}.`]
                    : []),
            ],
        },
    ];
}

function warming({ plan, service }: SheetSource): Block[] {
    const face = faces(plan);
    const loads = service.preparations?.warming ?? [];
    return loads.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Into the warmers' },
              {
                  sort: 'list',
                  items: loads.map(
                      ({ start, end, wantedUntil, piece, pieces, gear }) =>
                          `${face(start)}–${face(end)}: ${piecesCalled(plan, piece, pieces)}${gear ? `, ${gear.replaceAll('-', ' ')}` : ''}, plated by ${face(wantedUntil)}${isOutTooLong({ end, wantedUntil }) ? `: out ${Math.round(wantedUntil - end)} min before` : ''}.`,
                  ),
              },
          ];
}

function supplies({ plan, service }: SheetSource): Block[] {
    const ice = service.supplies.filter(({ what }) => what === 'ice');
    const melted = service.chilling.reduce((sum, { iceMelted }) => sum + (iceMelted ?? 0), 0);
    const { linen } = service.stock;
    return [
        ...(linen.length > 0
            ? [
                  { sort: 'heading' as const, text: 'Linen' },
                  {
                      sort: 'table' as const,
                      columns: [
                          { head: 'Piece' },
                          { head: 'In use', figures: true, share: 0.15 },
                          { head: 'To keep', figures: true, share: 0.15 },
                          { head: 'Owned', figures: true, share: 0.15 },
                          { head: 'To the laundry', toFill: true, share: 0.22 },
                      ],
                      rows: linen.map(({ piece, inUse, keep, owned }): Cell[] => [
                          pieceCalled(plan, piece),
                          String(inUse),
                          String(keep),
                          owned === undefined ? '' : String(owned),
                          '',
                      ]),
                  },
              ]
            : []),
        ...(ice.length > 0
            ? [
                  { sort: 'heading' as const, text: 'Ice' },
                  {
                      sort: 'list' as const,
                      items: [
                          ...ice.map(
                              ({ amount, packs }) =>
                                  `${kilograms(amount)} for ${counted(service.guestCount, 'guest')}${
                                      packs ? `: ${packs.count} ${packs.called} of ${kilograms(packs.size)}` : ''
                                  }.`,
                          ),
                          ...(melted > 0 ? [`About ${kilograms(melted)} of it melts in the ice water.`] : []),
                          'Ice is food: scoop, never a glass or a hand.',
                      ],
                  },
              ]
            : []),
    ];
}

const kilograms = (grams: number): string => `${(Math.round(grams / 100) / 10).toString()} kg`;
