/** Work before it has times: plain data, for the scheduler. */

/** One piece of a task that one person, or a few together, do without a break. */
export interface Part {
    /** min */
    readonly minutes: number;
    /** Index of the pool of people; absent where nobody of the team is needed. */
    readonly pool?: number;
    /** People it takes at once. */
    readonly units: number;
    /** Where it is done; absent for what is done in the back. */
    readonly table?: string;
    /** Earliest start; only of the strike. */
    readonly release?: number;
    /** min², of a task of uncertain length. */
    readonly variance?: number;
}

export interface Link {
    /** Index of a task. */
    readonly task: number;
    /** `whole`: when all of it is done; `table`: when it is done at the same table; `share`: when as much of it is done as the part takes. */
    readonly how: 'whole' | 'table' | 'share';
}

export interface TaskDraft {
    readonly title: string;
    readonly stated?: number;
    readonly because: string;
    readonly parts: readonly Part[];
    readonly after: readonly Link[];
}

/** People who can do the same work. */
export interface Pool {
    readonly role: string;
    readonly count: number;
    /** Of the team that serves: it is briefed, lines up and eats together. Others are the kitchen's, or the dish machine. */
    readonly isOfTheFloor: boolean;
    /** Nobody: the dish machine. */
    readonly isMachine?: boolean;
    /** Named by tasks and not in the team: a florist's people, the hire firm's. They are there for their tasks only. */
    readonly isFromOutside?: boolean;
}
