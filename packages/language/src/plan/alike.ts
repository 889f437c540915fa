import { isOrigin, type Origin } from './origin.js';

/** What things are made from that are looked up by themselves: whoever holds one has to hold the very same. */
export const ITSELF = {};

/** A thing that is looked up by itself, with these fields. */
export function itself<Thing extends object>(fields: Thing): Thing {
    return Object.assign(Object.create(ITSELF) as object, fields);
}

/** Whether two of these say the same. */
export function saysAsMuch(one: object, other: object): boolean {
    return isAlike({ ...one }, { ...other });
}

/**
 * Whether two values say the same. Of plain data: what is worked out when it is asked for would be worked out.
 * A thing that is looked up by itself is like itself alone.
 * @param isSamePlace by itself a place is like itself alone, for only the places of a reading that still stands are moved with
 *   its text
 */
export function isAlike(
    one: unknown,
    other: unknown,
    isSamePlace: (one: Origin, other: Origin) => boolean = () => false,
): boolean {
    if (Object.is(one, other)) {
        return true;
    }
    if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
        return false;
    }
    if (Object.getPrototypeOf(one) === ITSELF) {
        return false;
    }
    if (isOrigin(one)) {
        return isOrigin(other) && isSamePlace(one, other);
    }
    // At every key thousands are compared: by their places where they have places, and no list of names is made of the others.
    if (Array.isArray(one)) {
        return (
            Array.isArray(other) &&
            one.length === other.length &&
            one.every((each, at) => isAlike(each, other[at], isSamePlace))
        );
    }
    let names = 0;
    for (const name in one) {
        if (!isAlike((one as Fields)[name], (other as Fields)[name], isSamePlace)) {
            return false;
        }
        names++;
    }
    for (const _ in other) {
        names--;
    }
    return names === 0 && !Array.isArray(other);
}

type Fields = Readonly<Record<string, unknown>>;
