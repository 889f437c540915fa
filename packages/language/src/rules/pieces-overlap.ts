import type { Plan } from '../plan/types.js';
import { originOfPiece } from '../service/cover-geometry/cover-to-place.js';
import { factsOf } from '../service/cover-geometry/cover-geometry.js';
import type { Overlap, PlacedPiece } from '../service/cover-geometry/types.js';
import type { Service } from '../service/types.js';
import { isFromCupboard } from '../plan/origin.js';
import { atTables } from './room-words.js';
import { fixesThat, type Furnished } from './room-trial.js';
import { defineRule, type Related } from './rule.js';
import { fewerSeats, fewerSeatsAndMoreTables, otherCustom, widerTables } from './table-changes.js';
import { laidTables, overlapsTold, type LaidTable } from './table-problems.js';
import { counted, quoted } from './wording.js';

const plan = (tables: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

room "Boat store" 14 m by 9 m {
    table ${tables}
}

menu {
    bread from soup until main on bread-plate with butter-spreader { contains wheat }
    course soup "Leek and potato" {
        served in soup-plate warmed to 60 °C at 66 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
    course main "Roast duck" is poultry {
        served on dinner-plate warmed to 62 °C at 63 °C
        cook to 74 °C
        lasts 30 min
        contains nothing
    }
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
    }
}
`;

export default defineRule({
    id: 'pieces-overlap',
    group: 'cover',
    since: '0.2.0',
    title: 'Pieces that would lie on each other',
    why: 'A bread plate that stands on the next guest’s glass is found when the room is being laid, and then every table has to be laid again.',
    source: ['table-service 3.20', 'table-service 5.2', 'quantities §7.1'],
    fix: 'sometimes',
    customs: ['piece-gap', 'dessert-gap', 'water-glass-gap', 'glass-shape', 'napkin'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Bread plate, dessert pieces and eight guests at 60 inch',
                text: plan('T1 to T3: round 60 inch, <|8|> seats'),
            },
        ],
        right: [{ title: 'The same cover at 66 inch', text: plan('T1 to T3: round 66 inch, 8 seats') }],
    },
    check({ plan, service, report }) {
        const told = new Map<string, { laid: LaidTable; overlaps: readonly Overlap[] }>();
        for (const laid of laidTables(plan, service)) {
            const overlaps = overlapsTold(laid);
            const key = laid.table.name;
            if (overlaps.length > 0 && (told.get(key)?.overlaps[0]?.by ?? 0) < overlaps[0]!.by) {
                told.set(key, { laid, overlaps });
            }
        }
        for (const { laid, overlaps } of told.values()) {
            const { tables } = laid;
            const [worst, ...others] = overlaps;
            const isFree = (changed: Plan, after: Furnished): boolean =>
                !laidTables(changed, after).some(
                    (each) => each.table.name === laid.table.name && overlapsTold(each).length > 0,
                );
            report({
                at: tables.seats?.origin ?? tables.origin,
                message: `${atTables(tables)}, ${sayOverlap(laid, worst!)}${others.length > 0 ? `, and ${counted(others.length, 'other pair')} of pieces as well` : ''}.`,
                hint: 'Take a wider table, seat fewer at it, or lay less before guests sit.',
                related: related(service, laid, worst!),
                fixes: fixesThat(isFree, { plan, service }, [
                    otherCustom(plan, 'napkin', 'on-plate'),
                    widerTables(plan, tables),
                    fewerSeats(plan, tables),
                    fewerSeatsAndMoreTables(plan, tables),
                    otherCustom(plan, 'dessert', 'brought'),
                ]),
            });
        }
    },
});

function pieceOf({ on }: LaidTable, id: string): PlacedPiece {
    return on.pieces.find((piece) => piece.id === id)!;
}

/** `the \`bread-plate\` of one cover lies 59 mm over the \`water-glass\` of the next`. */
function sayOverlap(laid: LaidTable, { piece, other, seat, otherSeat, by }: Overlap): string {
    const [one, two] = [piece, other].map((id) => quoted(pieceOf(laid, id).name));
    const closeness = laid.on.laid === 'drawn-together' ? ' though all lies as close as it may' : '';
    return seat === otherSeat
        ? `${one} lies ${Math.round(by)} mm over ${two} of the same cover${closeness}`
        : `${one} of one cover lies ${Math.round(by)} mm over ${two} of another${closeness}`;
}

function related(service: Service, laid: LaidTable, { piece, other }: Overlap): Related[] {
    const { cover } = laid.variation;
    const dishes = factsOf(laid.variation, service.facts);
    return [...new Set([piece, other])].flatMap((id) => {
        const at = originOfPiece(cover, dishes, id);
        const { name } = pieceOf(laid, id);
        return at && !isFromCupboard(at) ? [{ at, message: `${quoted(name)} comes from here.` }] : [];
    });
}
