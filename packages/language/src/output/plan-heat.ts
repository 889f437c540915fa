/** What hot and cold things are like before their guests, for the compiled plan. */
import type { Band } from '../service/heat/band.js';
import type { Answer } from '../service/heat/inverse.js';
import type { Answers, AtGuest, DishHeat, DrinkHeat, Heat, PieceHeat } from '../service/heat/types.js';
import { HEAT_CAUTION, HEAT_MODELS, REFUSED } from './heat-words.js';
import type { Telling } from './plan-menu.js';
import { at, type Json } from './plan-values.js';

const IGNORES =
    'Layers and skins in a liquid, draughts, solids and garnish, crusts and sauces, foam, dew on cold glass, heat lamps, altitude, guests who wait.';

export function heatJson(telling: Telling): Json {
    const { heat } = telling.service;
    return {
        room: roomJson(telling, heat),
        models: HEAT_MODELS,
        source: 'temperature 12, 13',
        dishes: heat.dishes.map((dish) => dishJson(telling, dish)),
        drinks: heat.drinks.map((drink) => drinkJson(telling, drink)),
        pieces: heat.pieces.map((piece) => pieceJson(telling, piece)),
        ignores: IGNORES,
        caution: HEAT_CAUTION,
    };
}

function roomJson({ plan, places }: Telling, { air }: Heat): Json {
    const stated = plan.room?.temperature;
    return {
        celsius: round(air.celsius),
        humidity: air.humidity,
        because: stated ? 'stated' : 'custom `room-temperature`',
        ...at(places, stated?.origin),
    };
}

function dishJson(telling: Telling, heat: DishHeat): Json {
    const { plan, places } = telling;
    const course = plan.menu!.courses[heat.course]!;
    const dish = course.dishes.find(({ index }) => index === heat.dish)!;
    const start = dish.leavesPass ?? dish.heldAt ?? dish.measured;
    return {
        course: course.title,
        dish: dish.title,
        ...at(places, dish.head),
        side: heat.side,
        model: heat.model,
        wantedCelsius: rounded(heat.wanted),
        withinMinutes: rounded(heat.within),
        start: heat.start && {
            celsius: round(heat.start.celsius),
            because: heat.start.how,
            ...at(places, start?.origin),
        },
        vessel: heat.vessel && {
            celsius: round(heat.vessel.celsius),
            because: {
                stated: 'stated',
                custom: 'the house’s custom',
                room: 'as warm as the room',
                kept: 'as warm as what it holds, where both are kept',
            }[heat.vessel.how],
            cooledTo: rounded(heat.vessel.cooledTo),
        },
        liquid: heat.liquid && {
            grams: round(heat.liquid.grams),
            surfaceMillimetres: round(heat.liquid.surfaceDiameter),
        },
        carriedCovered: heat.covered,
        pouredAtTable: heat.pouredAtTable,
        poured: bandJson(heat.poured),
        atGuests: bandJson(heat.published),
        firstGuest: guestJson(heat.first),
        lastGuest: guestJson(heat.last),
        byMinute: heat.byMinute.length > 0 ? heat.byMinute.map(round) : undefined,
        staysMinutes: rounded(heat.staysFor),
        needs: heat.answers && answersJson(heat.answers),
        assumed: heat.assumed,
    };
}

function guestJson(guest: AtGuest | undefined): Json | undefined {
    return (
        guest && {
            table: guest.journey.table,
            minutes: round(guest.minutes),
            outOfWarmer: guest.journey.outOfWarmer > 0 ? round(guest.journey.outOfWarmer) : undefined,
            onThePass: round(guest.journey.standing),
            carried: round(guest.journey.carried),
            beforeSeating: guest.journey.waiting > 0 ? round(guest.journey.waiting) : undefined,
            ...bandJson(guest.temperature),
        }
    );
}

function answersJson({ vessel, pass, together, covered, hottest, range }: Answers): Json {
    return {
        vessel: answerJson(vessel),
        pass: answerJson(pass),
        together: together && { vesselCelsius: round(together.vessel), pass: answerJson(together.pass) },
        lastGuestIfCovered: rounded(covered),
        passAtMost: rounded(hottest),
        startBetween: range && { from: range.from, low: round(range.low), high: round(range.high) },
    };
}

function answerJson(answer: Answer | undefined): Json | undefined {
    if (!answer) {
        return undefined;
    }
    return 'celsius' in answer
        ? { celsius: round(answer.celsius) }
        : {
              refused: answer.refused,
              because: REFUSED[answer.refused],
              wouldBeCelsius: round(answer.needed),
              limitCelsius: round(answer.limit),
          };
}

function drinkJson({ service, plan, places }: Telling, heat: DrinkHeat): Json {
    const pour = service.pours[heat.pour]?.pour;
    return {
        title: heat.title,
        ...at(places, pour?.titleOrigin ?? plan.menu?.coffee?.head),
        wantedCelsius: round(heat.wanted),
        from: { celsius: round(heat.from.celsius), what: heat.from.how },
        poured: bandJson(heat.poured),
        needs: answerJson(heat.needed),
        coldestPoured: heat.coldest && { bathCelsius: round(heat.coldest.bath), celsius: round(heat.coldest.celsius) },
        staysMinutes: rounded(heat.staysFor),
        assumed: heat.assumed,
    };
}

function pieceJson({ plan }: Telling, { course, dish, piece, from, first, last, touch }: PieceHeat): Json {
    const { title, dishes } = plan.menu!.courses[course]!;
    return {
        course: title,
        dish: dishes.find(({ index }) => index === dish)!.title,
        piece,
        fromCelsius: round(from),
        firstGuest: bandJson(first),
        lastGuest: bandJson(last),
        skinAtFirstTouchCelsius: rounded(touch),
    };
}

function bandJson(band: Band | undefined): Json | undefined {
    return (
        band && { celsius: rounded(band.celsius), low: round(band.low), high: round(band.high), because: band.because }
    );
}

/** A tenth: more digits would promise what no model keeps. */
function round(value: number): number {
    return Math.round(value * 10) / 10;
}

function rounded(value: number | undefined): number | undefined {
    return value === undefined ? undefined : round(value);
}
