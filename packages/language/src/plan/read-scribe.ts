import type { AstNode } from 'langium';
import type * as ast from '../grammar/generated/ast.js';
import { isPlain, knownOf, leavesOf, spanOf, spansOfProperty, type Span } from '../grammar/places.js';
import { keepCompiled } from '../keep-compiled.js';
import type { Count, Named, Origin, Text } from './origin.js';
import { toComputing, UNITS, type Dimension, type Quantity, type UnitName } from './quantity.js';
import { readClock, readDate, readNumber, type Understood } from './read-written.js';
import type {
    CalendarDate,
    ClockTime,
    Course,
    Misspelt,
    NameSort,
    Occurrence,
    Repeat,
    Stranger,
    UnitProblem,
    Written,
} from './types.js';

/** How each mistyped unit is spelt here; `°` alone may be either scale. */
const SPELT: Readonly<Record<string, readonly UnitName[]>> = {
    floz: ['fl oz'],
    impfloz: ['imp fl oz'],
    sqft: ['sq ft'],
    sqm: ['sq m'],
    C: ['°C'],
    F: ['°F'],
    '°': ['°C', '°F'],
    degrees: ['°C', '°F'],
    in: ['inch'],
    inches: ['inch'],
    feet: ['ft'],
    foot: ['ft'],
    minutes: ['min'],
    minute: ['min'],
    mins: ['min'],
    hour: ['h'],
    hours: ['h'],
    hr: ['h'],
    hrs: ['h'],
    sec: ['s'],
    secs: ['s'],
    seconds: ['s'],
    litre: ['l'],
    litres: ['l'],
    liter: ['l'],
    liters: ['l'],
    L: ['l'],
    mL: ['ml'],
    ounce: ['oz'],
    ounces: ['oz'],
    pound: ['lb'],
    pounds: ['lb'],
    lbs: ['lb'],
    gram: ['g'],
    grams: ['g'],
    percent: ['%'],
};

/** Units that read the same whether spelt with a space or not. */
const SAME_WORD = new Set(['floz', 'impfloz', 'sqft', 'sqm']);

/** The units a bare figure of each dimension most likely means, likeliest first. */
export const LIKELY_UNITS: Record<Exclude<Dimension, 'count'>, readonly UnitName[]> = {
    temperature: ['°C', '°F'],
    length: ['mm', 'cm', 'inch'],
    area: ['sq m', 'sq ft'],
    volume: ['ml', 'fl oz'],
    mass: ['g', 'oz'],
    time: ['min', 'h'],
    share: ['%'],
};

/** What is noted beside the values. */
export const NOTES = ['occurrences', 'written', 'unitProblems', 'repeats', 'misspelt', 'strangers'] as const;
export type Notes = Pick<Scribe, (typeof NOTES)[number]>;

/** A course read by itself: as long as its text stays, it is not read again. */
export interface ReadCourse {
    readonly course: Course;
    readonly notes: Notes;
    /** Every place in it, each once, and in nothing else. */
    readonly origins: readonly Origin[];
}

/**
 * Takes values off syntax nodes and notes down, as it goes, every name that stands there and everything written in a form
 * the language does not keep. One for each block of a file.
 */
export class Scribe {
    /** Every place noted, each once. */
    readonly origins: Origin[] = [];
    readonly occurrences: Occurrence[] = [];
    readonly written: Written[] = [];
    readonly unitProblems: UnitProblem[] = [];
    readonly repeats: Repeat[] = [];
    readonly misspelt: Misspelt[] = [];
    readonly strangers: Stranger[] = [];
    /** Read by themselves; their places are not among the others. */
    readonly courses: ReadCourse[] = [];

    /**
     * @param text the part of the file that the nodes were read from
     * @param offset where in the file it stands
     */
    constructor(
        readonly file: string,
        private readonly text: string,
        private readonly offset = 0,
    ) {}

