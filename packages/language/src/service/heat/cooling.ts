/** Cooling cooked food down, in stages, as food codes ask for it (temperature S4). */
import type { LocalCode } from '../../plan/cupboard.js';

/** Cooled to so much in so long, each from the stage before. °C and min. */
export interface Stage {
    readonly celsius: number;
    readonly minutes: number;
}

/** By when a code wants food to be how cold: 21 °C within 2 h, 5 °C within 6 h in all. */
export interface CoolingLimits {
    readonly first: Stage;
    readonly last: Stage;
}

export type CoolingFault =
    /** It is past the warm part too late, or nothing says when it is. */
    | 'first-late'
    | 'first-unknown'
    /** It is cold too late, or never as cold as it has to be. */
    | 'last-late'
    | 'never-cold';

/** @returns `undefined` where the code gives no figures */
export function coolingLimits({ figures }: LocalCode): CoolingLimits | undefined {
    const first = figures['cooling-first'];
    const firstTime = figures['cooling-first-time'];
    const last = figures['cooling-last'];
    const lastTime = figures['cooling-last-time'];
    return first && firstTime && last && lastTime
        ? {
              first: { celsius: first.high, minutes: firstTime.high },
              last: { celsius: last.high, minutes: lastTime.high },
          }
        : undefined;
}

/** Codes print whole degrees: 70 °F is 21 °C and 41 °F is 5 °C there, so a tenth more does not break one. */
const PRINTED = 0.15;

/** What is wrong with a way of cooling, and after which stage; `undefined` where it keeps both limits. */
export function judgeCooling(
    stages: readonly Stage[],
    { first, last }: CoolingLimits,
): { readonly fault: CoolingFault; readonly stage: number; readonly minutes: number } | undefined {
    let minutes = 0;
    const reached = stages.map((stage) => ({ celsius: stage.celsius, minutes: (minutes += stage.minutes) }));
    const isAt = (celsius: number) => (stage: Stage) => stage.celsius <= celsius + PRINTED;
    const cool = reached.findIndex(isAt(first.celsius));
    const cold = reached.findIndex(isAt(last.celsius));
    const at = (fault: CoolingFault, stage: number) => ({ fault, stage, minutes: reached[stage]!.minutes });
    if (stages.length === 0) {
        return undefined;
    }
    if (cool >= 0 && reached[cool]!.minutes > first.minutes) {
        // One stage that goes on to cold passes the warm part somewhere on its way.
        const isPassedThrough = reached[cool]!.celsius < first.celsius - 1;
        return at(isPassedThrough ? 'first-unknown' : 'first-late', cool);
    }
    if (cold < 0) {
        return at('never-cold', stages.length - 1);
    }
    return reached[cold]!.minutes > last.minutes ? at('last-late', cold) : undefined;
}
