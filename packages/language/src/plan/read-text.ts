import { LONGEST_TEXT } from '../grammar/limits.js';
import { parseText, type Parsed } from '../grammar/parse.js';
import { parseMistakenLines } from '../grammar/mistaken-lines.js';
import { readPlainly, type KnownBlock, type KnownBlocks } from '../grammar/plain-parser.js';
import { knownOf } from '../grammar/places.js';
import { keepValues, type ReadText } from './read-again.js';
import { joinStretches, moveStretch, readStretch, type ReadStretch } from './read.js';
import { stretchesOf, type Stretch } from '../grammar/stretches.js';
import type { ReadCourse } from './read-scribe.js';
import { difference } from './text-difference.js';
import type { Reading } from './types.js';

export { parseText } from '../grammar/parse.js';
export { readFile } from './read.js';

/** Parses and reads one file. */
export function readText(file: string, text: string): Reading {
    return new FileReader(file).read(text);
}

type Known = Stretch & ReadText;

/**
 * Reads one file again and again, and of each text only what is new. A text is cut into stretches, a block each, which are
 * read by themselves; where braces do not pair, nobody can tell where a block ends, and the text is read as one.
 */
export class FileReader {
    #known: readonly Known[] = [];
    /** The last text, where it was read as one. */
    #asOne: ReadText | undefined;
    /** What the last reading was joined of, and the reading. */
    #joined: readonly ReadStretch[] = [];
    #reading: Reading | undefined;

    constructor(readonly file: string) {}

    /** What was read before may be moved by it: everything worked out from an earlier text is to be dropped first. */
    read(text: string): Reading {
        const stretches = text.length <= LONGEST_TEXT ? this.#stretches(text) : undefined;
        this.#known = stretches ?? [];
        this.#asOne = stretches ? undefined : again(this.#asOne, this.#readAsOne(text));
        const read = (stretches ?? [this.#asOne!]).map((each) => each.read);
        const isSame = read.length === this.#joined.length && read.every((each, at) => each === this.#joined[at]);
        const reading = (isSame ? this.#reading : undefined) ?? joinStretches(this.file, read);
        this.#joined = read;
        this.#reading = reading;
        return reading;
    }

    #readAsOne(text: string): ReadText {
        return { text, start: 0, read: readStretch(this.file, text, parseText(text)) };
    }

    #stretches(text: string): Known[] | undefined {
        const before = this.#known;
        let first = 0;
        // The last stretch has no end of its own.
        while (first < before.length - 1 && text.startsWith(before[first]!.text, before[first]!.start)) {
            first++;
        }
        const from = before[first]?.start ?? 0;
        let rest = before.length;
        let to = text.length;
        while (
            rest > first &&
            to - before[rest - 1]!.text.length >= from &&
            text.endsWith(before[rest - 1]!.text, to)
        ) {
            rest--;
            to -= before[rest]!.text.length;
        }
        const between = rest < before.length ? stretchesOf(text, from, to) : undefined;
        const fresh = between ?? stretchesOf(text, from);
        if (!fresh) {
            return undefined;
        }
        const behind = between ? before.slice(rest) : [];
        const instead = before.slice(first, between ? rest : undefined);
        const isOneForOne = instead.length === fresh.length;
        const read = fresh.map((each, at) => this.#one(text, each, isOneForOne ? instead[at] : undefined));
        return [...before.slice(0, first), ...read, ...moved(behind, to)];
    }

    #one(text: string, { start, end }: Stretch, before: Known | undefined): Known {
        const own = text.slice(start, end);
        const parsed = parsedAgain(own, before && knownCourses(before, own));
        return again(before, { start, end, text: own, read: readStretch(this.file, own, parsed, start) });
    }
}

/** What was just read, with whatever is as it was before. */
function again<Now extends ReadText>(before: ReadText | undefined, now: Now): Now {
    return before ? { ...now, read: keepValues(before, now) } : now;
}

/** The courses of a stretch that stand in its new text as they stood in the one before, by where they begin now. */
function knownCourses(before: ReadText, text: string): KnownBlocks {
    const { start, end, text: put } = difference(before.text, text);
    const blocks = new Map<number, KnownBlock>();
    for (const known of before.read.courses) {
        const { origin } = known.course;
        const [from, to] = [origin.start - before.start, origin.end - before.start];
        if (to <= start || from >= end) {
            const by = to <= start ? 0 : put.length - (end - start);
            blocks.set(from + by, { type: 'Course', end: to + by, known });
        }
    }
    return blocks;
}

function parsedAgain(text: string, courses: KnownBlocks | undefined): Parsed {
    const again = parsed(text, courses);
    // A course knows which of its menu it is.
    const isInPlace = again.tree.items.every(
        (item) =>
            item.$type !== 'Menu' ||
            item.entries
                .filter((entry) => entry.$type === 'Course')
                .every(
                    (course, index) => ((knownOf(course) as ReadCourse | undefined)?.course.index ?? index) === index,
                ),
    );
    return isInPlace ? again : parsed(text);
}

function parsed(text: string, blocks?: KnownBlocks): Parsed {
    const { tree, stop } = readPlainly(text, blocks);
    return tree ? { tree, problems: [] } : (parseMistakenLines(text, stop, blocks) ?? parseText(text));
}

/** The stretches from the first of these on, which now begins at `start`. */
function moved(stretches: readonly Known[], start: number): readonly Known[] {
    const by = start - (stretches[0]?.start ?? start);
    if (by === 0) {
        return stretches;
    }
    return stretches.map((each) => {
        moveStretch(each.read, by);
        return { ...each, start: each.start + by, end: each.end + by };
    });
}
