/** What an evening can be computed with. Beyond it a figure is a slip, and what follows from it would be told as if it were true. */
import { ROOM_AIR } from './service/heat/air.js';
import { MOST_OF_A_ROLE } from './service/run/team-of-plan.js';
import type { Otherwise } from './what-if.js';

/** Guests of one evening. Common practice, no source. */
const MOST_GUESTS = 5000;

/** How late guests sit down at the most, min; then it is another event. Common practice, no source. */
const LATEST = 6 * 60;

/** @returns what is wrong with the first figure that is out of reach, with the limits */
export function outOfReach({
    guests,
    guaranteed,
    setFor,
    people,
    late,
    roomTemperature,
}: Otherwise): string | undefined {
    const isWithin = (value: number | undefined, [low, high]: Reach): boolean =>
        value === undefined || (value >= low && value <= high);
    const counts: readonly (readonly [value: number | undefined, reach: Reach, said: string])[] = [
        [guests, [1, MOST_GUESTS], 'Guests'],
        [guaranteed, [0, MOST_GUESTS], 'Guests guaranteed'],
        [setFor, [1, MOST_GUESTS], 'Places set'],
        ...Object.entries(people ?? {}).map(
            ([role, count]) =>
                [
                    count,
                    [0, MOST_OF_A_ROLE],
                    role.replace(/^./, (first) => first.toUpperCase()).replaceAll('-', ' '),
                ] as const,
        ),
    ];
    const wrong = counts.find(
        ([value, reach]) => !isWithin(value, reach) || (value !== undefined && !Number.isInteger(value)),
    );
    if (wrong) {
        const [value, [low, high], said] = wrong;
        return `${said}: ${value} is out of reach. It has to be a whole number from ${low} to ${high}.`;
    }
    if (!isWithin(late, [-LATEST, LATEST])) {
        return `Guests can sit down at most ${LATEST / 60} h later than planned. For more, write another hour into the plan.`;
    }
    if (!isWithin(roomTemperature, [ROOM_AIR.coldest, ROOM_AIR.warmest])) {
        return `No guests sit in a room of ${roomTemperature} °C. Its air has to be from ${ROOM_AIR.coldest} to ${ROOM_AIR.warmest} °C.`;
    }
    return undefined;
}

type Reach = readonly [low: number, high: number];