    // ---------------------------------------------------------------- places
    place(span: Span | undefined): Origin {
        // A word that the text breaks off in may be placed past its end.
        const end = Math.min(span?.end ?? 0, this.text.length);
        return this.placed(Math.min(span?.offset ?? 0, end) + this.offset, end + this.offset);
    }

    private placed(start: number, end: number): Origin {
        const origin = { file: this.file, start, end };
        this.origins.push(origin);
        return origin;
    }

    /** The first characters of a place: the word that a block begins with. */
    begin({ start }: Origin, word: string): Origin {
        return this.placed(start, start + word.length);
    }

    /** The words at a place. */
    words({ start, end }: Origin): string {
        return this.text.slice(start - this.offset, end - this.offset);
    }

    origin(node: AstNode): Origin {
        return this.place(spanOf(node));
    }

    /** Where one property stands; the whole node where it was not written. */
    at(node: AstNode, property: string, index = 0): Origin {
        const spans = spansOfProperty(node, property);
        return this.place(spans[Math.min(index, spans.length - 1)] ?? spanOf(node));
    }

    /** From the node's start to the end of the last of these properties that is there: a block's heading. */
    head(node: AstNode, ...properties: readonly string[]): Origin {
        const whole = this.origin(node);
        let end = whole.start;
        for (const property of properties) {
            for (const found of spansOfProperty(node, property)) {
                end = Math.max(end, found.end + this.offset);
            }
        }
        return end > whole.start ? this.placed(whole.start, end) : whole;
    }

    // ---------------------------------------------------------------- courses
    /** A course, read with notes of its own where nothing is amiss in it; one that was read before is moved to where it is now. */
    course(node: ast.Course, read: (scribe: Scribe) => Course): Course {
        if (!isPlain(node)) {
            return read(this);
        }
        const known = knownOf(node) as ReadCourse | undefined;
        const one = known ?? this.readApart(read);
        if (known) {
            moveAll(known.origins, spanOf(node)!.offset + this.offset - known.course.origin.start);
        }
        this.courses.push(one);
        for (const list of NOTES) {
            (this[list] as unknown[]).push(...one.notes[list]);
        }
        return one.course;
    }

    private readApart(read: (scribe: Scribe) => Course): ReadCourse {
        const own = keepCompiled(new Scribe(this.file, this.text, this.offset));
        const course = read(own);
        return { course, notes: notesOf(own), origins: own.origins };
    }

    // ---------------------------------------------------------------- names and texts
    named(node: AstNode, property: string, sort: NameSort, index?: number, of?: string): Named | undefined {
        const value = (node as unknown as Record<string, unknown>)[property];
        const written = Array.isArray(value) ? (value as unknown[])[index ?? 0] : value;
        if (typeof written !== 'string' || written === '') {
            return undefined;
        }
        const name = comparable(written);
        const origin = this.at(node, property, index);
        this.occurrences.push({ sort, name, role: 'uses', origin, ...(of === undefined ? {} : { of }) });
        return { name, origin };
    }

    /** As `named`, for a name the grammar demands: an empty one where the text breaks off. */
    demanded(node: AstNode, property: string, sort: NameSort): Named {
        return this.named(node, property, sort) ?? { name: '', origin: this.origin(node) };
    }

    names(node: AstNode, property: string, sort: NameSort): Named[] {
        const values = (node as unknown as Record<string, unknown>)[property];
        return Array.isArray(values) ? values.flatMap((_, index) => this.named(node, property, sort, index) ?? []) : [];
    }

    declare(node: AstNode, property: string, sort: NameSort, of?: string): Named {
        const value = (node as unknown as Record<string, unknown>)[property];
        const name = typeof value === 'string' ? comparable(value) : '';
        const named = { name, origin: this.at(node, property) };
        this.declareAs(sort, named, of);
        return named;
    }

