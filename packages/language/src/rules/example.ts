import type { Origin } from '../plan/origin.js';

/** The files of an example. */
export interface Example {
    /** By path, in the order written, without the marks. */
    readonly texts: Readonly<Record<string, string>>;
    /** The file to check: the last. */
    readonly file: string;
    /** The words between `<|` and `|>`, in the order of their first characters. */
    readonly marks: readonly Origin[];
}

const HEADER = /^\/\/-[ \t]*\/?(\S+)[ \t]*$/;

/**
 * Takes an example apart: files each headed by `//- name.cover`, or one file without a header, and the marked words.
 * @param name the file's name where there is no header
 * @throws where a mark opens and does not close, or the other way round
 */
export function readExample(written: string, name = 'example.cover'): Example {
    const files: { name: string; lines: string[] }[] = [];
    for (const line of written.split('\n')) {
        const header = HEADER.exec(line)?.[1];
        if (header !== undefined) {
            files.push({ name: header, lines: [] });
        } else if (files.length > 0) {
            files.at(-1)!.lines.push(line);
        } else {
            files.push({ name, lines: [line] });
        }
    }
    const texts: Record<string, string> = {};
    const marks: Origin[] = [];
    for (const file of files) {
        const unmarked = takeMarks(file.lines.join('\n'), file.name);
        texts[file.name] = unmarked.text;
        marks.push(...unmarked.marks);
    }
    return { texts, file: files.at(-1)!.name, marks };
}

function takeMarks(written: string, file: string): { readonly text: string; readonly marks: readonly Origin[] } {
    const marks: Origin[] = [];
    const open: number[] = [];
    let text = '';
    for (const part of written.split(/(<\||\|>)/)) {
        if (part === '<|') {
            open.push(text.length);
        } else if (part === '|>') {
            const start = open.pop();
            if (start === undefined) {
                throw new Error(`A mark closes that did not open, in ${file}.`);
            }
            marks.push({ file, start, end: text.length });
        } else {
            text += part;
        }
    }
    if (open.length > 0) {
        throw new Error(`A mark opens and does not close, in ${file}.`);
    }
    return { text, marks: marks.sort((a, b) => a.start - b.start) };
}
