import { isFromCupboard, type Origin } from '../plan/origin.js';

/** Turns origins into `file:line:column` for people. Lines and columns count from 1; columns count characters, not code units. */
export class Places {
    private readonly lineStarts = new Map<string, readonly number[]>();

    constructor(private readonly texts: ReadonlyMap<string, string>) {}

    /** @returns the file alone where its text is not at hand: the standard cupboard */
    at(origin: Origin): string {
        const text = this.texts.get(origin.file);
        if (text === undefined || isFromCupboard(origin)) {
            return origin.file;
        }
        const { line, column } = this.position(origin.file, text, origin.start);
        return `${origin.file}:${line}:${column}`;
    }

    private position(file: string, text: string, offset: number): { line: number; column: number } {
        const starts = this.startsOf(file, text);
        let low = 0;
        let high = starts.length - 1;
        while (low < high) {
            const middle = Math.ceil((low + high) / 2);
            if (starts[middle]! <= offset) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return { line: low + 1, column: [...text.slice(starts[low], offset)].length + 1 };
    }

    private startsOf(file: string, text: string): readonly number[] {
        const known = this.lineStarts.get(file);
        if (known) {
            return known;
        }
        const starts = [0];
        for (const { index, 0: end } of text.matchAll(/\r\n|\r|\n/g)) {
            starts.push(index + end.length);
        }
        this.lineStarts.set(file, starts);
        return starts;
    }
}
