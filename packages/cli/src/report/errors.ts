import type { Checked } from 'underliner-language';
import { palette, wantsColor, type ColorChoice } from '../colors.js';
import type { Input } from '../inputs.js';
import { writeTalk } from '../output.js';
import { inOrder, Locator } from './located.js';
import { describe } from './text.js';

/**
 * Tells the findings of error severity that stand in the way of what a command makes.
 * @returns `2 errors`; nothing where there are none
 */
export function tellErrors(input: Input, checked: Checked, color: ColorChoice): string | undefined {
    const errors = checked.findings.filter(({ severity }) => severity === 'error');
    if (errors.length === 0) {
        return undefined;
    }
    const colors = palette(wantsColor(color, 2));
    const located = inOrder(new Locator(input.files.root, process.cwd(), checked).findings(errors));
    writeTalk(located.map((found) => describe(found, colors)).join('\n'));
    return errors.length === 1 ? '1 error' : `${errors.length} errors`;
}
