/** How an evening differs from the plan: what chance decides. */

export interface Draws {
    /** Where a table's eating time lies in its spread, -1 to 1; 0 as planned. */
    readonly eating: () => number;
    /** By how much a trip through the room is slower or faster, -1 to 1 of its spread; 0 as planned. */
    readonly trip: () => number;
}

export const AS_PLANNED: Draws = { eating: () => 0, trip: () => 0 };
