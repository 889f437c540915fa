import type * as ast from '../grammar/generated/ast.js';
import { readStock } from './read-house.js';
import { readNeed, readWaivers } from './read-menu.js';
import { ofType, type Scribe } from './read-scribe.js';
import type { Event, Guests, NamedGuest, Seat } from './types.js';

type Clause = ast.EventClause;

export function readEvent(scribe: Scribe, node: ast.Event): Event {
    scribe.block(node, 'event');
    const clauses = node.clauses ?? [];
    const one = <U extends Clause>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<Clause, U>(clauses, type), clause);
    const origin = scribe.origin(node);
    const title = scribe.textOf(node, 'title') ?? { text: '', origin };
    const date = one<ast.DateClause>('DateClause', 'date');
    const zone = one<ast.ZoneClause>('ZoneClause', 'zone');
    const doors = one<ast.DoorsClause>('DoorsClause', 'doors');
    const seated = one<ast.SeatedClause>('SeatedClause', 'seated');
    const ends = one<ast.EndsClause>('EndsClause', 'ends');
    const revision = one<ast.RevisionClause>('RevisionClause', 'revision');
    const reference = one<ast.ReferenceClause>('ReferenceClause', 'reference');
    const notice = one<ast.NoticeClause>('NoticeClause', 'notice');
    const crew = one<ast.CrewClause>('CrewClause', 'crew');
    const guests = one<ast.GuestsClause>('GuestsClause', 'guests');
    const code = one<ast.CodeClause>('CodeClause', 'local code');
    return {
        title: title.text,
        titleOrigin: title.origin,
        origin,
        date: date && scribe.date(date),
        zone: zone && scribe.textOf(zone, 'zone'),
        doors: doors && scribe.clock(doors),
        seated: seated && scribe.clock(seated),
        ends: ends && scribe.clock(ends),
        rents: ofType<Clause, ast.RentClause>(clauses, 'RentClause').flatMap((rent) =>
            (rent.stock ?? []).flatMap((stock) => readStock(scribe, stock)),
        ),
        revision: revision && scribe.count(revision, 'number'),
        reference: reference && scribe.textOf(reference, 'text'),
        notice: notice && scribe.textOf(notice, 'text'),
        replications: readReplications(scribe, one<ast.ReplicationsClause>('ReplicationsClause', 'replications')),
        crew: crew && readCrew(scribe, crew),
        guests: guests && readGuests(scribe, guests),
        code: code && scribe.named(code, 'code', 'code'),
        waivers: readWaivers(scribe, clauses, origin),
    };
}

function readReplications(scribe: Scribe, node: ast.ReplicationsClause | undefined): Event['replications'] {
    const count = node && scribe.count(node);
    const seed = node && scribe.count(node, 'seed');
    return count && seed && { count: count.count, seed: seed.count, origin: scribe.origin(node) };
}

function readCrew(scribe: Scribe, node: ast.CrewClause): Event['crew'] {
    const count = scribe.count(node);
    const dish = scribe.textOf(node, 'dish');
    if (dish) {
        scribe.occurrences.push({ sort: 'dish-title', name: dish.text, role: 'uses', origin: dish.origin });
    }
    return count && { count: count.count, dish, at: scribe.clock(node), origin: scribe.origin(node) };
}

function readGuests(scribe: Scribe, node: ast.GuestsClause): Guests | undefined {
    const expected = scribe.count(node);
    if (!expected) {
        return undefined;
    }
    const guaranteed = scribe.once(ofType<ast.GuestsPhrase, ast.Guaranteed>(node.phrases, 'Guaranteed'), 'guaranteed');
    const setFor = scribe.once(ofType<ast.GuestsPhrase, ast.SetFor>(node.phrases, 'SetFor'), 'set for');
    return {
        expected,
        guaranteed: guaranteed && scribe.count(guaranteed),
        setFor: setFor && scribe.count(setFor),
        rows: (node.rows ?? []).flatMap((row) => {
            const count = scribe.count(row);
            const needs = (row.needs ?? []).map((need) => readNeed(scribe, need));
            return count ? [{ count, needs, seat: readSeat(scribe, row), origin: scribe.origin(row) }] : [];
        }),
        origin: scribe.origin(node),
    };
}

function readSeat(scribe: Scribe, node: ast.GuestRow | ast.GuestSeat): Seat | undefined {
    const table = scribe.named(node, 'table', 'table');
    return (
        table && {
            table,
            seat: scribe.count(node, 'seat'),
            origin: node.$type === 'GuestSeat' ? scribe.origin(node) : table.origin,
        }
    );
}

export function readSeating(scribe: Scribe, node: ast.Seating): NamedGuest[] {
    return (node.guests ?? []).flatMap((guest) => {
        const name = scribe.textOf(guest, 'name');
        if (!name) {
            return [];
        }
        const phrases = guest.phrases ?? [];
        const seat = scribe.once(ofType<ast.NamedGuestPhrase, ast.GuestSeat>(phrases, 'GuestSeat'), 'at');
        const needs = ofType<ast.NamedGuestPhrase, ast.GuestNeed>(phrases, 'GuestNeed');
        const choices = ofType<ast.NamedGuestPhrase, ast.GuestChoice>(phrases, 'GuestChoice');
        const chooses = choices.flatMap((choice) =>
            (choice.dishes ?? []).flatMap((_, index) => scribe.textOf(choice, 'dishes', index) ?? []),
        );
        for (const dish of chooses) {
            scribe.occurrences.push({ sort: 'dish-title', name: dish.text, role: 'uses', origin: dish.origin });
        }
        return [
            {
                name,
                seat: seat && readSeat(scribe, seat),
                needs: needs.flatMap((need) => (need.need ? [readNeed(scribe, need.need)] : [])),
                chooses,
                origin: scribe.origin(guest),
            },
        ];
    });
}
