import { isAbove, isBelow } from '../plan/degrees.js';
import { isKindOf } from '../plan/names.js';
import type { Plan } from '../plan/types.js';
import type { DishFacts } from '../service/types.js';
import { everyDrink, isWine } from './drinks.js';
import { firstSight } from './first-sight.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report } from './rule.js';
import { aboveBoiling, outOfRange, servingRange } from './serving-range.js';
import { asName, quoted } from './wording.js';

export default defineRule({
    id: 'serving-temperature',
    group: 'service',
    since: '0.1.0',
    title: 'A dish or drink wanted colder or warmer than it is good at',
    why: 'Lukewarm soup and soft ice both go back to the kitchen, and a soup above 72 °C scalds. Nothing that holds water is hotter than boiling.',
    source: ['temperature 4.3', 'temperature 7.2', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at <|45 °C|>
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
            {
                title: 'A figure in the wrong scale',
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at <|145 °C|>
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
            {
                title: 'A cold soup that is called a soup',
                text: `event "Garden lunch" { date 2027-07-03  zone America/Halifax  seated 12:30  guests 40 }
menu {
    course soup "Cucumber and buttermilk" {
        served in soup-bowl chilled on underliner at <|6 °C|>
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course soup "Roast squash soup" {
        served in soup-bowl warmed on underliner at 145 °F
        leaves the pass at 175 °F
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const isNew = firstSight();
        const reportOnce = (found: Report | undefined): void => {
            if (found && isNew(found.at)) {
                report(found);
            }
        };
        for (const facts of service.facts) {
            const { dish, kind } = facts;
            const { title, served, leavesPass, heldAt } = dish;
            const range = servingRange(kind);
            const fixes = () => otherKinds(plan, facts);
            reportOnce(aboveBoiling(title, 'be served', served.temperature));
            reportOnce(aboveBoiling(title, 'leave the pass', leavesPass?.temperature));
            reportOnce(aboveBoiling(title, 'be held', heldAt?.temperature));
            reportOnce(outOfRange({ title, temperature: served.temperature, range, kind, how: 'served', fixes }));
        }
        for (const { pour, kind } of everyDrink(plan, service)) {
            // Wine has a rule of its own.
            if (!isWine(kind)) {
                const { title, temperature } = pour;
                reportOnce(outOfRange({ title, temperature, range: servingRange(kind), kind, how: 'poured' }));
            }
        }
        const kind = plan.cupboard.drinks.get('coffee');
        const temperature = plan.menu?.coffee?.temperature;
        reportOnce(outOfRange({ title: 'coffee', temperature, range: servingRange(kind), kind, how: 'served' }));
    },
});

/** A soup wanted at 6 °C is a cold soup that was called a soup: the sorts of its kind that are good at that temperature. */
function otherKinds({ cupboard, readings }: Plan, { dish, kind, course }: DishFacts): Fix[] {
    const { temperature } = dish.served;
    // A dish that takes its course's kind has no word of its own to change, and a course that others name keeps its name.
    const isOwn = !course.hasDishes || dish.kind.origin !== course.kind.origin;
    const isNamed = readings.some(({ occurrences }) =>
        occurrences.some(({ sort, role, name }) => sort === 'course' && role === 'uses' && name === dish.kind.name),
    );
    if (!temperature || !kind || !isOwn || isNamed) {
        return [];
    }
    return [...cupboard.kinds.values()]
        .filter((other) => other !== kind && isKindOf(other, kind.name))
        .filter((other) => {
            const range = servingRange(other);
            return range && !isBelow(temperature, range.low) && !isAbove(temperature, range.high);
        })
        .slice(0, 2)
        .map((other) => ({
            title: `Call ${quoted(dish.title)} a ${quoted(other.name)}`,
            safety: 'unsafe',
            changes: [{ do: 'replace', at: dish.kind.origin, words: asName(other.name) }],
        }));
}
