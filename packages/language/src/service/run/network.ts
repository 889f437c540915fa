/** What is to be done, in what order and by whom: the input of the scheduler. Times in one unit, whatever it is; the plan uses minutes. */

export interface Activity {
    /** Time it takes, ≥ 0. For a piece that passes a line of several stations, the time at each, in order. */
    readonly duration: number | readonly number[];
    /** Earliest start. Without it, what it comes after decides, else time 0. */
    readonly release?: number;
    /** Indices of the activities it comes after; a bare index means after their end. */
    readonly after?: readonly (number | Precedence)[];
    /** Index of the pool that does it; without one it needs nobody and waits for nobody, such as guests eating. */
    readonly pool?: number;
    /** How many of the pool it takes at once; 1 where it doesn't say. */
    readonly units?: number;
}

export interface Precedence {
    readonly activity: number;
    /** Whether its start or its end counts. */
    readonly from: 'start' | 'end';
    /** Time that must pass from then on, ≥ 0. */
    readonly lag: number;
}

export interface Network {
    readonly activities: readonly Activity[];
    /** Units of each pool: people, or lines of stations. */
    readonly pools: readonly number[];
}

export function precedence(link: number | Precedence): Precedence {
    return typeof link === 'number' ? { activity: link, from: 'end', lag: 0 } : link;
}

/** The time an activity takes when it waits for nobody: at a line, all its stations. */
export function durationOf({ duration }: Activity): number {
    return typeof duration === 'number' ? duration : duration.reduce((sum, time) => sum + time, 0);
}

/** Each activity after all that it comes after; among those free to choose, in the order written. */
export interface Order {
    readonly order: readonly number[];
    /** Activities that wait for each other in a circle, each after the one before it; such activities and all after them have no order. */
    readonly circle?: readonly number[];
}

export function inOrder({ activities }: Network): Order {
    const followers: number[][] = activities.map(() => []);
    const waitsFor = activities.map(({ after = [] }, index) => {
        for (const link of after) {
            followers[precedence(link).activity]!.push(index);
        }
        return after.length;
    });
    const order = activities.flatMap((_, index) => (waitsFor[index] === 0 ? [index] : []));
    for (const done of order) {
        for (const follower of followers[done]!) {
            waitsFor[follower]! -= 1;
            if (waitsFor[follower] === 0) {
                order.push(follower);
            }
        }
    }
    return order.length === activities.length ? { order } : { order, circle: findCircle(activities, waitsFor) };
}

/** From an activity that waits, back through what it waits for, until one comes round again. */
function findCircle(activities: readonly Activity[], waitsFor: readonly number[]): number[] {
    const way: number[] = [];
    let next = waitsFor.findIndex((count) => count > 0);
    while (!way.includes(next)) {
        way.push(next);
        next = activities[next]!.after!.map((link) => precedence(link).activity).find((each) => waitsFor[each]! > 0)!;
    }
    return way.slice(way.indexOf(next)).toReversed();
}
