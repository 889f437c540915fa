/** The plans in a folder. A file of its own, for what looks through folders is loaded only where one is named. */
import { resolve } from 'node:path';
import { glob } from 'tinyglobby';
import { CannotRun } from './cannot-run.js';
import { EXTENSION } from './cover-file.js';
import { withoutIgnored } from './git-ignored.js';

/** Looked through only when named. */
export const SKIPPED_FOLDERS = ['**/node_modules/**', '**/.*/**'];

/**
 * The files of a folder that match, in the order of their names, without those that git ignores.
 * @param patterns globs with forward slashes; left out, every plan
 * @returns absolute paths
 * @throws CannotRun where there is none
 */
export async function coverFiles(folder: string, patterns?: string[]): Promise<readonly string[]> {
    const found = await glob(patterns ?? [`**/*${EXTENSION}`], {
        cwd: folder,
        ignore: SKIPPED_FOLDERS,
        onlyFiles: true,
        expandDirectories: false,
        followSymbolicLinks: false,
    });
    const base = resolve(folder);
    const wanted = withoutIgnored(
        base,
        found.sort().map((inner) => resolve(base, inner)),
    );
    if (wanted.length === 0) {
        throw new CannotRun(
            patterns ? `No file matches \`${patterns.join(' ')}\`.` : `There is no ${EXTENSION} file in \`${folder}\`.`,
        );
    }
    return wanted;
}
