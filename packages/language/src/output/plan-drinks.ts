/** Drinks, water and what a guest has of alcohol, for the compiled plan. */
import { standardDrink } from '../service/drinks/alcohol.js';
import { CASE_MILLILITRES } from '../service/drinks/bottles.js';
import { waterGlass } from '../service/drinks/glasses.js';
import type { AlcoholEach, GlassUse, PourNeed, PourUse, WaterNeed } from '../service/drinks/types.js';
import { listed, quoted } from '../rules/wording.js';
import { drinksKeptFromJson } from './plan-kept-from.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

export function drinksJson(telling: Telling): Json {
    const { service, plan } = telling;
    return {
        drinks: service.drinks.map((need) => drinkJson(telling, need)),
        water: service.water.map((need) => waterJson(telling, need)),
        drinksRule: [
            'Counted for the guests expected, not for the covers set beyond them.',
            plan.customs['pours-of-a-bottle'].value === 'whole'
                ? 'A bottle gives whole pours: less than one is left in it.'
                : 'The pours of a bottle are counted to the nearest: the last one may be short.',
            'Of the sizes stated, the mix with the least left over, then with the fewest bottles. A case is nine litres.',
        ].join(' '),
        drinksKeptFrom: drinksKeptFromJson(telling),
        alcohol: alcoholJson(telling),
        drinksCaution:
            'What is planned is not an amount to reach. The label gives the strength; the local law and licensed staff decide who is served.',
    };
}

function drinkJson(telling: Telling, need: PourNeed): Json {
    const { pour } = need.facts;
    return {
        title: need.title,
        ...at(telling.places, pour.titleOrigin),
        drinkers: need.drinkers,
        poursEach: round(need.poursEach),
        uses: need.uses.map((use) => useJson(telling, use)),
        millilitres: round(need.millilitres),
        tastedMillilitres: need.tasted > 0 ? round(need.tasted) : undefined,
        bottles: need.bottles.map(({ size, count }) => ({
            millilitres: round(size),
            count,
            cases: need.cases
                .filter((cases) => cases.size === size)
                .map(({ each, full, loose, toOrder }) => ({ of: each, full, loose, toOrder }))[0],
        })),
        cases: round(need.bottles.reduce((sum, { size, count }) => sum + size * count, 0) / CASE_MILLILITRES),
        leftOverMillilitres: round(need.leftOver),
        ethanolGramsEach: need.ethanolEach === undefined ? undefined : round(need.ethanolEach),
        standardDrinksEach: need.drinksEach === undefined ? undefined : round(need.drinksEach),
        glass: glassJson(need.glass),
        notes: notes(need),
    };
}

function useJson({ plan }: Telling, use: PourUse): Json {
    const { facts, insteadOf, rounds } = use;
    return {
        course: plan.menu?.courses[facts.course]?.title,
        dish: facts.dish?.title,
        insteadOf: insteadOf?.pour.title,
        drinkers: use.drinkers,
        mayNotHaveIt: insteadOf && use.keptFrom,
        measureMillilitres: round(use.measure),
        fullPours: rounds.full,
        toppedUp: rounds.toppedUp,
        toasts: rounds.toasts.map(({ title }) => title),
        pours: round(rounds.pours),
        millilitres: round(use.millilitres),
    };
}

/** What a buyer should know beside the figures. */
function notes({ uses, isSizeStated, sizes, poursEach, millilitres, drinksEach }: PourNeed): string[] {
    const replaces = [...new Set(uses.flatMap(({ insteadOf }) => (insteadOf ? [quoted(insteadOf.pour.title)] : [])))];
    const isPoured = uses.some(({ insteadOf }) => !insteadOf);
    return [
        ...(millilitres > 0 && !isSizeStated
            ? [`No bottle size is stated: counted in bottles of ${sizes[0]} ml.`]
            : []),
        ...(isPoured && millilitres > 0 && poursEach === 1
            ? ['One pour a guest and no refill: none is bought for guests who take more, so the drink can run out.']
            : []),
        ...(replaces.length > 0
            ? [
                  `In place of ${listed(replaces)}: for guests who may not have it and the house’s share of the others; the pour itself is not counted down.`,
              ]
            : []),
        ...(drinksEach === undefined && uses.some(({ facts }) => facts.strength === undefined)
            ? ['No strength is known, so what it comes to in standard drinks is not.']
            : []),
    ];
}

function waterJson(telling: Telling, need: WaterNeed): Json {
    const { plan, places, service } = telling;
    const { choice, rounds, size, count, from } = need;
    return {
        choice,
        ...at(places, plan.menu?.water?.origin),
        drinkers: need.drinkers,
        measureMillilitres: round(need.measure),
        measureBecause: need.isMeasureStated ? undefined : 'how full the house fills the glass',
        fullPours: rounds.full,
        toppedUp: rounds.toppedUp,
        pours: round(rounds.pours),
        millilitres: round(need.millilitres),
        from,
        holdsMillilitres: round(size),
        count,
        leftOverMillilitres: round(need.leftOver),
        glass: glassJson(waterGlass(service.variations)),
    };
}

function glassJson(glass: GlassUse | undefined): Json | undefined {
    return (
        glass && {
            piece: glass.piece,
            count: glass.count,
            comes: glass.comes === 'laid' ? 'laid' : 'with its course',
            leavesAt: glass.leaves.title,
        }
    );
}

function alcoholJson({ plan, service }: Telling): Json {
    const each = (alcohol: AlcoholEach): Json => ({
        guests: alcohol.variation.label,
        ethanolGrams: round(alcohol.grams),
        standardDrinks: alcohol.drinks === undefined ? undefined : round(alcohol.drinks),
        of: alcohol.by.map(({ use, grams, drinks }) => ({
            title: use.facts.pour.title,
            ethanolGrams: round(grams),
            standardDrinks: drinks === undefined ? undefined : round(drinks),
        })),
    });
    return {
        standardDrinkGrams: standardDrink(plan),
        code: plan.code.name,
        cautionAbove: plan.customs['alcohol-limit'].value,
        rule: 'What a guest has who takes every pour of their dishes, at the strength stated or usual for its kind.',
        each: service.alcohol.map(each),
    };
}

/** Two decimals: what is estimated is not told to the last digit of a binary fraction. */
const round = (value: number): number => Math.round(value * 100) / 100;
