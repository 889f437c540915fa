/**
 * The one way the language sees files. Paths are workspace-relative with forward slashes, such as `events/supper.cover`.
 * Node, the editor and a browser each give an implementation; reading is synchronous over what they hold.
 */
export interface Files {
    read(path: string): FileText;
}

/** A file, as far as it could be read. */
export type FileText =
    | { readonly state: 'read'; readonly text: string }
    | { readonly state: 'missing' }
    /** There, but not to be read: `why` is a short phrase such as `it is a folder` or `no permission`. */
    | { readonly state: 'unreadable'; readonly why: string };

/**
 * Files held in memory: for tests, examples, and the browser.
 * @param texts by path
 */
export function filesInMemory(texts: Readonly<Record<string, string>>): Files {
    return {
        read: (path) => {
            const text = Object.hasOwn(texts, path) ? texts[path] : undefined;
            return text === undefined ? { state: 'missing' } : { state: 'read', text };
        },
    };
}

/**
 * The path that `written` in the file `from` leads to, or `undefined` where it leaves the workspace or is absolute.
 * @param from workspace-relative path of the file that speaks
 * @param written as it stands in that file, such as `../house.cover`
 */
export function resolvePath(from: string, written: string): string | undefined {
    if (/^([A-Za-z]:|[\\/])/.test(written)) {
        return undefined;
    }
    const parts = from.split('/').slice(0, -1);
    for (const part of written.replaceAll('\\', '/').split('/')) {
        if (part === '..') {
            if (parts.length === 0) {
                return undefined;
            }
            parts.pop();
        } else if (part !== '.' && part !== '') {
            parts.push(part);
        }
    }
    return parts.join('/');
}
