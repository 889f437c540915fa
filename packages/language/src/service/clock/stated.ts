import type { ClockTime, Plan } from '../../plan/types.js';
import type { Meaning } from './evening.js';

/** A time of day that the plan states. */
export interface StatedTime {
    readonly time: ClockTime;
    /** As a sentence begins with it: ``Guests sit down``, `` `Roast squash soup` starts``. */
    readonly what: string;
    readonly meaning: Meaning;
}

/** Every time of day of the plan, in the order in which the language puts them. */
export function statedTimes({ event, menu }: Plan): StatedTime[] {
    const stated = (time: ClockTime | undefined, what: string, meaning: Meaning = 'near'): StatedTime[] =>
        time ? [{ time, what, meaning }] : [];
    return [
        ...stated(event?.doors, 'The doors open', 'doors'),
        ...stated(event?.seated, 'Guests sit down'),
        ...stated(event?.crew?.at, 'The crew eats'),
        ...(menu?.courses ?? []).flatMap((course) => stated(course.startsAt?.time, `\`${course.title}\` starts`)),
        ...(menu?.speeches ?? []).flatMap((speech) =>
            stated(speech.at, `${speech.title ? `\`${speech.title}\`` : `The ${speech.sort}`} begins`),
        ),
        ...stated(event?.ends, 'The evening ends', 'end'),
    ];
}