    declareAs(sort: NameSort, named: Named, of?: string): void {
        if (named.name !== '') {
            this.occurrences.push({ sort, ...named, role: 'declares', ...(of === undefined ? {} : { of }) });
        }
    }

    textOf(node: AstNode, property: string, index?: number): Text | undefined {
        const text = this.asWritten(node, property, index);
        return text && { ...text, text: comparable(text.text) };
    }

    /** The path of another file, which is called what it is called on the disk. */
    pathOf(node: AstNode): Text | undefined {
        return this.asWritten(node, 'path');
    }

    private asWritten(node: AstNode, property: string, index?: number): Text | undefined {
        const value = (node as unknown as Record<string, unknown>)[property];
        const text = Array.isArray(value) ? (value as unknown[])[index ?? 0] : value;
        return typeof text === 'string' ? { text, origin: this.at(node, property, index) } : undefined;
    }

    // ---------------------------------------------------------------- figures
    private note<T>(understood: Understood<T>, written: string, origin: Origin): T | undefined {
        if (understood.form) {
            this.written.push({ form: understood.form, written, suggestions: understood.suggestions, origin });
        }
        return understood.value;
    }

    number(node: AstNode, property: string): number | undefined {
        const raw = (node as unknown as Record<string, unknown>)[property];
        return typeof raw === 'string' ? this.note(readNumber(raw), raw, this.at(node, property)) : undefined;
    }

    count(node: AstNode, property = 'count'): Count | undefined {
        const value = this.number(node, property);
        if (value === undefined) {
            return undefined;
        }
        const origin = this.at(node, property);
        if (!Number.isInteger(value) || value < 0) {
            this.written.push({ form: 'not-whole', written: String(value), suggestions: [], origin });
            return undefined;
        }
        return { count: value, origin };
    }

    clock(node: AstNode, property = 'time'): ClockTime | undefined {
        const written = (node as unknown as Record<string, unknown>)[property];
        if (typeof written !== 'string') {
            return undefined;
        }
        const origin = this.at(node, property);
        const minutes = this.note(readClock(written), written, origin);
        return { written, origin, ...(minutes === undefined ? {} : { minutes }) };
    }

    date(node: AstNode, property = 'date'): CalendarDate | undefined {
        const written = (node as unknown as Record<string, unknown>)[property];
        if (typeof written !== 'string') {
            return undefined;
        }
        const origin = this.at(node, property);
        const iso = this.note(readDate(written), written, origin);
        return { written, origin, ...(iso === undefined ? {} : { iso }) };
    }

    /**
     * A figure with its unit in the computing unit.
     * @param wanted what it may measure; the first is assumed for the units to offer. `undefined` takes any, a bare count too.
     * @param more `unitFrom`: the second figure of a range, whose unit a bare first one takes (`6 to 10 °C`);
     *   `fits`: which values, in the computing unit, a missing unit may lead to
     * @returns `undefined` where the unit is missing or measures something else: that is a finding of its own
     */
    quantity(
        node: ast.Quantity | undefined,
        wanted?: readonly Dimension[],
        more: { readonly unitFrom?: ast.Quantity; readonly fits?: (value: number) => boolean } = {},
    ): Quantity | undefined {
        if (!node || !spanOf(node) || typeof node.value !== 'string') {
            return undefined;
        }
        const origin = this.origin(node);
        const value = this.note(readNumber(node.value), node.value, this.at(node, 'value'));
        if (value === undefined) {
            return undefined;
        }
        const written = this.words(origin);
        const unitNode = node.unit === undefined ? more.unitFrom : node;
        if (unitNode?.unit === undefined) {
            if (!wanted || wanted.includes('count')) {
                return { value, dimension: 'count', written, origin };
            }
            const units = wanted.flatMap((dimension) => (dimension === 'count' ? [] : LIKELY_UNITS[dimension]));
            const fitting = units.filter((unit) => more.fits?.(toComputing(value, unit)) ?? true);
            this.unitProblems.push({ written, value, wanted, likely: fitting.length > 0 ? fitting : units, origin });
            return undefined;
        }
        const unit = unitNode === node ? this.unit(node, unitNode.unit, wanted) : knownUnit(unitNode.unit);
        if (!unit) {
            return undefined;
        }
        const dimension = UNITS[unit].dimension;
        if (wanted && !wanted.includes(dimension)) {
            const likely = wanted.flatMap((want) => (want === 'count' ? [] : LIKELY_UNITS[want]));
            this.unitProblems.push({ written, value, wanted, unit, likely, origin });
            return undefined;
        }
        return { value: toComputing(value, unit), dimension, written, unit, origin };
    }

