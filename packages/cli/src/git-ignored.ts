/** Which files git leaves alone, by the `.gitignore` of every folder and by the repository's own list. */
import { readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import ignore, { type Ignore } from 'ignore';
import { pathInside } from 'underliner-language/node';

/** Where the disk does not tell capitals from small letters, neither does git. */
const IGNORES_CASE = process.platform === 'win32' || process.platform === 'darwin';

/**
 * The files of a folder that git would not ignore. All of them where the folder is in no repository, or is one that git ignores:
 * whoever names it means it. A file that is ignored and committed all the same counts as ignored; what the user keeps in a list
 * of their own, outside the repository, is not asked.
 * @param folder absolute
 * @param files absolute paths inside it
 */
export function withoutIgnored(folder: string, files: readonly string[]): readonly string[] {
    const root = repositoryOf(folder);
    if (root === undefined) {
        return files;
    }
    const lists = new Lists(root);
    return isIgnored(lists, pathInside(root, folder)!, true)
        ? files
        : files.filter((file) => !isIgnored(lists, pathInside(root, file)!, false));
}

function repositoryOf(folder: string): string | undefined {
    if (statSync(join(folder, '.git'), { throwIfNoEntry: false })) {
        return folder;
    }
    return dirname(folder) === folder ? undefined : repositoryOf(dirname(folder));
}

/** @param path from the root, with forward slashes; `''` is the root */
function isIgnored(lists: Lists, path: string, isFolder: boolean): boolean {
    const names = path === '' ? [] : path.split('/');
    // What lies in an ignored folder can't be taken back, so the folders come first.
    return names.some((_, index) => {
        const part = names.slice(0, index + 1);
        return verdict(lists, part, isFolder || index < names.length - 1);
    });
}

/** What the nearest list says that says anything. */
function verdict(lists: Lists, names: readonly string[], isFolder: boolean): boolean {
    for (let depth = names.length - 1; depth >= 0; depth--) {
        const from = names.slice(depth).join('/') + (isFolder ? '/' : '');
        for (const list of lists.of(names.slice(0, depth).join('/'))) {
            const { ignored, unignored } = list.test(from);
            if (ignored || unignored) {
                return ignored;
            }
        }
    }
    return false;
}

/** The lists of a repository, each read once. */
class Lists {
    readonly #root: string;
    readonly #read = new Map<string, readonly Ignore[]>();

    constructor(root: string) {
        this.#root = root;
    }

    /** Those that lie in a folder, the one that counts first. @param folder from the root, with forward slashes */
    of(folder: string): readonly Ignore[] {
        let lists = this.#read.get(folder);
        if (lists === undefined) {
            const paths = [join(folder, '.gitignore'), ...(folder === '' ? ['.git/info/exclude'] : [])];
            lists = paths.flatMap((path) => this.#list(path));
            this.#read.set(folder, lists);
        }
        return lists;
    }

    #list(path: string): Ignore[] {
        try {
            return [ignore({ ignorecase: IGNORES_CASE }).add(readFileSync(join(this.#root, path), 'utf8'))];
        } catch {
            // None there, or none that can be read: git goes on without it as well.
            return [];
        }
    }
}
