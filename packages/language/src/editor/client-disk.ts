import type { Connection } from 'vscode-languageserver';
import type { FileText } from '../plan/files.js';
import type { Disk } from './disk.js';
import { LIST_FILES_REQUEST, READ_FILE_REQUEST } from './requests.js';

/** A disk that the client reads: a browser's worker has none, and a folder may lie where only the client can look. */
export function clientDisk(connection: Pick<Connection, 'sendRequest'>): Disk {
    return {
        async list(folder) {
            try {
                return await connection.sendRequest<readonly string[]>(LIST_FILES_REQUEST, { folder });
            } catch {
                // The client knows no such folder, or has left.
                return [];
            }
        },
        async read(folder, path) {
            try {
                return await connection.sendRequest<FileText>(READ_FILE_REQUEST, { folder, path });
            } catch {
                return { state: 'unreadable', why: 'the editor does not give it' };
            }
        },
    };
}
