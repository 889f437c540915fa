import type { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import type { Disk } from './disk.js';
import { Folder } from './folder.js';

/** A file by the folder it belongs to and its path there. */
export interface Place {
    readonly folder: Folder;
    readonly path: string;
}

/** Who is told how far the first reading of folders is, and may stop it. */
export interface FolderReading {
    found(files: number): void;
    /** Waited for, so that the wish to stop can arrive. */
    hasRead(files: number): Promise<void>;
    readonly isStopped: boolean;
}

/** So many files are read at a time. */
const AT_A_TIME = 50;

/** What a change of texts has touched. */
export interface Touched {
    readonly folder: Folder;
    /** Plans to look at again. */
    readonly plans: readonly string[];
    /** Files whose findings may be others now. */
    readonly files: readonly string[];
}

/**
 * The workspace folders and the documents that are open. A document outside all of them makes its own folder a workspace;
 * one that was never saved stands at the top of the first folder.
 */
export class Workspace {
    private readonly folders = new Map<string, Folder>();
    /** Folders of documents that are in none of the workspace's. */
    private readonly loose = new Map<string, Folder>();
    private readonly places = new Map<string, Place>();
    /** The reading of each file that was begun last: what an older one brings is of yesterday. */
    private readonly readings = new Map<Folder, Map<string, symbol>>();
    private readonly listeners: ((touched: Touched) => void)[] = [];

    constructor(private readonly disk: Disk) {}

    onTouched(listener: (touched: Touched) => void): void {
        this.listeners.push(listener);
    }

    get all(): readonly Folder[] {
        return [...this.folders.values(), ...this.loose.values()];
    }

    // ---------------------------------------------------------------- folders
    /** Reads a folder's plans. Open documents that it holds move into it. */
    async addFolder(uri: string, reading?: FolderReading): Promise<void> {
        const key = withoutSlash(uri);
        if (this.folders.has(key)) {
            return;
        }
        const folder = new Folder(key);
        this.folders.set(key, folder);
        for (const place of [...this.places.values()]) {
            const document = place.folder.documentOf(place.path);
            if (document && this.locate(document.uri).folder !== place.folder) {
                this.close(document.uri);
                this.open(document);
            }
        }
        const paths = await this.disk.list(key);
        if (this.folders.get(key) !== folder) {
            return;
        }
        reading?.found(paths.length);
        const isWanted = (): boolean => this.folders.get(key) === folder && reading?.isStopped !== true;
        for (let from = 0; from < paths.length && isWanted(); from += AT_A_TIME) {
            const some = paths.slice(from, from + AT_A_TIME);
            await Promise.all(some.map((path) => this.fetch({ folder, path })));
            await reading?.hasRead(some.length);
        }
    }

    removeFolder(uri: string): void {
        const folder = this.folders.get(withoutSlash(uri));
        if (!folder) {
            return;
        }
        this.folders.delete(folder.uri);
        this.dismiss(folder);
    }

    /** Of a folder that is no longer looked at the findings go; documents that are still open go where they belong now. */
    private dismiss(folder: Folder): void {
        const files = folder.plans;
        const open = files
            .filter((path) => folder.isOpen(path))
            .flatMap((path) => folder.documentOf(path) ?? [])
            .filter(({ uri }) => this.places.has(uri));
        for (const path of files) {
            folder.closed(path);
            folder.forget(path);
        }
        this.readings.delete(folder);
        this.emit({ folder, plans: [], files });
        open.forEach((document) => this.open(document));
    }

    // ---------------------------------------------------------------- documents
    /** Where a document belongs. */
    locate(uri: string): Place {
        const parsed = URI.parse(uri);
        const key = parsed.toString();
        const within = [...this.folders.values()].filter((folder) =>
            key.startsWith(`${URI.parse(folder.uri).toString()}/`),
        );
        const home = within.sort((a, b) => b.uri.length - a.uri.length)[0];
        if (home) {
            return { folder: home, path: decode(key.slice(URI.parse(home.uri).toString().length + 1)) };
        }
        const first = this.folders.values().next().value;
        if (parsed.scheme === 'untitled' && first) {
            return { folder: first, path: parsed.path.replace(/^\//, '') };
        }
        const slash = key.lastIndexOf('/');
        const own = slash < 0 ? key.slice(0, key.indexOf(':') + 1) : key.slice(0, slash);
        const folder = this.loose.get(own) ?? new Folder(own);
        this.loose.set(own, folder);
        return { folder, path: decode(key.slice(own.length).replace(/^\//, '')) };
    }

    open(document: TextDocument): void {
        const place = this.locate(document.uri);
        this.places.set(document.uri, place);
        place.folder.opened(place.path, document);
        this.touch(place);
    }

    change(document: TextDocument): void {
        const place = this.places.get(document.uri);
        if (place) {
            place.folder.opened(place.path, document);
            this.touch(place);
        }
    }

    /** What was not saved is gone with the document: the disk's text stands again. */
    close(uri: string): void {
        const place = this.places.get(uri);
        if (!place) {
            return;
        }
        this.places.delete(uri);
        const { folder, path } = place;
        if (this.loose.get(folder.uri) === folder) {
            // Outside the workspace only what is open is looked at, and what that uses.
            this.loose.delete(folder.uri);
            this.dismiss(folder);
            return;
        }
        folder.closed(path);
        this.touch(place);
        if (URI.parse(uri).scheme !== 'untitled') {
            void this.fetch(place);
        }
    }

    // ---------------------------------------------------------------- the disk
    /** A file or folder came or was changed outside the editor. */
    async changedOnDisk(uri: string): Promise<void> {
        const { folder, path } = this.locate(uri);
        if (path.endsWith('.cover') || folder.isHeld(path)) {
            await this.fetch({ folder, path });
        } else if (!/\.[^/]*$/.test(path)) {
            const inside = (await this.disk.list(folder.uri)).filter((each) => each.startsWith(`${path}/`));
            await Promise.all(inside.map((each) => this.fetch({ folder, path: each })));
        }
    }

    deletedOnDisk(uri: string): void {
        const { folder, path } = this.locate(uri);
        for (const each of this.readings.get(folder)?.keys() ?? []) {
            if (each === path || each.startsWith(`${path}/`)) {
                this.readings.get(folder)?.delete(each);
            }
        }
        folder.forget(path).forEach((each) => this.touch({ folder, path: each }));
    }

    /** Reads what plans have asked for and nobody has read yet. @returns whether there was any */
    async fetchWanted(folder: Folder): Promise<boolean> {
        const wanted = [...folder.wanted];
        await Promise.all(wanted.map((path) => this.fetch({ folder, path })));
        return wanted.length > 0;
    }

    /** Reads a file that nobody has asked for yet. */
    async fetchUnknown(place: Place): Promise<void> {
        if (!place.folder.isOpen(place.path) && !place.folder.isHeld(place.path)) {
            await this.fetch(place);
        }
        while (place.folder.hasPlan(place.path) && this.isWanting(place)) {
            await this.fetchWanted(place.folder);
        }
    }

    /** Whether the plan asks for files that nobody has read. */
    private isWanting({ folder, path }: Place): boolean {
        folder.checked(path);
        return folder.wanted.size > 0;
    }

    private async fetch({ folder, path }: Place): Promise<void> {
        const reading = Symbol();
        const readings = this.readings.get(folder) ?? new Map<string, symbol>();
        this.readings.set(folder, readings.set(path, reading));
        const text = await this.disk.read(folder.uri, path);
        if (this.readings.get(folder)?.get(path) !== reading) {
            return;
        }
        readings.delete(path);
        folder.hold(path, text);
        if (!folder.isOpen(path)) {
            this.touch({ folder, path });
        }
    }

    private touch({ folder, path }: Place): void {
        this.emit({ folder, ...folder.changed(path) });
    }

    private emit(touched: Touched): void {
        this.listeners.forEach((listener) => listener(touched));
    }
}

function withoutSlash(uri: string): string {
    return uri.replace(/\/+$/, '');
}

function decode(path: string): string {
    return path.split('/').map(decodeURIComponent).join('/');
}
