import type { FileText } from '../plan/files.js';

/**
 * The workspace's folders as the server sees them: a disk, or a client that answers for one (a browser's worker has none).
 * Folders are URIs; paths are inside their folder, with forward slashes, as the language names files.
 */
export interface Disk {
    /** Every `.cover` file below a folder; hidden folders and `node_modules` are left out. */
    list(folder: string): Promise<readonly string[]>;
    /** Never rejects, and reads nothing outside the folder. */
    read(folder: string, path: string): Promise<FileText>;
}
