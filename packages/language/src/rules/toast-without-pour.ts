import { findCourse } from '../plan/names.js';
import type { Menu, Speech } from '../plan/types.js';
import type { PourFacts } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { asName, quoted } from './wording.js';

export default defineRule({
    id: 'toast-without-pour',
    group: 'service',
    since: '0.1.0',
    title: 'A toast with nothing poured for it',
    why: 'When the host lifts a glass every guest must have one to lift, so the toast’s drink is poured to the last guest before anyone stands.',
    source: ['table-service 11.14', 'table-service 11.16', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'No drink named',
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour "Country red" 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
    <|toast "To the harvest" after main|>
}`,
            },
            {
                title: 'A drink that is poured later',
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course appetizer "Smoked beet and curd" {
        served on salad-plate at 8 °C
        lasts 20 min
        contains milk, mustard
    }
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour "Country red" 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
    toast "To the harvest" after appetizer with <|"Country red"|>
}`,
            },
        ],
        right: [
            {
                text: `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40 }
menu {
    course main "Braised lamb shoulder" {
        served on dinner-plate warmed to 62 °C at 63 °C
        lasts 30 min
        contains nothing
        pour "Country red" 5 fl oz into red-wine-glass at 17 °C is red-wine {
            contains sulphites
            instead "Elderberry press" 5 fl oz into red-wine-glass { contains nothing }
        }
    }
    toast "To the harvest" after main with "Country red"
}`,
            },
        ],
    },
    check({ plan, service, report }) {
        const { menu } = plan;
        for (const toast of menu?.speeches ?? []) {
            const last = lastCourseBefore(menu!, toast);
            if (toast.sort !== 'toast' || last === undefined || isDoubtful(plan, toast.origin)) {
                continue;
            }
            const name = toast.title ? quoted(toast.title) : 'The toast';
            // The latest drink before the toast is the one in every glass.
            const poured = service.pours.filter(({ course, dish }) => course <= last && !dish).toReversed();
            const offers = poured.map(({ pour }): Fix => {
                const words = `"${pour.title}"`;
                return {
                    title: `Drink ${name === 'The toast' ? 'the toast' : name} with ${quoted(pour.title)}`,
                    safety: 'unsafe',
                    changes: [
                        toast.pour
                            ? { do: 'replace', at: toast.pour.origin, words }
                            : { do: 'append', at: toast.origin, words: `with ${words}` },
                    ],
                };
            });
            if (!toast.pour) {
                report({
                    at: toast.origin,
                    message: `${name} names no drink, so nothing is sure to be in the glasses when guests stand.`,
                    hint:
                        offers.length > 0
                            ? `Say which drink it is, as in \`with "${poured[0]!.pour.title}"\`.`
                            : 'Pour a drink in the course before it, and name it here.',
                    fixes: firstPreferred(offers.slice(0, 3)),
                });
                continue;
            }
            const own = service.pours.find(({ pour }) => pour.title === toast.pour!.text);
            // A drink that nobody pours is an unknown name.
            if (own && own.course > last) {
                const course = menu!.courses[own.course]!;
                report({
                    at: toast.pour.origin,
                    message: `${name} is drunk with ${quoted(own.pour.title)}, which is not poured until ${quoted(course.title)}.`,
                    hint: 'A toast comes when its drink is in every glass: move it, or name a drink poured before it.',
                    related: [{ at: own.pour.titleOrigin, message: 'It is poured here.' }],
                    fixes: firstPreferred([...moved(menu!, toast, own), ...offers.slice(0, 2)]),
                });
            }
        }
    },
});

/** The one that goes without asking: the first, which keeps most of what is written. */
function firstPreferred([first, ...others]: readonly Fix[]): Fix[] {
    return first ? [{ ...first, preferred: true }, ...others] : [];
}

/** Index of the last course served before the toast, -1 for none; `undefined` where it names a course that is not there. */
function lastCourseBefore(menu: Menu, { when }: Speech): number | undefined {
    if (!when) {
        return menu.courses.length - 1;
    }
    const course = findCourse(menu, when.course.name)?.index;
    return course === undefined || when.when === 'after' ? course : course - 1;
}

function moved(menu: Menu, { when }: Speech, { course: index }: PourFacts): Fix[] {
    const course = menu.courses[index]!;
    // Of two courses of a kind the name means the last, unless the title says which.
    const name = findCourse(menu, course.kind.name) === course ? asName(course.kind.name) : `"${course.title}"`;
    return when?.when === 'after'
        ? [
              {
                  title: `Move it to after ${quoted(course.title)}`,
                  safety: 'unsafe',
                  changes: [{ do: 'replace', at: when.course.origin, words: name }],
              },
          ]
        : [];
}
