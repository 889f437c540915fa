import { join } from 'node:path';
import type { Checked } from 'underliner-language';
import { fixAll } from 'underliner-language/editor';
import { shownPath, type Input } from './inputs.js';
import { writeResult } from './output.js';
import { rewriteText } from './write-file.js';

/** Applies the fixes and writes each changed file; the text of standard input goes to stdout. */
export function fix(input: Input, widest: 'safe' | 'unsafe'): { checked: Checked; applied: number } {
    const { texts, applied, checked } = fixAll(input.file, input.files, widest);
    for (const [file, text] of texts) {
        if (!(input.isStandardInput && file === input.file)) {
            const path = join(input.files.root, file);
            rewriteText(path, text, shownPath(path));
        }
        input.files.put(file, text);
    }
    if (input.isStandardInput) {
        writeResult(texts.get(input.file) ?? input.text);
    }
    return { checked, applied: applied.length };
}
