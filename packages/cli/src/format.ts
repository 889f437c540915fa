import { formatText } from 'underliner-language/editor';
import { palette, wantsColor, type ColorChoice, type Palette } from './colors.js';
import { CANNOT_RUN } from './faults.js';
import { allInputs, type Input } from './inputs.js';
import { writeResult, writeTalk } from './output.js';
import { Lines } from './report/lines.js';
import { rewriteText } from './write-file.js';

export interface FormatOptions {
    readonly check?: boolean;
    readonly diff?: boolean;
    readonly stdinName?: string;
    readonly root?: string;
    readonly color: ColorChoice;
}

/** `underliner format`: one layout for every file. A file that can't be read to its end is left as it is. */
export async function runFormat(paths: readonly string[], options: FormatOptions): Promise<number> {
    const writesNothing = options.check === true || options.diff === true;
    const colors = palette(wantsColor(options.color, 1));
    let changed = 0;
    let unreadable = 0;
    const { inputs, unread } = await allInputs(paths, options);
    for (const input of inputs) {
        const formatted = formatText(input.text);
        if ('problems' in formatted) {
            unreadable++;
            tellUnreadable(input, formatted.problems);
            // A filter gives back what it can't do anything with.
            if (input.isStandardInput && !writesNothing) {
                writeResult(input.text);
            }
            continue;
        }
        const isChanged = formatted.text !== input.text;
        changed += isChanged ? 1 : 0;
        if (writesNothing) {
            if (isChanged) {
                writeResult(options.diff ? await patch(input, formatted.text, colors) : `${input.shown}\n`);
            }
        } else if (input.isStandardInput) {
            writeResult(formatted.text);
        } else if (isChanged) {
            rewriteText(input.path, formatted.text, input.shown);
            writeTalk(`${input.shown} laid out.\n`);
        }
    }
    return unread > 0 ? CANNOT_RUN : unreadable > 0 || (writesNothing && changed > 0) ? 1 : 0;
}

/** Says where the first thing stands that can't be read. */
function tellUnreadable(
    { shown, text }: Input,
    [first]: readonly { readonly start: number; readonly message: string }[],
): void {
    const { line, column } = new Lines(text).at(first?.start ?? 0);
    writeTalk(`${shown}:${line}:${column}: left as it is. ${first?.message ?? ''}\n`);
}

async function patch({ shown, text }: Input, formatted: string, colors: Palette): Promise<string> {
    const { createTwoFilesPatch, FILE_HEADERS_ONLY } = await import('diff');
    const written = createTwoFilesPatch(shown, shown, text, formatted, undefined, undefined, {
        headerOptions: FILE_HEADERS_ONLY,
    });
    return written.replace(/^[+-].*$/gm, (line) => (line.startsWith('+') ? colors.added(line) : colors.removed(line)));
}
