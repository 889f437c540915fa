/** The service of an evening from the moment all guests sit, as a network of activities: who waits for what. */
import { keepCompiled } from '../../keep-compiled.js';
import { crumb, holdSpeech, pourWater, serveCoffee, speakAt, type SpeechRecord } from './between-courses.js';
import { callAhead, callCourse } from './captains-call.js';
import { prepare, serveAndClear } from './course-at-table.js';
import type { Draws } from './draws.js';
import type { Evening } from './evening.js';
import { ServiceDraft, type TableRecord } from './service-draft.js';
import type { WorkNetwork } from './work-network.js';
import type { Workforce } from './workforce.js';

export interface ServiceNetwork {
    readonly network: WorkNetwork;
    readonly courses: readonly CourseRecord[];
    /** In the order of the evening's speeches. */
    readonly speeches: readonly SpeechRecord[];
    /** By table, where it is served. */
    readonly coffee: readonly (number | undefined)[];
}

export interface CourseRecord {
    /** The moment the captain calls for it; absent where it stands there already when guests sit. */
    readonly call?: number;
    /** `undefined` where the table gets nothing of the course. */
    readonly tables: readonly (TableRecord | undefined)[];
}

/** @param notBefore before which nobody is free: what stands when guests sit is being set */
export function serviceNetwork(
    evening: Evening,
    workforce: Workforce,
    draws: Draws,
    notBefore: number,
): ServiceNetwork {
    const draft = keepCompiled(new ServiceDraft(evening, workforce, draws, notBefore));
    const speeches: SpeechRecord[] = [];
    const coffee: (number | undefined)[] = [];
    const courses: CourseRecord[] = [];
    const speak = (course: number, isBeforeNext: boolean): void =>
        evening.speeches.forEach((speech, index) => {
            if (speech.after === course && speech.isBeforeNext === isBeforeNext) {
                speeches[index] = holdSpeech(draft, speech, course);
            }
        });
    const next = evening.underway?.next ?? 0;
    if (!evening.isWaterPouredBeforeSeating && !evening.underway) {
        draft.eachTable((table, rank) => pourWater(draft, table, rank));
    }
    for (let course = 0; course < next; course++) {
        courses.push({ tables: evening.tables.map(() => undefined) });
        draft.courses.push(evening.tables.map(() => undefined));
    }
    for (let course = next; course <= evening.courses.length; course++) {
        // The same order as at the single cover: speeches after the course before, crumbs, coffee, speeches before this one.
        speak(course - 1, false);
        if (evening.courses[course]?.isCrumbed) {
            draft.eachTable((table, rank) => crumb(draft, course, table, rank));
        }
        if (evening.coffee?.after === course - 1) {
            draft.eachTable((table, rank) => (coffee[table] = serveCoffee(draft, table, rank)));
        }
        speak(course - 1, true);
        if (course < evening.courses.length) {
            courses.push(courseOf(draft, course));
        }
    }
    evening.speeches.forEach((speech, index) => (speeches[index] ??= speakAt(draft, speech)));
    return { network: draft.network, courses, speeches, coffee };
}

function courseOf(draft: ServiceDraft, course: number): CourseRecord {
    const { evening } = draft;
    const gets = (table: number): boolean => evening.tables[table]!.courses[course]!.plates.length > 0;
    const pours: (number | undefined)[] = [];
    draft.eachTable((table, rank) => {
        if (gets(table)) {
            pours[table] = prepare(draft, course, table, rank);
        }
    });
    const stands = evening.courses[course]!.standsBefore !== undefined;
    const calls = stands ? undefined : { course: callCourse(draft, course), ahead: callAhead(draft, course) };
    const tables: (TableRecord | undefined)[] = evening.tables.map(() => undefined);
    draft.eachTable((table, rank) => {
        if (gets(table)) {
            tables[table] = serveAndClear(draft, course, table, rank, calls, pours[table]);
        }
    });
    draft.courses.push(tables);
    return { call: calls?.course, tables };
}
