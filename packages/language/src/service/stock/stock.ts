/** The stock of one evening: what is washed in between, what is done about what is short, racks, linen and equipment. */
import { keepCompiled } from '../../keep-compiled.js';
import type { Plan } from '../../plan/types.js';
import { lazily } from '../../plan/lazily.js';
import type { Run } from '../run/types.js';
import type { Service } from '../types.js';
import { finishTimes } from './dish-room-schedule.js';
import { dishRoomOf, jobOf } from './dish-room.js';
import { equipmentUses } from './equipment.js';
import { parOf } from './lots.js';
import { cartsOf, racksOf } from './racks.js';
import { remediesOf } from './remedies.js';
import { statedWashes, turnaroundOf, WashableStock } from './turnarounds.js';
import type { CostTerms, DishRoom, LinenLine, PullLine, Stock, Turnaround } from './types.js';

type Served = Pick<
    Service,
    'facts' | 'variations' | 'pours' | 'setFor' | 'guestCount' | 'counts' | 'pull' | 'servings'
>;

/**
 * Each part is worked out when something first asks for it.
 * @param runOf the run sheet; `undefined` where the plan has none: then nothing is known to be back in time
 */
export function stockOf(plan: Plan, service: Served, runOf: () => Run | undefined): Stock {
    const dishRoom = dishRoomOf(plan.house);
    const costs = costsOf(plan);
    const turnarounds = lazily(() => turnaroundsOf(plan, service, dishRoom, runOf()));
    const racks = lazily(() => service.pull.flatMap((line) => racksOf(plan, line.piece, line.pull) ?? []));
    const remedies = lazily(() => {
        const short = service.pull.filter((line) => line.short > 0);
        return remediesOf(plan, service, short, { ...turnarounds(), costs });
    });
    const equipment = lazily(() => equipmentUses(plan, service, runOf));
    return {
        dishRoom,
        costs,
        get turnarounds() {
            return [...turnarounds().stated, ...turnarounds().possible];
        },
        get racks() {
            return racks();
        },
        get wash() {
            const total = racks().reduce((sum, line) => sum + line.racks, 0);
            return { racks: total, hours: dishRoom && total / dishRoom.racksPerHour, carts: cartsOf(plan, total) };
        },
        get linen() {
            return linenOf(plan, service.pull);
        },
        get remedy() {
            return remedies().remedy;
        },
        get remedies() {
            return remedies().remedies;
        },
        get equipment() {
            return equipment();
        },
    };
}

/** Stated washes, and those of pieces that are short. */
function turnaroundsOf(
    plan: Plan,
    { counts, variations, pull }: Served,
    dishRoom: DishRoom | undefined,
    run: Run | undefined,
): { readonly stated: readonly Turnaround[]; readonly possible: readonly Turnaround[] } {
    const washable = keepCompiled(new WashableStock(counts, variations));
    const stated = statedWashes(plan, washable).map((wash) => turnaroundOf(plan, wash, dishRoom, run));
    const short = pull.filter((line) => line.short > 0);
    const possible = short
        .flatMap(({ piece }) => washable.pairsOf(piece, plan.menu?.courses.length ?? 0))
        .map((pair) => turnaroundOf(plan, pair, dishRoom, run));
    return { stated: inTurn(stated), possible: possible.filter(({ times }) => times !== undefined) };
}

function costsOf({ customs }: Plan): CostTerms {
    return {
        rent: customs['rent-cost'].value,
        delivery: customs['delivery-cost'].value,
        wash: customs['wash-cost'].value,
        substitute: customs['substitute-cost'].value,
    };
}

/** What a house keeps that has so many of each in use: in service, on the shelf, in the laundry. */
function linenOf(plan: Plan, pull: readonly PullLine[]): LinenLine[] {
    const par = plan.customs['linen-par'].value;
    return pull
        .filter(({ piece }) => plan.cupboard.pieces.get(piece)?.family === 'linen')
        .map(({ piece, pull: inUse, owned }) => ({ piece, inUse, par, keep: parOf(inUse, par), owned }));
}

/** Stated washes share one dish room: each is back when its turn is over. */
function inTurn(washes: readonly Turnaround[]): Turnaround[] {
    const finished = finishTimes(washes.flatMap(jobOf));
    const timed = washes.filter(({ times }) => times !== undefined);
    return washes.map((wash) => {
        const turn = timed.indexOf(wash);
        return wash.times && turn >= 0
            ? { ...wash, times: { ...wash.times, back: finished[turn]! + wash.rest } }
            : wash;
    });
}
