import { keepCompiled } from '../keep-compiled.js';
import { isAlike } from './alike.js';
import { isOrigin, type Origin } from './origin.js';
import type { ReadStretch } from './read.js';
import { NOTES, type Notes, type ReadCourse } from './read-scribe.js';
import { difference } from './text-difference.js';

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };
type Plain = Record<string, unknown>;

/** A stretch with the text that it was read from, and where in the file that begins. */
export interface ReadText {
    readonly text: string;
    readonly start: number;
    readonly read: ReadStretch;
}

/**
 * A stretch that was read again: whatever in it says the same as before stays the very same value, with its places as they
 * are now. So what was worked out from a course holds on while somebody writes in another.
 * @param now just read, and known to nobody else: the values kept are put into it
 */
export function keepValues(before: ReadText, now: ReadText): ReadStretch {
    const { origins: _before, courses: coursesBefore, ...valuesBefore } = before.read;
    const { origins, courses: coursesNow, ...values } = now.read;
    const again = new Set(coursesNow.filter((course) => coursesBefore.includes(course)));
    const keeper = keepCompiled(new Keeper(before, now, new Set([...again].flatMap(thingsOf))));
    const kept = keeper.keep(valuesBefore, values) as typeof values;
    keeper.move();
    if (kept === valuesBefore) {
        return before.read;
    }
    const courses = coursesNow.map((course) => (again.has(course) ? course : keeper.course(course)));
    const ofCourses = new Set(courses.flatMap((course) => (again.has(course) ? [] : course.origins)));
    return { ...kept, courses, origins: [...origins, ...keeper.moved.filter((origin) => !ofCourses.has(origin))] };
}

/** The course and each note of it. */
function thingsOf({ course, notes }: ReadCourse): readonly object[] {
    return [course, ...NOTES.flatMap((list): readonly object[] => notes[list])];
}

class Keeper {
    /** What each value read now is kept as. Several may refer to one: they still do. */
    readonly #kept = new Map<object, unknown>();
    /** Places from before, with where they are now. */
    readonly #moves = new Map<Origin, Origin>();
    readonly #from: number;
    readonly #to: number;
    /** By how much what stands behind the words that are other ones now has moved, and what stands before them. */
    readonly #behind: number;
    readonly #ahead: number;

    /** @param untouched things that stand in both, which are kept as they are and for nothing else */
    constructor(
        before: ReadText,
        now: ReadText,
        private readonly untouched: ReadonlySet<object>,
    ) {
        const { start, end, text } = difference(before.text, now.text);
        this.#from = before.start + start;
        this.#to = before.start + end;
        this.#ahead = now.start - before.start;
        this.#behind = this.#ahead + text.length - (end - start);
    }

    /** @returns the value from before where it says the same, else the new one with all that is kept in it */
    keep(before: unknown, now: unknown): unknown {
        if (before === now || typeof now !== 'object' || now === null) {
            return now;
        }
        if (this.untouched.has(now) || this.untouched.has(before as object)) {
            return now;
        }
        const kept = this.#kept.get(now) ?? this.#one(before, now);
        this.#kept.set(now, kept);
        return kept;
    }

    /** The places kept. One may be kept in one value, and be as it was read in another that is new. */
    get moved(): readonly Origin[] {
        return [...this.#moves.keys()];
    }

    /** A course read now, as it is kept. */
    course({ course, notes }: ReadCourse): ReadCourse {
        const keptOf = <Thing extends object>(thing: Thing): Thing => (this.#kept.get(thing) ?? thing) as Thing;
        const kept = {
            course: keptOf(course),
            notes: Object.fromEntries(NOTES.map((list) => [list, (notes[list] as object[]).map(keptOf)])) as Notes,
        };
        return { ...kept, origins: originsIn(kept) };
    }

    move(): void {
        for (const [origin, { start, end }] of this.#moves as Map<Mutable<Origin>, Origin>) {
            origin.start = start;
            origin.end = end;
        }
    }

    #one(before: unknown, now: object): unknown {
        if (typeof before !== 'object' || before === null) {
            return now;
        }
        if (Array.isArray(now)) {
            return Array.isArray(before) ? this.#list(before, now) : now;
        }
        return isOrigin(now) ? this.#place(before, now) : this.#fields(before as Plain, now as Plain);
    }

    #fields(before: Plain, now: Plain): Plain {
        let isSame = true;
        let names = 0;
        for (const name in now) {
            isSame = this.#put(before[name], now, name) && isSame;
            names++;
        }
        for (const _ in before) {
            names--;
        }
        return isSame && names === 0 ? before : now;
    }

    /** Where something was written in between, what stands before it and behind it is still the same. */
    #list(before: readonly unknown[], now: unknown[]): readonly unknown[] {
        if (before.length === now.length) {
            const same = now.filter((_, index) => this.#put(before[index], now, index));
            return same.length === now.length ? before : now;
        }
        const shorter = Math.min(before.length, now.length);
        let first = 0;
        while (first < shorter && saysTheSame(before[first], now[first])) {
            this.#put(before[first], now, first);
            first++;
        }
        for (let last = 1; last <= shorter - first && saysTheSame(before.at(-last), now.at(-last)); last++) {
            this.#put(before.at(-last), now, now.length - last);
        }
        return now;
    }

    /** @returns whether what stood there before stands there again */
    #put<Key extends PropertyKey>(before: unknown, now: Record<Key, unknown>, at: Key): boolean {
        const kept = this.keep(before, now[at]);
        if (kept !== now[at]) {
            now[at] = kept;
        }
        return kept === before;
    }

    /**
     * One place from before stands for one place now, and has moved only as its text has: so of two kept places the one that
     * stood before the other, or in it, still does.
     */
    #place(before: object, now: Origin): Origin {
        if (!isOrigin(before) || before.file !== now.file || !this.#hasMoved(before, now)) {
            return now;
        }
        const moved = this.#moves.get(before);
        if (moved && (moved.start !== now.start || moved.end !== now.end)) {
            return now;
        }
        this.#moves.set(before, now);
        return before;
    }

    #hasMoved(before: Origin, now: Origin): boolean {
        return this.#isMoved(before.start, now.start) && this.#isMoved(before.end, now.end);
    }

    #isMoved(before: number, now: number): boolean {
        return (
            (before <= this.#from && now === before + this.#ahead) ||
            (before >= this.#to && now === before + this.#behind)
        );
    }
}

/** Wherever in its file it is written. */
const saysTheSame = (one: unknown, other: unknown): boolean =>
    isAlike(one, other, (place, elsewhere) => place.file === elsewhere.file);

/** Every place in plain data, each once. */
function originsIn(data: object): Origin[] {
    const seen = new Set<object>();
    const origins: Origin[] = [];
    const look = (value: unknown): void => {
        if (typeof value !== 'object' || value === null || seen.has(value)) {
            return;
        }
        seen.add(value);
        if (isOrigin(value)) {
            origins.push(value);
            return;
        }
        for (const name in value) {
            look((value as Plain)[name]);
        }
    };
    look(data);
    return origins;
}
