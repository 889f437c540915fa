import { resolvePath, type Files } from './files.js';
import type { Reading, UseProblem } from './types.js';

/** How a file's text becomes a reading: parsed afresh, or taken from what an editor already holds. */
export type ReadText = (file: string, text: string) => Reading;

export interface Loaded {
    /** The file asked for first, then what it uses, nearest first; each file once. */
    readonly readings: readonly Reading[];
    readonly texts: ReadonlyMap<string, string>;
    readonly useProblems: readonly UseProblem[];
}

/** Loads a file and, through its `use` lines, every file it needs. */
export function load(file: string, files: Files, readText: ReadText): Loaded {
    const readings: Reading[] = [];
    const texts = new Map<string, string>();
    const useProblems: UseProblem[] = [];
    const usedBy = new Map<string, string>();

    const open = (path: string): 'missing' | { readonly why: string } | Reading => {
        const found = files.read(path);
        if (found.state !== 'read') {
            return found.state === 'missing' ? 'missing' : { why: found.why };
        }
        texts.set(path, found.text);
        const reading = readText(path, found.text);
        readings.push(reading);
        return reading;
    };

    const chainTo = (path: string): string[] => {
        const chain = [path];
        for (let by = usedBy.get(path); by !== undefined && !chain.includes(by); by = usedBy.get(by)) {
            chain.unshift(by);
        }
        return chain;
    };

    open(file);
    // Breadth first, so that a nearer file comes before a farther one; the list grows as it is walked.
    for (const reading of readings) {
        for (const use of reading.uses) {
            const path = resolvePath(reading.file, use.text);
            if (path === undefined) {
                useProblems.push({ sort: 'outside', path: use.text, origin: use.origin });
                continue;
            }
            const chain = chainTo(reading.file);
            if (chain.includes(path)) {
                useProblems.push({
                    sort: 'cycle',
                    path,
                    chain: [...chain.slice(chain.indexOf(path)), path],
                    origin: use.origin,
                });
                continue;
            }
            if (texts.has(path)) {
                continue;
            }
            usedBy.set(path, reading.file);
            const opened = open(path);
            if (opened === 'missing') {
                useProblems.push({ sort: 'missing', path, origin: use.origin });
            } else if ('why' in opened) {
                useProblems.push({ sort: 'unreadable', path, why: opened.why, origin: use.origin });
            }
        }
    }
    return { readings, texts, useProblems };
}
