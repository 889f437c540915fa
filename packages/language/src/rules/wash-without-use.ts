import { findCourse } from '../plan/names.js';
import type { Menu, Wash } from '../plan/types.js';
import type { Service } from '../service/types.js';
import { courseName } from './course-order.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { asName, quoted } from './wording.js';

const plan = (wash: string): string => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

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
        lasts 30 min
        contains celery
    }
    course salad "Bitter leaves" {
        served on salad-plate at 8 °C
        eaten with salad-fork
        lasts 12 min
        contains mustard
    }
    ${wash}
}
`;

export default defineRule({
    id: 'wash-without-use',
    group: 'service',
    since: '0.2.0',
    title: 'A wash that gives back nothing',
    why: 'The plan counts on pieces that never come, or the dish room stands by for what nobody wants.',
    source: ['common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'The wrong way round', text: plan('<|wash salad-fork after salad for appetizer|>') },
            { title: 'Not in that course', text: plan('<|wash salad-fork after main for salad|>') },
            { title: 'Not for that course', text: plan('<|wash salad-fork after appetizer for main|>') },
        ],
        right: [{ text: plan('wash salad-fork after appetizer for salad') }],
    },
    check({ plan, service, report }) {
        const { menu } = plan;
        for (const wash of menu?.washes ?? []) {
            const [after, later] = [findCourse(menu, wash.after.name), findCourse(menu, wash.for.name)];
            // What is not known by its name is told where the name stands; without guests nothing can be counted.
            if (!menu || !after || !later || !plan.cupboard.pieces.has(wash.piece.name) || service.guestCount === 0) {
                continue;
            }
            const piece = quoted(wash.piece.name);
            const [from, to] = [quoted(after.title), quoted(later.title)];
            if (after.index >= later.index) {
                const isBackwards = after.index > later.index;
                report({
                    at: wash.origin,
                    message: isBackwards
                        ? `${piece} is to be washed after ${from} for ${to}, which is served before it.`
                        : `${piece} is to be washed after ${from} for ${to}: that is one course.`,
                    hint: isBackwards ? `Wash it after ${to} for ${from}, or leave it out.` : 'Leave it out.',
                    fixes: [...(isBackwards ? [turnedRound(menu, wash)] : []), leftOut(wash)],
                });
                continue;
            }
            const why = whyNothing(service, wash, after.index, later.index, from, to);
            if (why) {
                report({ at: wash.origin, message: `${why}.`, hint: 'Leave it out.', fixes: [leftOut(wash)] });
            }
        }
    },
});

function whyNothing(
    service: Service,
    wash: Wash,
    after: number,
    later: number,
    from: string,
    to: string,
): string | undefined {
    const { name } = wash.piece;
    const isCleared = service.variations.some(({ steps }) =>
        steps.some(
            (step) =>
                step.sort === 'clear' && step.course === after && step.cleared.some((item) => item.piece === name),
        ),
    );
    if (!isCleared) {
        return `No ${quoted(name)} leaves the tables with ${from}: there is none to wash`;
    }
    const uses = service.counts.find(({ piece }) => piece === name)?.by.filter(({ course }) => course === later) ?? [];
    if (uses.length === 0) {
        return `${to} needs no ${quoted(name)}`;
    }
    if (uses.every(({ isFixed }) => isFixed)) {
        return `${quoted(name)} of ${to} lies at the cover when guests sit, as the plan says: it cannot come from the wash`;
    }
    return undefined;
}

function turnedRound(menu: Menu, wash: Wash): Fix {
    const name = (course: string): string => {
        const found = findCourse(menu, course);
        return found ? courseName(menu.courses, found) : asName(course);
    };
    const [after, later] = [name(wash.for.name), name(wash.after.name)];
    return {
        title: `Wash ${quoted(wash.piece.name)} after ${titleOf(menu, wash.for.name)} for ${titleOf(menu, wash.after.name)}`,
        safety: 'unsafe',
        preferred: true,
        changes: [
            { do: 'replace', at: wash.origin, words: `wash ${asName(wash.piece.name)} after ${after} for ${later}` },
        ],
    };
}

function titleOf(menu: Menu, name: string): string {
    return quoted(findCourse(menu, name)?.title ?? name);
}

function leftOut(wash: Wash): Fix {
    return {
        title: `Leave the wash of ${quoted(wash.piece.name)} out`,
        safety: 'unsafe',
        changes: [{ do: 'remove', at: wash.origin }],
    };
}
