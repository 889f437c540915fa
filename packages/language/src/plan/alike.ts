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
    const names = Object.keys(one);
    return (
        Array.isArray(one) === Array.isArray(other) &&
        names.length === Object.keys(other).length &&
        names.every((name) => isAlike((one as Fields)[name], (other as Fields)[name]))
    );
}

type Fields = Readonly<Record<string, unknown>>;
