import { isFromCupboard, type Origin } from '../plan/origin.js';
import type { NameSort, Occurrence, Reading } from '../plan/types.js';
import { standardCupboard } from '../cupboard/standard.js';
import type { Folder } from './folder.js';

// Which places speak of the same thing. A name means one thing in all files of a plan; a redeclared name means the thing
// it redeclares.

/** Which things a name of each sort may stand for. */
const MEANS: Record<NameSort, readonly NameSort[]> = {
    piece: ['piece'],
    kind: ['kind'],
    drink: ['drink'],
    'kind-or-drink': ['kind', 'drink'],
    substance: ['substance'],
    diet: ['diet'],
    code: ['code'],
    custom: ['custom'],
    choice: ['choice'],
    rule: ['rule'],
    course: ['course'],
    table: ['table'],
    shape: ['shape'],
    role: ['role'],
    'dish-title': ['dish-title'],
    'pour-title': ['pour-title'],
    'task-title': ['task-title'],
};

export function isSameThing(one: Occurrence, other: Occurrence): boolean {
    return (
        one.name === other.name &&
        MEANS[one.sort].some((sort) => MEANS[other.sort].includes(sort)) &&
        (one.sort !== 'choice' || one.of === other.of)
    );
}

export function isSamePlace(one: Origin, other: Origin): boolean {
    return one.file === other.file && one.start === other.start && one.end === other.end;
}

/** The names at an offset, its end counted in; several where one word declares a course and names its kind. */
export function namesAt(reading: Reading | undefined, offset: number): readonly Occurrence[] {
    const touching = (reading?.occurrences ?? []).filter(
        ({ origin }) => origin.start <= offset && offset <= origin.end,
    );
    // Between two names that touch, the one that starts here.
    const start = Math.max(...touching.map(({ origin }) => origin.start));
    return touching.filter(({ origin }) => origin.start === start);
}

/** Where the standard cupboard declares a name. */
export function cupboardDeclarations({ sort, name }: Occurrence): readonly Occurrence[] {
    const { pieces, kinds, drinks, substances, diets, codes } = standardCupboard();
    const shelves: Partial<Record<NameSort, ReadonlyMap<string, { readonly nameOrigin: Origin }>>> = {
        piece: pieces,
        kind: kinds,
        drink: drinks,
        substance: substances,
        diet: diets,
        code: codes,
    };
    return MEANS[sort].flatMap((each) => {
        const origin = shelves[each]?.get(name)?.nameOrigin;
        return origin ? [{ sort: each, name, role: 'declares', origin }] : [];
    });
}

export function isInCupboard(occurrence: Occurrence): boolean {
    return cupboardDeclarations(occurrence).length > 0;
}

/** The declarations of a name as a plan sees them: its own file's first, then those of the files it uses, then the cupboard's. */
export function declarationsOf(folder: Folder, plan: string, occurrence: Occurrence): readonly Occurrence[] {
    const own = folder.checked(plan).plan.readings.flatMap(({ occurrences }) => occurrences);
    return [
        ...own.filter((each) => each.role === 'declares' && isSameThing(each, occurrence)),
        ...cupboardDeclarations(occurrence),
    ];
}

/** Every plan that a file is part of, its own first. */
export function plansWith(folder: Folder, file: string): readonly string[] {
    return [file, ...folder.plans.filter((plan) => plan !== file && folder.filesOf(plan).includes(file))];
}

/**
 * Every place that speaks of the same thing, in the plans that can mean the same by it: those that hold one of its
 * declarations, or, for a name that only the cupboard declares, all of the folder.
 */
export function placesOf(folder: Folder, file: string, occurrence: Occurrence): readonly Occurrence[] {
    const around = plansWith(folder, file);
    const homes = new Set(
        around.flatMap((plan) =>
            declarationsOf(folder, plan, occurrence).flatMap(({ origin }) =>
                isFromCupboard(origin) ? [] : [origin.file],
            ),
        ),
    );
    const plans =
        homes.size > 0
            ? [...homes].flatMap((home) => plansWith(folder, home))
            : isInCupboard(occurrence)
              ? folder.plans
              : around;
    const files = [...new Set([file, ...plans.flatMap((plan) => folder.filesOf(plan))])].sort();
    return files.flatMap(
        (each) => folder.readingOf(each)?.occurrences.filter((other) => isSameThing(other, occurrence)) ?? [],
    );
}

/** Each place once, however many names stand there. */
export function eachPlaceOnce(occurrences: readonly Occurrence[]): readonly Occurrence[] {
    return [
        ...new Map(
            occurrences.map((each) => [`${each.origin.file}:${each.origin.start}:${each.origin.end}`, each]),
        ).values(),
    ];
}

/** The plans with an event that a file is part of; a house or a guest list is best spoken of in one of them. */
export function eventsWith(folder: Folder, file: string): readonly string[] {
    return plansWith(folder, file).filter((plan) => folder.checked(plan).plan.event);
}
