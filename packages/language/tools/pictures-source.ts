/** What the picture generator needs of the language, in one module for `load-source.mjs`. */
import type { Checked } from '../src/check.js';
import { applyEdits, editsOf } from '../src/editor/fixes.js';
import type { Files } from '../src/plan/files.js';

export { check } from '../src/check.js';
export { drawEvening } from '../src/output/drawing/draw-evening.js';
export { coverPicture } from '../src/output/drawing/pictures.js';

/** The files as they are once the first fix of the first finding has been applied. */
export function firstFixOf({ findings, texts }: Checked, files: Files): Files {
    const edits = editsOf(findings[0]!.fixes[0]!, (path) => texts.get(path));
    return {
        read: (path) => {
            const found = files.read(path);
            const changes = edits.get(path);
            return found.state === 'read' && changes ? { state: 'read', text: applyEdits(found.text, changes) } : found;
        },
    };
}
