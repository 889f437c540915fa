import type { Plan } from '../plan/types.js';
import { eveningClock } from '../service/clock/evening.js';
import { up } from '../service/stock/lots.js';
import { spareShare } from '../service/stock/pull.js';
import { isBackInTime, isPolished } from '../service/stock/turnarounds.js';
import type { PullLine, Turnaround } from '../service/stock/types.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { rentMore } from './stock-remedies.js';
import { counted, quoted } from './wording.js';

const plan = (polish: string): string => `house "Saltmarsh Hall" {
    own 50 salad-fork
    washing { 45 racks per hour  polish ${polish} pieces per min  drying 5 min }
}

event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

room "Boathouse" 14 m by 11 m {
    table A to E: round 72 inch, 8 seats, 1 accessible
}

team { captain 1   servers 4   runners 2   plating-lines 1 at 12 plates per min }

menu {
    course appetizer "Beets and curd" {
        served on salad-plate at 8 °C
        eaten with salad-fork
        lasts 20 min
        contains milk
    }
    course main "Braised chicken" is poultry {
        served on dinner-plate warmed to 60 °C at 64 °C
        cook to 74 °C
        lasts 20 min
        contains celery
    }
    course salad "Bitter leaves" {
        served on salad-plate at 8 °C
        eaten with salad-fork
        lasts 12 min
        contains mustard
    }
    wash salad-fork after appetizer for salad
}
`;

export default defineRule({
    id: 'wash-too-late',
    group: 'service',
    since: '0.2.0',
    title: 'Pieces that are washed in between come too late',
    why: 'A fork that is still wet when its course is at the pass is not laid, and guests wait with the plate in front of them.',
    source: ['quantities 5', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: plan('1').replace(
                    'wash salad-fork after appetizer for salad',
                    '<|wash salad-fork after appetizer for salad|>',
                ),
            },
        ],
        right: [{ text: plan('8') }],
    },
    check({ plan, service, report }) {
        if (!plan.menu || plan.menu.washes.length === 0) {
            return;
        }
        const clock = eveningClock(plan);
        const { turnarounds, dishRoom } = service.stock;
        for (const wash of turnarounds) {
            const { stated, times, piece } = wash;
            if (!stated || !times || !dishRoom || !clock || isBackInTime(wash) !== false) {
                continue;
            }
            const [from, to] = [wash.after, wash.for].map((course) => quoted(plan.menu!.courses[course]?.title ?? ''));
            const late = Math.max(1, Math.round(times.back - times.wanted));
            const missing = missingWithout(plan, wash, service.pull);
            report({
                at: stated.origin,
                message: `${quoted(piece)} of ${from} is cleared at ${clock.face(times.cleared)} and back at ${clock.face(times.back)} at the latest; ${to} wants it at ${clock.face(times.wanted)}, ${late} min before that.`,
                hint: `${workSaid(plan, wash)} take ${Math.ceil(wash.work)} min, and ${Math.ceil(wash.rest)} min more ${wash.rest > dishRoom.drying ? 'to dry and to warm' : 'to dry'}. ${missing > 0 ? `Rent ${missing}` : 'Fetch them from the store'}.`,
                related: [{ at: stated.for.origin, message: `They are wanted for ${to}.` }],
                fixes: fetchInstead(plan, wash, missing),
            });
        }
    },
});

function workSaid({ cupboard }: Plan, { piece, count, racks }: Turnaround): string {
    const washed = counted(racks, 'rack');
    return isPolished(cupboard.pieces.get(piece)?.family)
        ? `${washed} and ${counted(count, 'piece')} to polish`
        : washed;
}

/** How many are short when the pieces are not washed. */
function missingWithout(plan: Plan, { piece, saves }: Turnaround, pull: readonly PullLine[]): number {
    const line = pull.find((each) => each.piece === piece);
    if (!line || (line.owned === undefined && line.rented === 0)) {
        return 0;
    }
    const inUse = line.pull - line.spare + saves;
    return Math.max(0, inUse + up(spareShare(plan, piece) * inUse) - (line.owned ?? 0) - line.rented);
}

function fetchInstead(plan: Plan, { piece, stated }: Turnaround, missing: number): Fix[] {
    const rent = rentMore(plan, missing > 0 ? [{ piece, count: missing }] : []);
    return rent
        ? [
              {
                  title:
                      missing > 0
                          ? `Rent ${missing} ${quoted(piece)} in place of washing them`
                          : `Fetch ${quoted(piece)} from the store in place of washing it`,
                  safety: 'unsafe',
                  preferred: true,
                  changes: [{ do: 'remove', at: stated!.origin }, ...rent],
              },
          ]
        : [];
}
