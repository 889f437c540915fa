/** Time as the control: how long food may stand warmer than cold and cooler than hot (temperature S6, S7, 2.3). */
import type { Figure, LocalCode } from '../../plan/cupboard.js';

export interface OffControl {
    readonly side: 'hot' | 'cold';
    /** The warmest it gets meanwhile, °C. */
    readonly warmest: number;
    /** Since it left its control. */
    readonly minutes: number;
}

export interface OffControlLimit {
    readonly figure: Figure;
    /** A longer time that cold food would have if it stayed this cool, °C. */
    readonly orIfBelow?: number;
}

/** Codes print 70 °F as 21 °C. */
const PRINTED = 0.15;

/**
 * The longest time the code allows: for cold food the longer one only while it stays as cool as that asks.
 * @returns `undefined` where the code knows no time as the control
 */
export function offControlLimit({ figures }: LocalCode, { side, warmest }: OffControl): OffControlLimit | undefined {
    const usual = figures['off-control-time'];
    const cold = side === 'cold' ? figures['off-control-cold-time'] : undefined;
    const most = figures['off-control-cold-most'];
    if (cold && (!most || warmest <= most.high + PRINTED)) {
        return { figure: cold };
    }
    return usual && { figure: usual, ...(cold && most && { orIfBelow: most.high }) };
}

/** Whether food may still be served. */
export function isWithinTime(limit: OffControlLimit, { minutes }: OffControl): boolean {
    return minutes <= limit.figure.high;
}
