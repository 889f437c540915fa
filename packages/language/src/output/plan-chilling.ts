/** When each drink has to be put where it gets its temperature, for the compiled plan. */
import type { Chilling } from '../service/chilling/types.js';
import { momentJson } from './plan-clock.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

export function chillingJson(telling: Telling): Json {
    return {
        model: 'One time constant a bottle in each bath, as published for 750 ml standing upright; larger bottles take longer, a bath that is never stirred twice as long.',
        source: 'temperature 11 (DS4), 12',
        drinks: telling.service.chilling.map((each) => drinkJson(telling, each)),
        caution:
            'A range, never a single time: feel or measure a bottle before it is poured. One forgotten in the freezer bursts; broken glass near ice means throwing the ice away.',
    };
}

function drinkJson({ plan, service, places }: Telling, chilling: Chilling): Json {
    const { takes, startBy, startAtUsualPace, pour: index, title } = chilling;
    const own = index < 0 ? plan.menu?.water?.pour : service.pours[index]?.pour;
    const pour = own && [own, ...own.instead].find((each) => each.title === title);
    return {
        title,
        ...at(places, pour?.titleOrigin),
        way: chilling.way,
        because: {
            stated: 'stated',
            custom: 'custom `chilled-in`',
            'warmer-than-store': 'wanted warmer than it is stored',
        }[chilling.wayHow],
        fromCelsius: round(chilling.from),
        toCelsius: round(chilling.to),
        bathCelsius: round(chilling.bath),
        takesMinutes: takes && {
            soonest: Math.round(takes.soonest),
            usual: Math.round(takes.usual),
            latest: Math.round(takes.latest),
        },
        neededBy: { ...momentJson(plan, chilling.neededBy), because: chilling.neededHow },
        startBy: startBy === undefined ? undefined : momentJson(plan, Math.floor(startBy)),
        startAtUsualPace: startAtUsualPace === undefined ? undefined : momentJson(plan, Math.floor(startAtUsualPace)),
        bottles: chilling.bottles?.map(({ size, count }) => ({ millilitres: round(size), count })),
        iceMeltedGrams: chilling.iceMelted === undefined ? undefined : Math.round(chilling.iceMelted),
    };
}

function round(value: number): number {
    return Math.round(value * 10) / 10;
}
