/** The small values of the compiled plan: figures with units in their keys, names, places. */
import type { Origin, Text } from '../plan/origin.js';
import type { Dimension, Quantity } from '../plan/quantity.js';
import type { CalendarDate, Need, Who } from '../plan/types.js';
import { sayNeed } from '../service/guests.js';
import type { Places } from './places.js';

/** A JSON object whose absent members are left out. */
export type Json = Readonly<Record<string, unknown>>;

/** Key of the computing value in the compiled plan, by what it measures. */
const UNIT_KEY: Record<Dimension, string> = {
    temperature: 'celsius',
    length: 'millimetres',
    area: 'squareMetres',
    volume: 'millilitres',
    mass: 'grams',
    time: 'minutes',
    share: 'share',
    count: 'count',
};

/** `{ "written": "4 fl oz", "millilitres": 118.294 }` */
export function quantityJson(quantity: Quantity | undefined): Json | undefined {
    return quantity && { written: quantity.written, [UNIT_KEY[quantity.dimension]]: quantity.value };
}

export function figureJson(dimension: Dimension, value: number): Json {
    return { [UNIT_KEY[dimension]]: value };
}

export function dateJson(date: CalendarDate | undefined): string | undefined {
    return date && (date.iso ?? date.written);
}

export function needJson(need: Need): Json {
    switch (need.sort) {
        case 'children':
            return { children: true };
        case 'diet':
            return { diet: need.diet.name };
        case 'without':
            return { without: need.what.map((what) => what.name) };
    }
}

export function whoJson(who: Who | undefined): Json | undefined {
    if (!who) {
        return undefined;
    }
    if (who.sort !== 'some') {
        return { for: who.sort === 'rest' ? 'the rest' : 'everyone' };
    }
    return {
        for: who.needs.map(sayNeed).join(', ') || 'guests',
        count: who.count?.count,
        share: who.share?.value,
        needs: who.needs.map(needJson),
    };
}

export function textJson(text: Text | undefined): string | undefined {
    return text?.text;
}

/** Adds where a thing was written. */
export function at(places: Places, origin: Origin | undefined): { readonly at?: string } {
    return origin ? { at: places.at(origin) } : {};
}