    private unit(node: ast.Quantity, word: string, wanted: readonly Dimension[] | undefined): UnitName | undefined {
        if (Object.hasOwn(UNITS, word)) {
            return word as UnitName;
        }
        const meant = (SPELT[word] ?? []).filter((unit) => !wanted || wanted.includes(UNITS[unit].dimension));
        const units = meant.length > 0 ? meant : (SPELT[word] ?? []);
        if (!SAME_WORD.has(word)) {
            const form = word === 'in' ? 'preposition-as-unit' : 'unit-spelling';
            this.written.push({ form, written: word, suggestions: units, origin: this.at(node, 'unit') });
        }
        return units.length === 1 ? units[0] : undefined;
    }

    // ---------------------------------------------------------------- order-free blocks
    /** The first clause of its sort; every further one is noted as standing twice. */
    once<T extends AstNode>(clauses: readonly T[], clause: string): T | undefined {
        const [first, ...again] = clauses;
        for (const repeat of again) {
            this.repeats.push({ clause, first: this.origin(first!), again: this.origin(repeat) });
        }
        return first;
    }

    block(node: AstNode & { misspelt?: string }, meant: string): void {
        if (node.misspelt !== undefined) {
            this.misspelt.push({ word: node.misspelt, meant, origin: this.at(node, 'misspelt') });
        }
    }

    /** Texts and comments that were opened and never closed. */
    noteUnclosed(root: AstNode): void {
        for (const leaf of leavesOf(root)) {
            const words = leaf.text;
            if (/^["\u201C\u201D\u201E]/.test(words) && !/.["\u201C\u201D]$/.test(words)) {
                this.written.push({ form: 'unclosed-text', written: words, suggestions: [], origin: this.place(leaf) });
            } else if (words.startsWith('/*') && !(words.length >= 4 && words.endsWith('*/'))) {
                this.written.push({
                    form: 'unclosed-comment',
                    written: '/*',
                    suggestions: [],
                    origin: this.place(leaf),
                });
            }
        }
    }
}

/** The lists alone, without the scribe that noted them. */
export function notesOf({ occurrences, written, unitProblems, repeats, misspelt, strangers }: Notes): Notes {
    return { occurrences, written, unitProblems, repeats, misspelt, strangers };
}

/** Places are the one thing of a reading that ever changes, where their text now stands elsewhere. */
export function moveAll(origins: readonly Origin[], by: number): void {
    for (const origin of by === 0 ? [] : (origins as { -readonly [Key in keyof Origin]: Origin[Key] }[])) {
        origin.start += by;
        origin.end += by;
    }
}

/** The unit of a range's second figure, for its first; whatever is amiss with it is told where it stands. */
function knownUnit(word: string): UnitName | undefined {
    return Object.hasOwn(UNITS, word) ? (word as UnitName) : SPELT[word]?.[0];
}

/** The clauses of one sort, in source order. */
export function ofType<T extends AstNode, U extends T>(nodes: readonly T[] | undefined, type: U['$type']): U[] {
    return (nodes ?? []).filter((node): node is U => node.$type === type);
}

/** An é may be one character or two, and looks the same. */
const comparable = (text: string): string => text.normalize('NFC');
