import { readSync } from 'node:fs';
import { LARGEST_FILE_BYTES } from 'underliner-language/node';

const STDIN = 0;
const CHUNK_BYTES = 64 * 1024;
/** Milliseconds to wait for a writer that has nothing yet. */
const EMPTY_PIPE_PAUSE = 5;

/** Everything on standard input, or a little more than the most that is read. */
export function readStandardInput(): Buffer {
    const chunks: Buffer[] = [];
    for (let total = 0; total <= LARGEST_FILE_BYTES;) {
        const chunk = Buffer.allocUnsafe(CHUNK_BYTES);
        const length = readChunk(chunk);
        if (length === 0) {
            break;
        }
        chunks.push(chunk.subarray(0, length));
        total += length;
    }
    return Buffer.concat(chunks);
}

function readChunk(chunk: Buffer): number {
    for (;;) {
        try {
            return readSync(STDIN, chunk);
        } catch (failure) {
            const code = failure instanceof Error && 'code' in failure ? failure.code : undefined;
            if (code === 'EAGAIN') {
                Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, EMPTY_PIPE_PAUSE);
            } else if (code === 'EOF') {
                return 0;
            } else {
                throw failure;
            }
        }
    }
}
