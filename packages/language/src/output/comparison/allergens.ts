import type { Plan } from '../../plan/types.js';
import { listed } from '../../rules/wording.js';
import { paired, type Change, type Compared } from './change.js';
import { changedDietWords } from './diet-words.js';
import { changedDishesOfGuests } from './dishes-of-guests.js';
import { changedMarks } from './marks.js';
import { accompanimentsOf, breadsOf, dishesOf, poursOf, sayGuests } from './things.js';

/** What is in what, what is left off for whom, what guests with needs are given, and how their plates are marked. */
export function changedAllergens(before: Compared, after: Compared): Change[] {
    const carriers = paired(carriersOf(before.plan), carriersOf(after.plan), ({ key }) => key);
    return [
        ...carriers.flatMap(({ key, was, is }) => (is ? changedCarrier(key, was, is) : [])),
        ...changedDishesOfGuests(before, after),
        ...changedMarks(before, after),
        ...changedDietWords(before.plan, after.plan),
    ];
}

/** Whatever is eaten or drunk, and what the plan says is in it. */
interface Carrier {
    readonly key: string;
    readonly called: string;
    /** Absent where nothing is stated. */
    readonly contains?: readonly string[];
    readonly suits: readonly string[];
    /** For whom it is left off, in words. */
    readonly leftOffFor?: string;
}

function carriersOf(plan: Plan): Carrier[] {
    const { bread, coffee } = plan.menu ?? {};
    const names = (all: readonly { readonly name: string }[] | undefined): string[] | undefined =>
        all?.map(({ name }) => name);
    const carrier = (
        key: string,
        called: string,
        {
            contains,
            suits = [],
            leftOffFor = [],
        }: {
            readonly contains?: { readonly what: readonly { readonly name: string }[] };
            readonly suits?: readonly { readonly name: string }[];
            readonly leftOffFor?: Parameters<typeof sayGuests>[0];
        },
    ): Carrier => ({
        key,
        called,
        contains: names(contains?.what),
        suits: names(suits)!,
        leftOffFor: leftOffFor.length === 0 ? undefined : sayGuests(leftOffFor),
    });
    const recipes = new Map(plan.recipes.map((recipe) => [recipe.path, recipe]));
    return [
        ...[...dishesOf(plan), ...breadsOf(plan)].map(({ key, called, of }) => carrier(`dish ${key}`, called, of)),
        ...(bread ? [carrier('bread', 'the bread', bread)] : []),
        ...accompanimentsOf(plan).map(({ key, called, of }) => carrier(key, called, of.accompaniment)),
        ...(coffee ? [carrier('coffee', 'the coffee', coffee)] : []),
        ...poursOf(plan).map(({ key, called, of }) => carrier(`drink ${key}`, called, of.pour)),
        ...[...recipes.values()].map(({ path, contains, suits }): Carrier => ({
            key: `recipe ${path}`,
            called: `the recipe \`${path}\``,
            contains,
            suits,
        })),
    ];
}

function changedCarrier(key: string, was: Carrier | undefined, is: Carrier): Change[] {
    const change = (text: string): Change => ({ subject: 'allergens', key, text: `${is.called} ${text}` });
    if (!was) {
        // What a new recipe says is told of its dish.
        return key.startsWith('recipe') ? [] : [change(tellNew(is))];
    }
    const suits = [
        ...tellMore('now suits', was.suits, is.suits),
        ...tellMore('no longer suits', is.suits, was.suits),
    ].join(', ');
    return [tellContents(was.contains, is.contains), suits, tellLeftOff(was.leftOffFor, is.leftOffFor)]
        .filter((text) => text !== '')
        .map(change);
}

function tellNew({ contains, leftOffFor, suits }: Carrier): string {
    const contents =
        contains === undefined
            ? 'is new, and what it contains is not stated'
            : `is new and contains ${contains.length > 0 ? listed(contains) : 'nothing'}`;
    return [
        contents,
        ...(leftOffFor === undefined ? [] : [`left off for ${leftOffFor}`]),
        ...(suits.length > 0 ? [`suits ${listed(suits)}`] : []),
    ].join(', ');
}

function tellContents(was: readonly string[] | undefined, is: readonly string[] | undefined): string {
    if (was === undefined || is === undefined) {
        if (was === is) {
            return '';
        }
        return is
            ? `now says what it contains: ${listed(is) || 'nothing'}`
            : `no longer says what it contains: ${listed(was!) || 'nothing'} before`;
    }
    if (is.length === 0 && was.length > 0) {
        return `now contains nothing, ${listed(was)} before`;
    }
    return [...tellMore('now contains', was, is), ...tellMore('no longer contains', is, was)].join(', ');
}

/** What the second list has beyond the first. */
function tellMore(verb: string, first: readonly string[], second: readonly string[]): string[] {
    const more = second.filter((name) => !first.includes(name));
    return more.length === 0 ? [] : [`${verb} ${listed(more)}`];
}

function tellLeftOff(was: string | undefined, is: string | undefined): string {
    if (was === is) {
        return '';
    }
    if (is === undefined) {
        return `is no longer left off for ${was}`;
    }
    return `is now left off for ${is}${was === undefined ? '' : ` instead of for ${was}`}`;
}
