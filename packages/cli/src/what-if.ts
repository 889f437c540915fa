import {
    check,
    restOfEvening,
    tellCalls,
    tellCallsInMarkdown,
    tellChanges,
    tellChangesInMarkdown,
    whatIf,
    type Otherwise,
} from 'underliner-language';
import { CannotRun } from './cannot-run.js';
import { CANNOT_RUN, tellFaults } from './faults.js';
import type { ChangeFormat } from './formats.js';
import { oneInput } from './inputs.js';
import { writeResult } from './output.js';
import { runningEvening } from './running-evening.js';

export interface WhatIfOptions {
    readonly guests?: number;
    readonly guaranteed?: number;
    readonly setFor?: number;
    readonly servers?: number;
    readonly runners?: number;
    readonly lines?: number;
    readonly late?: number;
    readonly room?: number;
    readonly at?: number;
    readonly done?: string;
    readonly format: ChangeFormat;
    readonly stdinName?: string;
    readonly root?: string;
}

/** `underliner what-if`: computes an event again with some figures changed and says what is different. Writes nothing. */
export function runWhatIf(path: string, options: WhatIfOptions): number {
    const input = oneInput(path, options);
    const checked = check(input.file, input.files);
    if (tellFaults(input.shown, checked) > 0) {
        return CANNOT_RUN;
    }
    const answer = whatIf(checked, asked(options));
    if (typeof answer === 'string') {
        throw new CannotRun(answer);
    }
    const calls = options.at === undefined ? [] : restOfEvening(answer.checked);
    const { caution, changes } = answer;
    const nothing = 'Nothing changes for anybody.';
    writeResult(
        {
            text: () =>
                (caution === undefined ? '' : `${caution}\n\n`) +
                (calls.length > 0 ? `${tellCalls(calls)}\n` : '') +
                tellChanges(changes, nothing),
            markdown: () =>
                (caution === undefined ? '' : `> ${caution}\n\n`) +
                (calls.length > 0 ? `${tellCallsInMarkdown(calls)}\n` : '') +
                tellChangesInMarkdown(changes, nothing),
            json: () => `${JSON.stringify({ caution, calls, changes }, undefined, 4)}\n`,
        }[options.format](),
    );
    return 0;
}

function asked(options: WhatIfOptions): Otherwise {
    const { guests, guaranteed, setFor, servers, runners, lines, late, room, at, done } = options;
    const people = { servers, runners, 'plating-lines': lines };
    const stated = Object.fromEntries(Object.entries(people).filter(([, count]) => count !== undefined));
    const otherwise: Otherwise = {
        guests,
        guaranteed,
        setFor,
        people: stated as Record<string, number>,
        late,
        roomTemperature: room,
        underway: runningEvening(at, done),
    };
    const isAsked = Object.entries(otherwise).some(([name, value]) => value !== undefined && name !== 'people');
    if (!isAsked && Object.keys(stated).length === 0) {
        throw new CannotRun('Say what is different, such as `--guests 96` or `--late 15min`.');
    }
    return otherwise;
}
