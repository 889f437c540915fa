/** Whose figure a rule of food safety goes by where the code in force is silent. */
import type { LocalCode } from '../plan/cupboard.js';
import type { Plan } from '../plan/types.js';
import { quoted } from './wording.js';

export interface FromCode<Value> {
    readonly value: Value;
    readonly code: LocalCode;
    /** `US model Food Code`, `US model Food Code, as Canada gives no figure`. */
    readonly by: string;
}

/** What the code in force says, else the model code, which is the fullest. */
export function codeWith<Value>(
    { code, cupboard }: Plan,
    of: (code: LocalCode) => Value | undefined,
): FromCode<Value> | undefined {
    const own = of(code);
    if (own !== undefined) {
        return { value: own, code, by: called(code) };
    }
    const model = cupboard.codes.get('us-model');
    const value = model && of(model);
    return model && value !== undefined
        ? { value, code: model, by: `${called(model)}, as ${called(code)} gives no figure` }
        : undefined;
}

function called({ called: words, name }: LocalCode): string {
    return words ?? quoted(name);
}
