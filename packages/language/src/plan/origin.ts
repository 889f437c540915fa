/**
 * Where a value was written. Opaque to rules and calculations: they only hand it on, and never copy its figures, for what is
 * written above moves it. Offsets are UTF-16 units.
 */
export interface Origin {
    /** The file as its `Files` names it (workspace-relative, with forward slashes); `cupboard/…` for the standard cupboard. */
    readonly file: string;
    readonly start: number;
    readonly end: number;
}

export function isOrigin(value: object): value is Origin {
    return 'start' in value && 'end' in value && 'file' in value;
}

export function isWithin(inner: Origin, outer: Origin): boolean {
    return inner.file === outer.file && inner.start >= outer.start && inner.end <= outer.end;
}

/** From where one thing begins to where another ends, wherever both are moved. */
export function fromTo(first: Origin, last: Origin): Origin {
    return {
        file: first.file,
        get start() {
            return first.start;
        },
        get end() {
            return last.end;
        },
    };
}

/** The first characters of a place, wherever it is moved. */
export function beginningOf(place: Origin, length: number): Origin {
    return {
        file: place.file,
        get start() {
            return place.start;
        },
        get end() {
            return place.start + length;
        },
    };
}

/** A name as written, not yet looked up. */
export interface Named {
    readonly name: string;
    readonly origin: Origin;
}

export interface Text {
    readonly text: string;
    readonly origin: Origin;
}

/** A whole number as written, such as a count of guests. */
export interface Count {
    readonly count: number;
    readonly origin: Origin;
}

export const CUPBOARD_PREFIX = 'cupboard/';

export function isFromCupboard(origin: Origin): boolean {
    return origin.file.startsWith(CUPBOARD_PREFIX);
}
