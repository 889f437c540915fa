import { statSync } from 'node:fs';
import { dirname } from 'node:path';
import { watch } from 'chokidar';
import { CannotRun } from './cannot-run.js';
import { runCheck, type CheckOptions } from './check.js';
import { STANDARD_INPUT } from './inputs.js';
import { writeTalk } from './output.js';

/** Files are quiet when nothing has changed for so long, ms: an editor may write a file in several steps. */
const QUIET = 100;

/** `underliner check --watch`: checks again whenever files change, until it is stopped. One summary a round. */
export async function runWatch(paths: readonly string[], options: CheckOptions): Promise<number> {
    if (paths.includes(STANDARD_INPUT)) {
        throw new CannotRun('Standard input can’t be watched. Name files or folders.');
    }
    const round = async (): Promise<void> => {
        try {
            await runCheck(paths, options);
        } catch (failure) {
            if (!(failure instanceof CannotRun)) {
                throw failure;
            }
            // A file may be gone for a moment, or for good: it is looked for again when something changes.
            writeTalk(`underliner: ${failure.message}\n`);
        }
        writeTalk('Watching for changes; stop with Ctrl+C.\n');
    };
    await round();
    // A plan's house and recipes lie beside it more often than not, so that its folder is watched and not the file alone.
    const folders = paths.map((path) =>
        statSync(path, { throwIfNoEntry: false })?.isDirectory() ? path : dirname(path),
    );
    const watcher = watch(folders, {
        ignoreInitial: true,
        atomic: true,
        ignored: /(^|[\\/])(node_modules|\.[^\\/.][^\\/]*)([\\/]|$)/,
    });
    return new Promise((resolve, reject) => {
        let timer: NodeJS.Timeout | undefined;
        let work = Promise.resolve();
        watcher.on('all', () => {
            clearTimeout(timer);
            timer = setTimeout(() => {
                work = work.then(round).catch(reject);
            }, QUIET);
        });
        process.once('SIGINT', () => {
            clearTimeout(timer);
            void watcher.close().then(() => resolve(0));
        });
    });
}
