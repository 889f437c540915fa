import { toldWords } from '../../service/allergens/duty.js';
import { listed } from '../../rules/wording.js';
import type { AllergenRow } from '../../service/allergens/types.js';
import type { Need } from '../../plan/types.js';
import { capital, courseTitle, type SheetSource } from './evening.js';
import type { Block, Sheet } from './sheet.js';

/** The menu for guests, with the allergens that the local code wants told, in its words, and the diets that dishes state. */
export function menuCardSheet(source: SheetSource): Sheet | undefined {
    const { plan, service } = source;
    const { menu, event, house, code } = plan;
    if (!menu) {
        return undefined;
    }
    const { rows } = service.allergens;
    const courses = [...new Set(rows.map(({ course }) => course))].toSorted((a, b) => a - b);
    const hasUnknown = rows.some(({ isStated }) => !isStated);
    return {
        name: 'menu-card',
        title: 'Menu',
        subtitle: [house.origin && house.title, `allergens as told in: ${code.called ?? code.name}`]
            .filter((word) => word !== undefined)
            .join(' · '),
        onePage: true,
        blocks: [
            ...courses.flatMap((course): Block[] => [
                { sort: 'heading', text: courseTitle(plan, course) },
                ...rows
                    .filter((row) => row.course === course)
                    .map((row): Block => ({ sort: 'text', text: line(source, row) })),
            ]),
            ...(event?.notice ? [{ sort: 'caution' as const, text: event.notice.text }] : []),
            {
                sort: 'caution',
                text: `${hasUnknown ? '“Ask us” means that nothing is stated: it may hold any allergen. ' : ''}Tell us what you must not have: we check the label of everything, and all of it is made in one kitchen.`,
            },
        ],
    };
}

function line(source: SheetSource, row: AllergenRow): string {
    const { plan } = source;
    const isCourseItself = row.title.toLowerCase() === courseTitle(plan, row.course).toLowerCase();
    const lead = isCourseItself ? '' : `${capital(row.title)}${row.sort === 'drink' ? ' (drink)' : ''}. `;
    const diets = dietsOf(source, row);
    return [
        `${lead}${contents(row)}`,
        ...(diets.length > 0 ? [`Suits: ${listed(diets)}.`] : []),
        ...(row.leftOffFor.length > 0
            ? [`Left off for guests ${listed(row.leftOffFor.map((need) => needCalled(source, need)))}.`]
            : []),
    ].join(' ');
}

function contents(row: AllergenRow): string {
    const told = toldWords(row.cells.flatMap(({ by }) => by));
    if (!row.isStated) {
        return told.length > 0 ? `Contains ${listed(told)}; for the rest ask us.` : 'Ask us what is in it.';
    }
    const all = [...told, ...row.beyond.map(({ called }) => called)];
    return all.length > 0 ? `Contains ${all.join(', ')}.` : 'Contains none of the allergens that must be told.';
}

/** Diets that the plan states of it: `suits vegetarian`, `for vegetarian`. */
function dietsOf({ plan, service }: SheetSource, row: AllergenRow): string[] {
    const dish =
        row.sort === 'dish'
            ? plan.menu?.courses[row.course]?.dishes.find(({ title }) => title === row.title)
            : row.sort === 'bread'
              ? service.bread?.serving.portions.find(({ dish: each }) => each.title === row.title)?.dish
              : undefined;
    const asked =
        dish?.who?.sort === 'some'
            ? dish.who.needs.flatMap((need) => (need.sort === 'diet' ? [need.diet.name] : []))
            : [];
    const names = [...new Set([...(dish?.suits ?? []).map(({ name }) => name), ...asked])];
    return names.map((name) => {
        const diet = plan.cupboard.diets.get(name);
        return diet?.mark ? `${diet.called ?? name} (${diet.mark})` : (diet?.called ?? name);
    });
}

function needCalled({ plan }: SheetSource, need: Need): string {
    switch (need.sort) {
        case 'children':
            return 'who are children';
        case 'diet':
            return `who are ${plan.cupboard.diets.get(need.diet.name)?.called ?? need.diet.name}`;
        case 'without':
            return `without ${need.what.map(({ name }) => name).join(' and ')}`;
    }
}
