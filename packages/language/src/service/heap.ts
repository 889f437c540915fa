/** A heap of numbered entries, the lowest key first; entries of one key in the order of their numbers. */
export class Heap {
    private readonly keys: number[] = [];
    private readonly entries: number[] = [];

    get size(): number {
        return this.keys.length;
    }

    /** Key of the first entry; `undefined` where there is none. */
    get firstKey(): number | undefined {
        return this.keys[0];
    }

    push(key: number, entry: number): void {
        const { keys, entries } = this;
        let place = keys.length;
        keys.push(key);
        entries.push(entry);
        while (place > 0) {
            const above = (place - 1) >> 1;
            if (!isBefore(key, entry, keys[above]!, entries[above]!)) {
                break;
            }
            keys[place] = keys[above]!;
            entries[place] = entries[above]!;
            place = above;
        }
        keys[place] = key;
        entries[place] = entry;
    }

    /** Takes the first entry out; there must be one. */
    pop(): number {
        const { keys, entries } = this;
        const first = entries[0]!;
        const key = keys.pop()!;
        const entry = entries.pop()!;
        const count = keys.length;
        if (count === 0) {
            return first;
        }
        let place = 0;
        for (;;) {
            let below = 2 * place + 1;
            if (below >= count) {
                break;
            }
            if (below + 1 < count && isBefore(keys[below + 1]!, entries[below + 1]!, keys[below]!, entries[below]!)) {
                below += 1;
            }
            if (!isBefore(keys[below]!, entries[below]!, key, entry)) {
                break;
            }
            keys[place] = keys[below]!;
            entries[place] = entries[below]!;
            place = below;
        }
        keys[place] = key;
        entries[place] = entry;
        return first;
    }
}

function isBefore(key: number, entry: number, otherKey: number, otherEntry: number): boolean {
    return key < otherKey || (key === otherKey && entry < otherEntry);
}
