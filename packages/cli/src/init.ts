import { mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { CannotRun } from './cannot-run.js';
import { writeTalk } from './output.js';
import { writeWhole } from './write-file.js';

/** Shipped beside the program. */
const STARTER_FOLDER = join(__dirname, '..', 'starter');

/** `underliner init`: a first house and a first event, explained by comments. Never overwrites. */
export function runInit(folder: string): number {
    const starters = readdirSync(STARTER_FOLDER).sort();
    const files = starters.map((name) => ({ name, path: join(folder, name) }));
    const there = files.filter(({ path }) => statSync(path, { throwIfNoEntry: false }) !== undefined);
    if (there.length > 0) {
        throw new CannotRun(
            `${there.map(({ path }) => `\`${path}\``).join(' and ')} would be overwritten: nothing was written.`,
        );
    }
    try {
        mkdirSync(folder, { recursive: true });
    } catch {
        throw new CannotRun(`The folder \`${folder}\` can't be made.`);
    }
    for (const { name, path } of files) {
        writeWhole(path, readFileSync(join(STARTER_FOLDER, name), 'utf8'), path);
        writeTalk(`Wrote ${path}\n`);
    }
    writeTalk(`Next: underliner check ${folder}\n`);
    return 0;
}
