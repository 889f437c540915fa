/** What is done at the tables between one course and the next. */
import type { EveningSpeech } from './evening.js';
import type { ServiceDraft } from './service-draft.js';
import { walkTo } from './serving-a-course.js';

/** A speech holds the room: everything before it is over, and nothing goes on before it ends. */
export function holdSpeech(draft: ServiceDraft, speech: EveningSpeech, course: number): number {
    const { isToast, at, lasts, pour } = speech;
    const poured = pour === undefined ? [] : (draft.courses[pour] ?? []).flatMap((record) => record?.pour ?? []);
    const after = [...new Set([...draft.progress.flatMap((each) => each.after), ...poured])];
    const activity = draft.network.add(
        { sort: isToast ? 'toast' : 'speech', course, table: -1, count: 1 },
        { duration: lasts, after, release: at },
    );
    draft.hold(activity, lasts);
    return activity;
}

/** One that is told to come at a time of the day and at no course: whatever goes on then goes on. */
export function speakAt(draft: ServiceDraft, { isToast, lasts, at }: EveningSpeech): number {
    return draft.network.add(
        { sort: isToast ? 'toast' : 'speech', course: -1, table: -1, count: 1 },
        { duration: lasts, release: at },
    );
}

export function pourWater(draft: ServiceDraft, table: number, rank: number): void {
    const { waters } = draft.evening.tables[table]!;
    if (waters > 0) {
        const duration = waters * draft.evening.pace.pouringGlass;
        const pool = draft.serversOf(table);
        draft.network.add(
            { sort: 'pour', course: -1, table, count: waters },
            { duration, after: [draft.seated], pool },
            { rank },
        );
    }
}

export function crumb(draft: ServiceDraft, course: number, table: number, rank: number): void {
    const { guests } = draft.evening.tables[table]!;
    const duration = guests * draft.evening.pace.crumbingCover;
    draft.step(table, rank, { sort: 'crumb', course, table, count: guests }, duration, draft.workforce.bussers);
}

/** @returns the activity; none where nobody takes coffee */
export function serveCoffee(draft: ServiceDraft, table: number, rank: number): number | undefined {
    const { pace, tables, courses } = draft.evening;
    const { guests, pieces } = tables[table]!.coffee;
    if (guests === 0) {
        return undefined;
    }
    const duration = 2 * walkTo(draft.evening, table) + pieces * pace.relayingPiece + guests * pace.pouringGlass;
    return draft.step(table, rank, { sort: 'coffee', course: courses.length, table, count: guests }, duration);
}
