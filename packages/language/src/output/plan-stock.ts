/** Pieces, stock, supplies and equipment, for the compiled plan. */
import { customSpecs, type CustomName } from '../plan/customs.js';
import { ROUNDING_RULE } from '../service/stock/lots.js';
import type { EquipmentUse, Remedy, Substitution, Turnaround } from '../service/stock/types.js';
import { isBackInTime } from '../service/stock/turnarounds.js';
import type { Supply } from '../service/supplies/types.js';
import { momentJson } from './plan-clock.js';
import type { Telling } from './plan-menu.js';
import { at, figureJson, type Json } from './plan-values.js';

/** @returns the members of `service` that speak of pieces and supplies */
export function stockJson(telling: Telling): Json {
    const { service } = telling;
    const { stock } = service;
    const racks = new Map(stock.racks.map((line) => [line.piece, line]));
    return {
        pieces: service.counts.map(({ piece, needed, by }) => ({
            piece,
            needed,
            by: by.map((use) => ({ course: courseTitle(telling, use.course), purpose: use.purpose, count: use.count })),
        })),
        countRule:
            'One for every guest whose dishes need it, in each course, and what the servers carry and pour from; without spares and without washing between courses.',
        pull: service.pull.map((line) => {
            const rack = racks.get(line.piece);
            return {
                ...line,
                racks: rack && { rack: rack.rack, each: rack.each, count: rack.racks, because: rack.because },
            };
        }),
        pullRule:
            'Needed for the guests expected, laid for the covers set beyond them, less what a stated wash gives back in time, and the spare share of all that. What the house does not list is not counted against it.',
        roundingRule: ROUNDING_RULE,
        stock: {
            dishRoom: stock.dishRoom && {
                racksPerHour: stock.dishRoom.racksPerHour,
                polishedPerMinute: stock.dishRoom.polishPerMinute,
                dryingMinutes: stock.dishRoom.drying,
                assumed: stock.dishRoom.assumed,
                model: 'Racks per hour as stated, else 3600 / (cycle + 30 s) (quantities 5). Pieces are back when all are cleared, washed, dried and polished: an upper limit.',
            },
            turnarounds: stock.turnarounds.map((wash) => turnaroundJson(telling, wash)),
            racks: stock.wash.racks,
            hours: stock.wash.hours === undefined ? undefined : round(stock.wash.hours),
            carts: stock.wash.carts,
            linen: stock.linen,
            choice: stock.remedy && {
                ...remedyJson(telling, stock.remedy),
                costTerms: {
                    rentPiece: stock.costs.rent,
                    delivery: stock.costs.delivery,
                    washPiece: stock.costs.wash,
                    substitutePiece: stock.costs.substitute,
                },
                model: 'The cheapest of all ways to wash, substitute and rent that leaves nothing short, as an integer program; only the ratios of the costs matter (common practice, no source).',
            },
        },
        supplies: service.supplies.map((supply) => supplyJson(telling, supply)),
        equipment: stock.equipment.map((use) => equipmentJson(telling, use)),
    };
}

function courseTitle({ plan }: Telling, course: number): string | undefined {
    const courses = plan.menu?.courses ?? [];
    return courses[course]?.title ?? (course === courses.length ? 'coffee' : undefined);
}

function turnaroundJson(telling: Telling, wash: Turnaround): Json {
    const { plan, places } = telling;
    const { times } = wash;
    return {
        piece: wash.piece,
        after: courseTitle(telling, wash.after),
        for: courseTitle(telling, wash.for),
        count: wash.count,
        saves: wash.saves,
        racks: wash.racks,
        workMinutes: round(wash.work),
        restMinutes: round(wash.rest),
        cleared: times && momentJson(plan, times.cleared),
        back: times && momentJson(plan, times.back),
        wanted: times && momentJson(plan, times.wanted),
        inTime: isBackInTime(wash),
        stated: wash.stated !== undefined,
        ...at(places, wash.stated?.origin),
    };
}

function remedyJson(telling: Telling, { washes, substitutions, rents, cost, isProved }: Remedy): Json {
    const substitution = ({ piece, by, count, title, write }: Substitution): Json => ({
        piece,
        by,
        count,
        in: title,
        ...at(telling.places, write.at),
    });
    return {
        washes: washes.map((wash) => turnaroundJson(telling, wash)),
        substitutions: substitutions.map(substitution),
        rents,
        cost: round(cost),
        proved: isProved,
    };
}

function supplyJson(telling: Telling, supply: Supply): Json {
    const { dimension } = supply;
    const figure = (value: number): Json => figureJson(dimension, round(value));
    return {
        what: supply.what,
        title: supply.title,
        for: supply.guests,
        each: figure(supply.each),
        amount: figure(supply.amount),
        packs: supply.packs && {
            called: supply.packs.called,
            count: supply.packs.count,
            each: figure(supply.packs.size),
        },
        because: supply.customs.map((name) => customUsed(telling, name)),
    };
}

/** A custom that a figure rests on, with what it rests on itself. */
function customUsed({ plan, places }: Telling, name: CustomName): Json {
    const { value, origin } = plan.customs[name];
    const sources = customSpecs.find((spec) => spec.name === name)?.figure?.sources ?? [];
    return { custom: name, value, because: origin ? 'declared' : 'default', sources, ...at(places, origin) };
}

function equipmentJson(telling: Telling, use: EquipmentUse): Json {
    return {
        gear: use.gear,
        for: use.purpose,
        course: courseTitle(telling, use.course),
        dishes: use.dishes.map((dish) => dish.title),
        plates: use.plates,
        pieces: use.count,
        holds: use.capacity,
        loads: use.loads,
        minutes: use.minutes,
        mostAt: use.at === undefined ? undefined : momentJson(telling.plan, use.at),
        because: use.purpose === 'warming' ? [customUsed(telling, 'plate-warming')] : undefined,
    };
}

/** Two decimals: what is estimated is not told to the last digit of a binary fraction. */
const round = (value: number): number => Math.round(value * 100) / 100;
