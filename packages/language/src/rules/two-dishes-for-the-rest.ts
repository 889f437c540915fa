import type { Course, Dish, Need, Plan } from '../plan/types.js';
import type { CourseServing } from '../service/types.js';
import { isDoubtful } from './doubt.js';
import type { Fix } from './fixes.js';
import { defineRule, type Report } from './rule.js';
import { asName, counted, listed, quoted } from './wording.js';

const plan = (cod: string, pie: string, titles = ['Baked cod', 'Leek and bean pie']): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24 {
        4 vegetarian
    }
}

menu {
    course main {
        lasts 35 min
        served on dinner-plate warmed to 60 °C at 60 °C
        dish "${titles[0]}" is fish ${cod} { contains fish, milk }
        ${pie.replace('dish', `dish "${titles[1]}"`)} { contains wheat, milk  suits vegetarian }
    }
}
`;

export default defineRule({
    id: 'two-dishes-for-the-rest',
    group: 'guests',
    since: '0.1.0',
    title: 'Two dishes of one course that nobody can count',
    why: 'Every plate is counted from the dish’s `for`. Where two dishes are for the rest, all plates would be of the first and none of the second.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    noFix: 'Only the host knows how many guests take which dish.',
    scope: 'event',
    examples: {
        wrong: [
            { title: 'Both for the rest', text: plan('for the rest', '<|dish for the rest|>') },
            { title: 'One without `for`', text: plan('for the rest', '<|dish|>') },
            {
                title: 'Two dishes of one name',
                text: plan('for 20', '<|dish for vegetarian|>', ['Pie of the day', 'Pie of the day']),
            },
        ],
        right: [{ text: plan('for the rest', 'dish for vegetarian') }],
    },
    check({ plan, service, report }) {
        for (const serving of service.servings) {
            const { course } = serving;
            const twins = course.dishes.filter(({ title }, index) => firstOf(course, title).index < index);
            for (const dish of twins) {
                report({
                    at: dish.head,
                    message: `${quoted(course.title)} has two dishes called ${quoted(dish.title)}: the kitchen and the run sheet cannot tell them apart.`,
                    hint: 'Give one of them another title, such as one that says for whom it is.',
                    related: [{ at: firstOf(course, dish.title).head, message: 'The first stands here.' }],
                });
            }
            if (plan.event?.guests && twins.length === 0 && !isDoubtful(plan, course.origin)) {
                judgeOpen(plan, serving, report);
            }
        }
    },
});

function firstOf(course: Course, title: string): Dish {
    return course.dishes.find((dish) => dish.title === title)!;
}

function judgeOpen(
    { menu, seating }: Plan,
    { course, portions }: CourseServing,
    report: (report: Report) => void,
): void {
    const open = portions.filter(({ dish }) => dish.who?.sort !== 'some');
    const titles = open.map(({ dish }) => dish.title);
    const others = (menu?.courses ?? []).flatMap(({ dishes }) => dishes).filter(({ title }) => !titles.includes(title));
    // A guest list that says who takes what counts the plates; a choice of a dish that is not there may mean one of these.
    const isChosen = seating.some(({ chooses }) =>
        chooses.some(({ text }) => !others.some(({ title }) => title === text)),
    );
    if (open.length < 2 || isChosen) {
        return;
    }
    const plates = open.reduce((sum, { count }) => sum + count, 0);
    const last = open.at(-1)!;
    report({
        at: last.dish.head,
        message: `${listed(titles.map(quoted))} of ${quoted(course.title)} are each for whoever is left, so nobody can say how the ${counted(plates, 'plate')} fall between them.`,
        hint: 'Say how many guests get each, such as `for 12`, and keep `for the rest` for one dish.',
        related: open
            .slice(0, -1)
            .map(({ dish }) => ({ at: dish.head, message: `${quoted(dish.title)} stands here.` })),
        fixes: open.length === 2 ? forThoseWhoNeedIt(last) : [],
    });
}

/** Where only guests with one and the same need get the dish, since the other is not for them, it can say so. */
function forThoseWhoNeedIt({ dish, groups }: CourseServing['portions'][number]): Fix[] {
    const [words, ...others] = new Set(groups.map(({ group }) => wordsFor(group.needs)));
    return words === undefined || others.length > 0
        ? []
        : [
              {
                  title: `Serve ${quoted(dish.title)} for ${words}`,
                  safety: 'unsafe',
                  preferred: true,
                  changes: [
                      dish.who
                          ? { do: 'replace', at: dish.who.origin, words }
                          : { do: 'append', at: dish.head, words: `for ${words}` },
                  ],
              },
          ];
}

/** `vegetarian`, `guests without milk`; `undefined` for guests without a need, and for several needs at once. */
function wordsFor([need, ...others]: readonly Need[]): string | undefined {
    if (!need || others.length > 0) {
        return undefined;
    }
    switch (need.sort) {
        case 'children':
            return 'children';
        case 'diet':
            return asName(need.diet.name);
        case 'without':
            return `guests without ${listed(need.what.map(({ name }) => asName(name)))}`;
    }
}
