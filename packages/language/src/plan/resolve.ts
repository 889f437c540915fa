import type { Files } from './files.js';
import type { Cupboard, LocalCode } from './cupboard.js';
import { customSpecs } from './customs.js';
import { load, type ReadText } from './load.js';
import { mergeCupboards } from './merge.js';
import type { Text } from './origin.js';
import type { RecipeFacts } from './recipe.js';
import type { Custom, Customs, Dish, House, Menu, Plan, Reading, Waiver } from './types.js';

/** How files become data: given by the core, so that resolving knows neither the grammar nor a recipe's format. */
export interface Readers {
    readonly text: ReadText;
    readonly recipe: (link: Text, files: Files) => RecipeFacts;
}

/** The code in force where neither house nor event names one. */
export const DEFAULT_CODE = 'us-model';

/**
 * Brings a file, the files it uses and the standard cupboard together. Never throws for any text.
 * @param standard the standard cupboard with nothing laid over it
 */
export function resolvePlan(
    file: string,
    files: Files,
    standard: Cupboard,
    readers: Readers,
): { plan: Plan; texts: ReadonlyMap<string, string> } {
    const { readings, texts, useProblems } = load(file, files, readers.text);
    const [own, ...used] = readings;
    const { cupboard, twice: declaredTwice } = mergeCupboards([used, own ? [own] : []], standard);
    const twice = [...declaredTwice];
    const levels = [own ? [own] : [], used];

    const nearest = <T extends { readonly origin?: { readonly file: string } }>(
        what: string,
        of: (reading: Reading) => readonly T[],
    ): T | undefined => {
        const found = levels.map((level) => level.flatMap(of));
        for (const level of found) {
            for (const again of level.slice(1)) {
                twice.push({
                    what,
                    first: level[0]!.origin as Plan['twice'][number]['first'],
                    again: again.origin as Plan['twice'][number]['first'],
                });
            }
        }
        return found.find((level) => level.length > 0)?.[0];
    };
    // One event and one menu in reach, at whatever level; of the rest the nearer wins.
    const single = <T extends { readonly origin: Plan['twice'][number]['first'] }>(
        what: string,
        of: (reading: Reading) => readonly T[],
    ): T | undefined => {
        const [first, ...again] = readings.flatMap(of);
        twice.push(...again.map((each) => ({ what, first: first!.origin, again: each.origin })));
        return first;
    };

    const event = single('event', (reading) => reading.events);
    const menu = single('menu', (reading) => reading.menus);
    const house = nearest('house', (reading) => reading.houses) ?? NO_HOUSE;
    const codeName = event?.code?.name ?? house.code?.name ?? DEFAULT_CODE;
    const plan: Plan = {
        file,
        readings,
        event,
        menu,
        house,
        room: nearest('room', (reading) => reading.rooms),
        team: nearest('team', (reading) => reading.teams),
        tasks: readings.flatMap((reading) => reading.tasks),
        seating: readings.flatMap((reading) => reading.guests),
        cupboard,
        code: cupboard.codes.get(codeName) ?? cupboard.codes.get(DEFAULT_CODE) ?? NO_CODE,
        customs: customsInForce(house.customs),
        waivers: [...(event?.waivers ?? []), ...(menu ? menuWaivers(menu) : [])],
        recipes: menu ? recipeLinks(menu).map((link) => readers.recipe(link, files)) : [],
        useProblems,
        twice,
    };
    return { plan, texts };
}

const NO_HOUSE: House = { title: '', stock: [], spares: [], customs: [], washing: [], settings: [] };
const NO_PLACE = { file: 'cupboard/codes.cover', start: 0, end: 0 };
const NO_CODE: LocalCode = {
    name: DEFAULT_CODE,
    zones: [],
    figures: {},
    fresh: false,
    sources: [],
    origin: NO_PLACE,
    nameOrigin: NO_PLACE,
};

/** The house's word where it is one the custom accepts, else the default. */
export function customsInForce(declared: readonly Custom[]): Customs {
    const known = inForceOf.get(declared) ?? workOutCustoms(declared);
    inForceOf.set(declared, known);
    return known;
}

/** A house that stays as it is keeps its customs. */
const inForceOf = new WeakMap<readonly Custom[], Customs>();

function workOutCustoms(declared: readonly Custom[]): Customs {
    const inForce = customSpecs.map((spec) => {
        const custom = declared.find((each) => each.name.name === spec.name);
        const choice = spec.choices?.find((each) => each.value === custom?.choice?.name)?.value;
        const figure =
            spec.figure && custom?.figure?.dimension === spec.figure.dimension ? custom.figure.value : undefined;
        const value = choice ?? figure;
        return [spec.name, value === undefined ? { value: spec.default } : { value, origin: custom!.origin }] as const;
    });
    return Object.fromEntries(inForce) as unknown as Customs;
}

export function dishesOf(menu: Menu): Dish[] {
    return [...menu.courses.flatMap((course) => course.dishes), ...(menu.bread?.dishes ?? [])];
}

function menuWaivers(menu: Menu): Waiver[] {
    const dishes = dishesOf(menu);
    const parts = [
        menu,
        ...menu.courses,
        ...dishes,
        ...(menu.bread ? [menu.bread] : []),
        ...(menu.coffee ? [menu.coffee] : []),
    ];
    const pours = [...menu.courses, ...dishes].flatMap((each) => each.pours);
    const beside = [...dishes, ...(menu.bread ? [menu.bread] : []), ...(menu.coffee ? [menu.coffee] : [])].flatMap(
        (each) => each.accompaniments,
    );
    const all = [...parts, ...pours, ...pours.flatMap((pour) => pour.instead), ...beside].flatMap(
        (each) => each.waivers,
    );
    // A sauce of the course stands in each of its dishes: its waiver is still one.
    return [...new Map(all.map((waiver) => [`${waiver.origin.file}:${waiver.origin.start}`, waiver])).values()];
}

function recipeLinks(menu: Menu): Text[] {
    const links = [...dishesOf(menu).map((dish) => dish.recipe), menu.bread?.recipe].filter(
        (link) => link !== undefined,
    );
    return [...new Map(links.map((link) => [`${link.origin.file}:${link.origin.start}`, link])).values()];
}
