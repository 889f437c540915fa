/**
 * The two channels: stdout carries the result, stderr the talk. Written straight to the descriptors, which is done when
 * the call returns, so nothing is lost at exit, and without Node's stream classes, which take as long to load as a
 * small plan takes to check.
 */
import { writeSync } from 'node:fs';

const STDOUT = 1;
const STDERR = 2;

/** Milliseconds to wait for a reader whose pipe is full. */
const FULL_PIPE_PAUSE = 5;

/** @param result text, or the bytes of a picture */
export function writeResult(result: string | Uint8Array): void {
    write(STDOUT, result);
}

export function writeTalk(text: string): void {
    write(STDERR, text);
}

function write(channel: number, content: string | Uint8Array): void {
    const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
    for (let done = 0; done < bytes.length;) {
        try {
            done += writeSync(channel, bytes, done);
        } catch (failure) {
            const code = failure instanceof Error && 'code' in failure ? failure.code : undefined;
            if (code === 'EAGAIN') {
                Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, FULL_PIPE_PAUSE);
            } else if (code === 'EPIPE') {
                // The reader has seen enough, as `head` does: that is no fault.
                return;
            } else {
                throw failure;
            }
        }
    }
}
