/** How a text is changed so that nothing is short any more: a wash, another piece, a rent. */
import type { Plan } from '../plan/types.js';
import type { Remedy, Substitution, Turnaround } from '../service/stock/types.js';
import { courseName } from './course-order.js';
import type { Fix, Intention } from './fixes.js';
import { asName, listed, quoted } from './wording.js';

/** What is rented beside what is rented already. */
export interface Rent {
    readonly piece: string;
    readonly count: number;
    /** Of gear, how many of what one of it holds: `60 plates`. */
    readonly holds?: string;
}

/** One change of the plan for all that a remedy does; `undefined` where the plan has no place for it. */
export function remedyFix(plan: Plan, { washes, substitutions, rents }: Remedy): Fix | undefined {
    const rent = rentMore(plan, rents);
    const parts = [
        ...washes.map((wash) => washTitle(plan, wash)),
        ...substitutions.map(substitutionTitle),
        ...(rents.length > 0 ? [`rent ${listed(rents.map(({ piece, count }) => `${count} ${quoted(piece)}`))}`] : []),
    ];
    if (parts.length === 0 || !plan.menu || (rents.length > 0 && !rent)) {
        return undefined;
    }
    const title = listed(parts);
    return {
        title: title[0]!.toUpperCase() + title.slice(1),
        safety: 'unsafe',
        changes: [
            ...washes.flatMap((wash) => washClause(plan, wash)),
            ...substitutions.map(substitutionChange),
            ...(rent ?? []),
        ],
    };
}

/** Lets the event's `rent` grow, or writes one. */
export function rentMore({ event }: Plan, rents: readonly Rent[]): readonly Intention[] | undefined {
    if (!event || rents.length === 0) {
        return event && [];
    }
    const words = ({ piece, count, holds }: Rent): string =>
        `${count} ${asName(piece)}${holds ? ` { holds ${holds} }` : ''}`;
    const known = rents.flatMap((rent): Intention[] => {
        const stated = event.rents.find(({ piece }) => piece.name === rent.piece)?.count;
        return stated ? [{ do: 'replace', at: stated.origin, words: String(stated.count + rent.count) }] : [];
    });
    const others = rents.filter((rent) => !event.rents.some(({ piece }) => piece.name === rent.piece));
    const last = event.rents.at(-1);
    if (others.length === 0) {
        return known;
    }
    const list = others.map(words).join(', ');
    return [
        ...known,
        last
            ? { do: 'append', at: last.origin, words: `, ${list}` }
            : { do: 'add-clause', to: event.origin, clause: `rent ${list}` },
    ];
}

function washTitle({ menu }: Plan, { piece, after, for: later }: Turnaround): string {
    const title = (course: number): string => quoted(menu?.courses[course]?.title ?? '');
    return `wash ${quoted(piece)} after ${title(after)} for ${title(later)}`;
}

function washClause({ menu }: Plan, { piece, after, for: later }: Turnaround): Intention[] {
    const courses = menu?.courses ?? [];
    const [from, to] = [courses[after], courses[later]];
    return menu && from && to
        ? [
              {
                  do: 'add-clause',
                  to: menu.origin,
                  clause: `wash ${asName(piece)} after ${courseName(courses, from)} for ${courseName(courses, to)}`,
              },
          ]
        : [];
}

function substitutionTitle({ sort, how = 'on', title, by, piece }: Substitution): string {
    switch (sort) {
        case 'vessel':
            return `serve ${quoted(title)} ${how} ${quoted(by)}`;
        case 'underliner':
            return `stand ${quoted(title)} on ${quoted(by)}`;
        case 'flatware':
            return `eat ${quoted(title)} with ${quoted(by)} in place of ${quoted(piece)}`;
        case 'glass':
            return `pour ${quoted(title)} into ${quoted(by)}`;
    }
}

function substitutionChange({ write }: Substitution): Intention {
    const words = write.before + write.pieces.map(asName).join(' and ') + write.after;
    return write.do === 'add-clause'
        ? { do: 'add-clause', to: write.at, clause: words }
        : { do: write.do, at: write.at, words };
}
