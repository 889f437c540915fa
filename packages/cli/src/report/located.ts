import { join, relative, sep } from 'node:path';
import type { Checked, Finding, Origin } from 'underliner-language';
import { Lines } from './lines.js';

/** A place in a file as people and tools name it. */
export interface Place {
    /** From the working folder, with forward slashes. */
    readonly file: string;
    /** From the root of the workspace, with forward slashes. */
    readonly inWorkspace: string;
    /** UTF-16 offsets. */
    readonly start: number;
    readonly end: number;
    /** Absent for a file whose text was not read. */
    readonly lines?: Lines;
}

export interface LocatedFinding {
    readonly finding: Finding;
    readonly place: Place;
    readonly related: readonly { readonly place: Place; readonly message: string }[];
}

/** Turns origins into places; counts the lines of each file once. */
export class Locator {
    readonly #root: string;
    readonly #workingFolder: string;
    readonly #texts: ReadonlyMap<string, string>;
    readonly #lines = new Map<string, Lines>();

    /** @param root of the workspace, absolute */
    constructor(root: string, workingFolder: string, checked: Checked) {
        this.#root = root;
        this.#workingFolder = workingFolder;
        this.#texts = checked.texts;
    }

    findings(findings: readonly Finding[]): LocatedFinding[] {
        return findings.map((finding) => ({
            finding,
            place: this.place(finding.at),
            related: finding.related.map(({ at, message }) => ({ place: this.place(at), message })),
        }));
    }

    place({ file, start, end }: Origin): Place {
        const lines = this.#linesOf(file);
        const shown = lines ? relative(this.#workingFolder, join(this.#root, file)).split(sep).join('/') : file;
        return { file: shown, inWorkspace: file, start, end, ...(lines && { lines }) };
    }

    #linesOf(file: string): Lines | undefined {
        const text = this.#texts.get(file);
        if (text === undefined) {
            return undefined;
        }
        let lines = this.#lines.get(file);
        if (lines === undefined) {
            lines = new Lines(text);
            this.#lines.set(file, lines);
        }
        return lines;
    }
}

/** By file, then position, then rule; the same finding about a file that several others use stands once. */
export function inOrder(findings: readonly LocatedFinding[]): LocatedFinding[] {
    const keyed = new Map(findings.map((found) => [keyOf(found), found]));
    return [...keyed.values()].sort(
        (a, b) =>
            compare(a.place.file, b.place.file) ||
            a.place.start - b.place.start ||
            a.place.end - b.place.end ||
            compare(a.finding.rule, b.finding.rule) ||
            compare(a.finding.message, b.finding.message),
    );
}

function keyOf({ finding, place }: LocatedFinding): string {
    return [place.file, place.start, place.end, finding.rule, finding.message].join('\0');
}

function compare(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}
