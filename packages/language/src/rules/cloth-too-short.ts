import { lengthLike, nameOfTables } from './room-words.js';
import { ownedCloths } from '../service/room/room-to-lay-out.js';
import type { ClothSize } from '../service/room/types.js';
import { defineRule } from './rule.js';
import { agreeing, listed, quoted } from './wording.js';

const plan = (cloth: string, table = 'round <|60 inch|>'): string => `house "Saltmarsh Hall" {
    own 6 ${cloth}, 60 dinner-plate, 60 dinner-fork, 60 dinner-knife, 60 napkin, 60 water-glass, 40 salt-and-pepper
}

event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 16
}

room "Boat store" 9 m by 7 m {
    table A to B: ${table}, 8 seats
}

menu {
    course main "Roast duck" is poultry {
        served on dinner-plate warmed to 62 °C at 63 °C
        cook to 74 °C
        lasts 30 min
        contains nothing
    }
}
`;

/** What is short by less hangs askew by as much, mm. */
const ASKEW = 12.7;

export default defineRule({
    id: 'cloth-too-short',
    group: 'trade',
    since: '0.2.0',
    title: 'No cloth that goes on a table and hangs as far as the house wants',
    why: 'A cloth that barely covers the table shows its legs and slides with the first elbow, and a round one hangs crooked from a long table. What is missing can be rented while there are days left.',
    source: ['table-service 3.26', 'table-service 3.29', 'quantities §7.4'],
    fix: 'never',
    noFix: 'A longer cloth has to be owned or rented.',
    customs: ['cloth-drop', 'table-height', 'cloth-overlap'],
    scope: 'event',
    examples: {
        wrong: [
            { title: 'A cloth of 78 inch on a table of 60', text: plan('round-cloth-78') },
            { title: 'Round cloths for long tables', text: plan('round-cloth-90', 'rectangle <|72 inch|> by 42 inch') },
        ],
        right: [{ text: plan('round-cloth-90').replace(/<\||\|>/g, '') }],
    },
    check({ plan, service, report }) {
        const { house, room, event } = plan;
        const owned = ownedCloths(plan);
        if (!service.room || owned.length === 0) {
            return;
        }
        const { cloths } = service.room;
        const stock = [...house.stock, ...(event?.rents ?? [])];
        const whereListed = (name: string) =>
            stock
                .filter(({ piece }) => piece.name === name)
                .slice(0, 1)
                .map(({ origin }) => ({ at: origin, message: `${quoted(name)} is listed here.` }));
        for (const tables of room?.tables ?? []) {
            const cloth = cloths.tables.find(({ table }) => table === tables.names[0]);
            const like = (length: number): string => lengthLike(length, tables.size);
            if (cloth && cloth.piece === undefined) {
                const round = owned.map(({ piece }) => piece);
                const isOne = tables.names.length === 1;
                const { needed } = cloth;
                const isLong = needed.shape === 'rectangle' && needed.length > needed.width;
                report({
                    at: tables.size.origin,
                    severity: 'warning',
                    message: `No cloth is pulled for ${quoted(nameOfTables(tables))}: ${listed(round.map(quoted))} ${agreeing(round.length, 'is', 'are')} round, and ${isOne ? 'this table is' : 'these tables are'} not.`,
                    hint: `Own or rent cloths of ${sizeOf(needed, like)} for ${isOne ? 'it' : 'them'}${isLong ? ', or shorter ones that lie one over the next' : ''}.`,
                    related: round.flatMap(whereListed),
                });
                continue;
            }
            const wanted = cloths.drop;
            if (cloth?.piece === undefined || cloth.drop === undefined || cloth.drop >= wanted - ASKEW) {
                continue;
            }
            const hangs = cloth.drop < 0 ? 'does not cover' : `hangs ${like(cloth.drop)} below the edge of`;
            report({
                at: tables.size.origin,
                message: `${quoted(cloth.piece)}, the longest there is, ${hangs} ${quoted(nameOfTables(tables))}; ${like(wanted)} is wanted.`,
                hint: `Own or rent cloths of ${sizeOf(cloth.needed, like)}, or say with the custom \`cloth-drop\` how far they are to hang.`,
                related: whereListed(cloth.piece),
            });
        }
    },
});

function sizeOf(size: ClothSize, like: (length: number) => string): string {
    return size.shape === 'round' ? `${like(size.across)} across` : `${like(size.length)} by ${like(size.width)}`;
}
