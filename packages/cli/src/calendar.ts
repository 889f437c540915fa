import { calendar } from 'underliner-language';
import { CannotRun } from './cannot-run.js';
import { eventToCarry, type CarryOptions } from './event-to-carry.js';
import { writeMade } from './made.js';
import { oneInput } from './inputs.js';

export interface CalendarOptions extends CarryOptions {
    readonly calls?: boolean;
    readonly alarm?: number;
    readonly stdinName?: string;
    readonly root?: string;
}

/** `underliner calendar`: the evening, or each of its calls, for a calendar. Writes nothing while something is wrong. */
export function runCalendar(path: string, options: CalendarOptions): number {
    const checked = eventToCarry(oneInput(path, options), options, 'calendar');
    if (typeof checked === 'number') {
        return checked;
    }
    const made = calendar(checked, { calls: options.calls ?? false, alarm: options.alarm });
    if (typeof made === 'string') {
        throw new CannotRun(made);
    }
    writeMade(made.text, options);
    return 0;
}
