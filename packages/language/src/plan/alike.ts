import { isOrigin } from './origin.js';

/**
 * Whether two values say the same. A place is like itself alone, for only the places of a reading that still stands are moved
 * with its text. Of plain data: what is worked out when it is asked for would be worked out.
 */
export function isAlike(one: unknown, other: unknown): boolean {
    if (Object.is(one, other)) {
        return true;
    }
    if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null || isOrigin(one)) {
        return false;
    }
    // At every key thousands are compared: no list of names is made of each.
    let names = 0;
    for (const name in one) {
        if (!isAlike((one as Fields)[name], (other as Fields)[name])) {
            return false;
        }
        names++;
    }
    for (const _ in other) {
        names--;
    }
    return names === 0 && Array.isArray(one) === Array.isArray(other);
}

type Fields = Readonly<Record<string, unknown>>;
