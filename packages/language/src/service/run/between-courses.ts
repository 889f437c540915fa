/** What is done at the tables between one course and the next. */
import type { EveningSpeech } from './evening.js';
import type { ServiceDraft } from './service-draft.js';
import { walkTo } from './serving-a-course.js';

/** What an activity of the network is held for: the speech itself, and the glasses that are full when it may begin. */
export interface SpeechRecord {
    readonly activity: number;
    /** First pours of the toast's drink and what tops them up; none where nothing is poured for it. */
    readonly glasses: readonly number[];
}

/** A speech holds the room: everything before it is over, every glass of a toast is full, and nothing goes on before it ends. */
export function holdSpeech(draft: ServiceDraft, speech: EveningSpeech, course: number): SpeechRecord {
    const { isToast, at, lasts } = speech;
    const glasses = [...firstPours(draft, speech), ...pourForToast(draft, speech)];
    const after = [...new Set([...draft.progress.flatMap((each) => each.after), ...glasses])];
    const activity = draft.network.add(
        { sort: isToast ? 'toast' : 'speech', course, table: -1, count: 1 },
        { duration: lasts, after, release: at },
    );
    draft.hold(activity, lasts);
    return { activity, glasses };
}

/** One that is told to come at a time of the day and at no course: whatever goes on then goes on. */
export function speakAt(draft: ServiceDraft, speech: EveningSpeech): SpeechRecord {
    const { isToast, lasts, at } = speech;
    const glasses = [...firstPours(draft, speech), ...pourForToast(draft, speech)];
    const activity = draft.network.add(
        { sort: isToast ? 'toast' : 'speech', course: -1, table: -1, count: 1 },
        { duration: lasts, release: at },
    );
    return { activity, glasses };
}

function firstPours({ courses }: ServiceDraft, { pour }: EveningSpeech): number[] {
    return pour === undefined ? [] : (courses[pour] ?? []).flatMap((record) => record?.pour ?? []);
}

/**
 * Glasses are topped up for a toast that comes later than right after the course of its drink: where it follows a course, at each
 * table once that is cleared; and where it has an hour, no sooner than that they are full by then.
 */
function pourForToast(draft: ServiceDraft, { speech, pour, after, at }: EveningSpeech): number[] {
    const { evening, workforce, network } = draft;
    const poolOf = (table: number): number => workforce.sommeliers ?? draft.serversOf(table);
    const timeAt = (table: number): number => (evening.tables[table]!.toasts[speech] ?? 0) * evening.pace.pouringGlass;
    const work = new Map<number, number>();
    draft.eachTable((table) => work.set(poolOf(table), (work.get(poolOf(table)) ?? 0) + timeAt(table)));
    const poured: number[] = [];
    draft.eachTable((table, rank) => {
        const count = evening.tables[table]!.toasts[speech] ?? 0;
        if (pour === undefined || count === 0) {
            return;
        }
        const pool = poolOf(table);
        const first = draft.courses[pour]?.[table]?.pour;
        const ready = after === undefined ? [draft.seated] : draft.progress[table]!.after;
        poured.push(
            network.add(
                { sort: 'pour', course: pour, table, count },
                {
                    duration: timeAt(table),
                    after: first === undefined ? ready : [...ready, first],
                    release: at === undefined ? undefined : at - work.get(pool)! / network.pools[pool]!,
                    pool,
                },
                { rank },
            ),
        );
    });
    return poured;
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
