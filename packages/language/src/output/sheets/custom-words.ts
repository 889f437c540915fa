import { customSpecs, type CustomName } from '../../plan/customs.js';
import type { Plan } from '../../plan/types.js';

/** What the house's choice means, in the words of the custom: `from the left` for `serve-from: left`. */
export function plainChoice(name: CustomName, customs: Plan['customs']): string {
    const spec = customSpecs.find((each) => each.name === name);
    const { value } = customs[name];
    return spec?.choices?.find((choice) => choice.value === value)?.means ?? String(value);
}
