import type { NamedGuest, Plan } from '../../plan/types.js';
import { dealInOrder } from '../deal.js';
import type { GuestGroup, Service } from '../types.js';
import type { VariationDraft } from '../variations.js';
import { dealSeats, spread, type Party } from './deal-seats.js';
import { initials } from './initials.js';
import { tablesOf } from './tables.js';
import type { PlateSort, SeatedGuest, Seats } from './types.js';

/** Guests who get the same of everything, before they are seated. */
interface Company extends Party {
    readonly group: GuestGroup;
    readonly variation: number;
    readonly bread?: number;
    readonly named?: NamedGuest;
}

type Served = Pick<Service, 'groups' | 'guestCount' | 'setFor' | 'bread' | 'tables'>;

/**
 * Who sits where with which dishes, and how their plates are marked.
 * @param variations in the order of the service's
 */
export function seatGuests(
    plan: Plan,
    service: Served,
    variations: readonly VariationDraft[],
    plates: readonly PlateSort[],
): Seats {
    const { setFor, guestCount } = service;
    const tables = tablesOf(plan.room, Math.max(setFor, guestCount), () => service.tables);
    const companies = companiesOf(plan, service, variations);
    const dealt = dealSeats({
        tables,
        parties: companies.map(({ count, table, seat }) => ({ count, table, seat })),
        covers: setFor,
    });
    const markerOf = markersOf(plates);
    const dishesOf = variations.map(({ dishes }) => dishes.map((dish) => dish?.index));
    const guests = dealt.taken.map(({ table, seat, party, stated }): SeatedGuest => {
        const { group, variation, bread, named } = companies[party]!;
        const dishes = dishesOf[variation]!;
        return {
            table: tables[table]!.name,
            seat,
            stated,
            group: group.index,
            variation,
            dishes,
            markers: dishes.map((dish, course) => markerOf(course, dish, group)),
            bread,
            breadMarker: markerOf(-1, bread, group),
            initials: named && initials(named.name.text),
            listed: named && plan.seating.indexOf(named),
        };
    });
    return {
        guests,
        tables: tables.map(({ name, seats }, index) => ({
            name,
            seats,
            guests: dealt.guests[index]!,
            laid: dealt.laid[index]!,
        })),
        withoutSeat: dealt.withoutSeat,
        plates,
    };
}

type MarkerOf = (course: number, dish: number | undefined, group: GuestGroup) => string | undefined;

function markersOf(plates: readonly PlateSort[]): MarkerOf {
    // By course, the bread's before the first; by dish; by group.
    const markers: (string | undefined)[][][] = [];
    for (const { course, dish, groups, marker } of plates) {
        const ofDish = ((markers[course + 1] ??= [])[dish] ??= []);
        for (const group of groups) {
            ofDish[group] = marker;
        }
    }
    return (course, dish, group) => (dish === undefined ? undefined : markers[course + 1]?.[dish]?.[group.index]);
}

/** The guests of every group by what they get: a variation of dishes, a bread, a seat of their own. */
function companiesOf(plan: Plan, { groups, bread }: Served, variations: readonly VariationDraft[]): Company[] {
    const known = new Set(groups.flatMap(({ named }) => named ?? []));
    // Named guests without needs or choices are of the plain guests, who come last.
    const plainNamed = plan.seating.filter((guest) => !known.has(guest));
    const ofVariations = shares(variations.map(({ dealt }, index) => ({ item: index, groups: dealt })));
    const ofBreads = shares(
        (bread?.serving.portions ?? []).map(({ dish, groups: fed }) => ({ item: dish.index, groups: fed })),
    );
    return groups.flatMap((group) => {
        const companies: Company[] = [];
        const lists = [ofVariations.get(group) ?? [], ofBreads.get(group) ?? []];
        dealInOrder(group.count, lists, ([variation, loaf], count) =>
            companies.push({
                group,
                variation: variation!,
                bread: loaf,
                count,
                named: group.named,
                ...placeOf(group),
            }),
        );
        const isPlain = group.needs.length === 0 && !group.row && !group.named;
        return isPlain ? nameSome(companies, plainNamed) : companies;
    });
}

/** What each group gets of every item, in the order of the items. */
function shares(
    items: readonly {
        readonly item: number;
        readonly groups: readonly { readonly group: GuestGroup; readonly count: number }[];
    }[],
): Map<GuestGroup, { item: number; count: number }[]> {
    const found = new Map<GuestGroup, { item: number; count: number }[]>();
    for (const { item, groups } of items) {
        for (const { group, count } of groups) {
            const known = found.get(group);
            if (known) {
                known.push({ item, count });
            } else {
                found.set(group, [{ item, count }]);
            }
        }
    }
    return found;
}

function placeOf({ seat }: Pick<GuestGroup, 'seat'>): Pick<Company, 'table' | 'seat'> {
    return { table: seat?.table.name, seat: seat?.seat?.count };
}

/** Takes the named guests out of companies that name nobody, from each in its part. */
function nameSome(companies: readonly Company[], named: readonly NamedGuest[]): Company[] {
    const line = spread(companies.map(({ count }, party) => ({ party, count })));
    const counts = companies.map(({ count }) => count);
    const ofTheirOwn = named.slice(0, line.length).map((guest, index): Company => {
        const from = line[index]!;
        counts[from]!--;
        return { ...companies[from]!, count: 1, named: guest, ...placeOf(guest) };
    });
    return [...ofTheirOwn, ...companies.map((company, index) => ({ ...company, count: counts[index]! }))];
}
