import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Files } from 'underliner-language';

/** The files of this repository, by their paths in it. */
export const workspace: Files = {
    read(path) {
        try {
            return {
                state: 'read',
                text: readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8'),
            };
        } catch {
            return { state: 'missing' };
        }
    },
};
