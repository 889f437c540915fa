/** Times that nobody knows exactly, given by three points, and the chance that a chain of them is done in time. */

export interface ThreePoints {
    readonly least: number;
    readonly likely: number;
    readonly most: number;
}

/** (a + 4m + b) / 6 (quantities §9, PERT). */
export function expectedTime({ least, likely, most }: ThreePoints): number {
    return (least + 4 * likely + most) / 6;
}

/** ((b − a) / 6)², in the square of the unit of time (quantities §9, PERT). */
export function varianceOfTime({ least, most }: ThreePoints): number {
    return ((most - least) / 6) ** 2;
}

/**
 * The chance that a time with this mean and variance is at most `limit`, taken as normal, as PERT does for a long chain.
 * @returns 0–1; without variance 0 or 1
 */
export function chanceWithin(limit: number, mean: number, variance: number): number {
    if (variance <= 0) {
        return limit >= mean ? 1 : 0;
    }
    return normal((limit - mean) / Math.sqrt(variance));
}

/** Distribution of the standard normal, by the series φ(z)·(z + z³/3 + z⁵/15 + …), which converges for every z. */
function normal(z: number): number {
    // Beyond, a double can't tell the answer from 0 or 1.
    if (Math.abs(z) > 8) {
        return z < 0 ? 0 : 1;
    }
    let sum = z;
    let term = z;
    for (let odd = 3; sum + term !== sum; odd += 2) {
        term *= (z * z) / odd;
        sum += term;
    }
    return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}
