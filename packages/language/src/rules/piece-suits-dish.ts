import type { Cupboard, Kind, PieceUse } from '../plan/cupboard.js';
import type { Course, Dish } from '../plan/types.js';
import { writeEaten, writtenUses, writeUse } from './eaten-with.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { kindsOfTitle } from '../service/kinds-of-title.js';
import { saysItsKind, stateKind } from './state-kind.js';
import { mismatchedPair, ownsEatenClause, piecesFor, suitsKind } from '../plan/suiting.js';
import { asName, listed, quoted } from './wording.js';

export default defineRule({
    id: 'piece-suits-dish',
    group: 'cover',
    since: '0.1.0',
    title: 'A piece that does not suit the dish it is eaten with',
    why: 'Soup runs through the tines of a fork, and a guest who has the wrong piece in hand stops eating and looks for a server.',
    source: ['table-service §7b', 'table-service 7.26', 'table-service 2.28'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Soup with a fork',
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        eaten with <|dinner-fork|>
        lasts 15 min
        contains milk
    }
}
`,
            },
        ],
        right: [
            {
                text: `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course cold-soup "Chilled cucumber soup" {
        served in soup-plate chilled at 6 °C
        eaten with soup-spoon
        lasts 15 min
        contains milk
    }
}
`,
            },
        ],
    },
    check({ plan, report }) {
        const { cupboard } = plan;
        for (const course of plan.menu?.courses ?? []) {
            const judged = new Set<PieceUse>();
            for (const dish of course.dishes) {
                const kind = cupboard.kinds.get(dish.kind.name);
                const bad = kind ? unsuited(cupboard, dish, kind).filter((use) => !judged.has(use)) : [];
                const [use] = bad;
                if (!kind || !use) {
                    continue;
                }
                // A clause of the course that is wrong for each of its dishes is one mistake; for some of them, it is those dishes' matter.
                const forAll =
                    ownsEatenClause(dish) ||
                    sharedBy(course, dish).every(
                        (other) =>
                            bad.every((each) => unsuitedFor(cupboard, other, each)) &&
                            isEatenAlike(cupboard, other, dish),
                    );
                if (forAll) {
                    bad.forEach((each) => judged.add(each));
                }
                const fix = fixFor(cupboard, dish, kind, bad, forAll);
                const wanted = wantedPieces(cupboard, kind);
                const told = kindsOfTitle(dish.title, kind, cupboard).filter((each) =>
                    bad.every(({ piece }) => suitsKind(cupboard, piece.name, each)),
                );
                const isToBeSaid = told.length > 0 && !saysItsKind(dish, course);
                report({
                    at: forAll ? use.piece.origin : dish.head,
                    message: `${listed(bad.map((each) => quoted(each.piece.name)))} ${bad.length > 1 ? 'do' : 'does'} not suit ${quoted(dish.title)}: ${quoted(kind.name)} is eaten with ${wanted.said}.`,
                    hint: isToBeSaid
                        ? `Write ${quoted(`is ${asName(told[0]!.name)}`)} behind its title, or eat it with ${wanted.said}.`
                        : fix
                          ? `${fix.title}.`
                          : `Eat it with ${wanted.said}.`,
                    related: forAll
                        ? []
                        : [{ at: use.piece.origin, message: 'Here the course says what its dishes are eaten with.' }],
                    fixes: [
                        ...(isToBeSaid ? told.flatMap((each) => stateKind(dish, each.name, plan)) : []),
                        ...(fix ? [fix] : []),
                    ],
                });
            }
        }
    },
});

function sharedBy(course: Course, dish: Dish): readonly Dish[] {
    return course.dishes.filter((other) => other.eaten === dish.eaten);
}

function unsuitedFor(cupboard: Cupboard, dish: Dish, use: PieceUse): boolean {
    const kind = cupboard.kinds.get(dish.kind.name);
    return kind !== undefined && unsuited(cupboard, dish, kind).includes(use);
}

/** One clause can be right for both only where their kinds are eaten with the same. */
function isEatenAlike(cupboard: Cupboard, one: Dish, other: Dish): boolean {
    const [a, b] = [one, other].map(({ kind }) => {
        const known = cupboard.kinds.get(kind.name);
        return known && wantedPieces(cupboard, known).said;
    });
    return a === b;
}

/** Known pieces that do not suit; none where the cupboard does not say what the kind is eaten with. */
function unsuited(cupboard: Cupboard, dish: Dish, kind: Kind): readonly PieceUse[] {
    if (!dish.eaten || wantedPieces(cupboard, kind).names.length === 0) {
        return [];
    }
    // A fork and a knife of two services are `matched-pair`'s finding.
    const pair = mismatchedPair(cupboard, dish.eaten, kind);
    return dish.eaten
        .flat()
        .filter((use) => cupboard.pieces.has(use.piece.name) && !suitsKind(cupboard, use.piece.name, kind))
        .filter((use) => use !== pair?.fork && use !== pair?.knife);
}

/** What the kind is eaten with: its own word, else the pieces that are for it. */
function wantedPieces(cupboard: Cupboard, kind: Kind): { readonly names: readonly string[]; readonly said: string } {
    if (kind.eaten) {
        const groups = kind.eaten.map((alternatives) => alternatives.map((use) => use.piece.name));
        return {
            names: groups.flatMap((alternatives) => alternatives.slice(0, 1)),
            said: listed(groups.map((alternatives) => listed(alternatives.map(quoted), 'or'))),
        };
    }
    const names = piecesFor(cupboard, kind).map((piece) => piece.name);
    return { names, said: listed(names.map(quoted), 'or') };
}

/** Changes all the pieces that do not suit at once, so that no mixed pair is left. */
function fixFor(
    cupboard: Cupboard,
    dish: Dish,
    kind: Kind,
    bad: readonly PieceUse[],
    inPlace: boolean,
): Fix | undefined {
    const kept = dish
        .eaten!.flat()
        .filter((other) => !bad.includes(other) && suitsKind(cupboard, other.piece.name, kind));
    const missing = wantedPieces(cupboard, kind).names.filter(
        (name) => !kept.some((other) => other.piece.name === name),
    );
    const familyOf = (name: string): string | undefined => cupboard.pieces.get(name)?.family;
    const taken = new Set<string>();
    const swaps = bad.map((use) => {
        // A piece of the same family takes its place; where the kind has no word of its own, one such piece will do.
        const open = missing.filter((name) => !taken.has(name));
        const sameFamily = open.filter((name) => familyOf(name) === familyOf(use.piece.name));
        const instead =
            sameFamily.length > 0 ? sameFamily.slice(0, 1) : kind.eaten && bad.length === 1 ? open : open.slice(0, 1);
        instead.forEach((name) => taken.add(name));
        return { use, instead };
    });
    const all = swaps.flatMap((swap) => swap.instead);
    if (all.length === 0 && kept.length === 0) {
        return undefined;
    }
    const without = listed(bad.map((use) => quoted(use.piece.name)));
    const title =
        all.length === 0
            ? `Eat ${quoted(dish.title)} without ${without}`
            : `Eat ${quoted(dish.title)} with ${listed(all.map(quoted))}`;
    if (inPlace && swaps.every((swap) => swap.instead.length === 1)) {
        const changes = swaps.map(({ use, instead }) => ({
            do: 'replace' as const,
            at: use.piece.origin,
            words: instead[0]!,
        }));
        return { title, safety: 'unsafe', preferred: true, changes };
    }
    const pieces = [
        ...writtenUses(dish.eaten!, (other) => bad.includes(other)),
        ...swaps.flatMap(({ use, instead }) => instead.map((name) => [writeUse({ ...use, name })])),
    ];
    const clause = writeEaten(pieces);
    return {
        title,
        safety: 'unsafe',
        preferred: true,
        changes: [
            inPlace
                ? { do: 'replace', at: dish.eatenOrigin!, words: clause }
                : { do: 'add-clause', to: dish.origin, clause },
        ],
    };
}
