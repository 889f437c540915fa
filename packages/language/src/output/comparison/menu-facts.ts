import type { Bread, Coffee, Course, Menu, Plan, Speech, Wash } from '../../plan/types.js';
import { quoted } from '../../rules/wording.js';
import type { Change, Compared } from './change.js';
import { saidTime } from './day.js';
import { ACCOMPANIMENT, DISH, saidLay } from './dish-facts.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { isSaid, said } from './said.js';
import { accompanimentsOf, breadsOf, dishesOf, type Beside } from './things.js';

/** How courses and dishes are made and served, what comes beside them, and the speeches between them. */
export function changedMenuFacts({ plan: before }: Compared, { plan: after }: Compared): Change[] {
    // That a course or a dish is new or gone is told with the portions to cook.
    const portionsTell = (): undefined => undefined;
    return [
        ...changedThings('menu', COURSE, coursesOf(before.menu), coursesOf(after.menu), portionsTell, ''),
        ...changedThings('menu', DISH, dishesOf(before), dishesOf(after), portionsTell, ''),
        ...changedThings('menu', DISH, breadsOf(before), breadsOf(after)),
        ...changedBeside(before, after),
        ...changedThings('menu', BREAD, one('bread', before.menu?.bread), one('bread', after.menu?.bread)),
        ...changedThings('menu', COFFEE, one('coffee', before.menu?.coffee), one('coffee', after.menu?.coffee)),
        ...changedThings('menu', SPEECH, speechesOf(before.menu), speechesOf(after.menu)),
        ...changedThings('menu', WASH, washesOf(before.menu), washesOf(after.menu)),
        ...changedThings('menu', MENU, wholeMenu(before.menu), wholeMenu(after.menu), portionsTell, ''),
    ];
}

/** What comes beside a dish that is new or gone comes and goes with it. */
function changedBeside(before: Plan, after: Plan): Change[] {
    const wholes = (plan: Plan): Set<string> =>
        new Set([
            ...[...dishesOf(plan), ...breadsOf(plan)].map(({ called }) => called),
            ...(plan.menu?.bread ? ['the bread'] : []),
            ...(plan.menu?.coffee ? ['the coffee'] : []),
        ]);
    const stays = (of: Plan, other: Plan): Thing<Beside>[] => {
        const there = wholes(other);
        return accompanimentsOf(of).filter((each) => there.has(each.of.whole));
    };
    return changedThings('menu', BESIDE, stays(before, after), stays(after, before));
}

const BESIDE: Facts<Beside> = Object.fromEntries(
    Object.entries(ACCOMPANIMENT).map(([name, read]) => [name, ({ accompaniment }) => read(accompaniment)]),
);

const one = <T>(what: string, of: T | undefined): Thing<T>[] =>
    of === undefined ? [] : [{ key: what, called: `the ${what}`, of }];

const coursesOf = (menu: Menu | undefined): Thing<Course>[] =>
    (menu?.courses ?? []).map((course) => ({ key: course.title, called: quoted(course.title), of: course }));

const COURSE: Facts<Course> = {
    'starts at': ({ startsAt }) => saidTime(startsAt?.time),
    lasts: ({ lasts }) => said(lasts?.time, ['give or take', lasts?.spread]),
    'set before guests sit': ({ preset }) => preset && (said(['by', preset.before]) ?? isSaid(true)),
    'a course of the kind': ({ kind }) => said(kind.name),
    'laid by its own clause:': ({ lay }) => saidLay(lay),
};

const BREAD: Facts<Bread> = {
    from: ({ from }) => said(from?.name),
    until: ({ until }) => said(until?.name),
    on: ({ plate }) => said(plate?.name),
    with: ({ piece }) => said(piece?.name),
    'made by the recipe': ({ recipe }) => said(recipe && quoted(recipe.text)),
};

const COFFEE: Facts<Coffee> = {
    after: ({ after }) => said(after.name),
    'on request': ({ onRequest }) => isSaid(onRequest),
    in: ({ cup }) => said(cup?.name),
    with: ({ piece }) => said(piece?.name),
    at: ({ temperature }) => said(temperature),
};

const speechesOf = (menu: Menu | undefined): Thing<Speech>[] =>
    (menu?.speeches ?? []).map((speech) => {
        const called = `the ${speech.sort}${speech.title === undefined ? '' : ` ${quoted(speech.title)}`}`;
        return { key: called, called, of: speech };
    });

const SPEECH: Facts<Speech> = {
    held: ({ when }) => said(when?.when, when?.course.name),
    at: ({ at }) => saidTime(at),
    lasts: ({ lasts }) => said(lasts),
    'drunk with': ({ pour }) => said(pour && quoted(pour.text)),
};

const washesOf = (menu: Menu | undefined): Thing<Wash>[] =>
    (menu?.washes ?? []).map((wash) => {
        const called = `washing ${wash.piece.name} after ${wash.after.name} for ${wash.for.name}`;
        return { key: called, called, of: wash };
    });

/** A wash has nothing to it but what it is called by. */
const WASH: Facts<Wash> = {};

const wholeMenu = (menu: Menu | undefined): Thing<Menu>[] =>
    menu ? [{ key: 'menu', called: 'the whole menu', of: menu }] : [];

const MENU: Facts<Menu> = { 'laid by its own clause:': ({ lay }) => saidLay(lay) };
