/** The command can't do what was asked: wrong usage, or a file that can't be read or written. Ends it with exit code 2. */
export class CannotRun extends Error {
    override name = 'CannotRun';
}

/** Tells it by its name: each bundle of the program has the class anew. */
export function isCannotRun(failure: unknown): failure is CannotRun {
    return failure instanceof Error && failure.name === 'CannotRun';
}
