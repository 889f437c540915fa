import type { Location } from 'vscode-languageserver';
import { check, type Checked } from '../../check.js';
import { lazily } from '../../plan/lazily.js';
import type { Origin } from '../../plan/origin.js';
import type { Client } from '../client.js';
import { locationOf } from '../diagnostics.js';
import type { Folder } from '../folder.js';
import { difference } from '../../plan/text-difference.js';
import type { Place } from '../workspace.js';

/** A plan as a panel shows it. */
export interface ShownPlan {
    readonly checked: Checked;
    /** How many errors stand in the text as it is now. */
    readonly errors: number;
    /** It is the plan from before the errors. */
    readonly isFromBefore: boolean;
}

/** Plans from before their errors are kept for so many panels and those lately shown in them. */
const MOST_KEPT = 6;

/** Keeps of each plan shown how it was when last nothing was wrong with it. */
export class ShownPlans {
    /** Worked out again, from its texts, when it is first shown: what a folder has looked at goes with the texts. */
    private readonly kept = new Map<string, () => Checked>();

    /** @param anyway what is there is to be shown whatever is wrong with it */
    show({ folder, path }: Place, anyway: boolean): ShownPlan {
        const checked = folder.checked(path);
        const uri = folder.uriOf(path);
        const errors = checked.findings.filter(({ severity }) => severity === 'error').length;
        if (errors === 0) {
            const { texts } = checked;
            this.kept.delete(uri);
            this.kept.set(
                uri,
                lazily(() => lookAgain(folder, path, texts)),
            );
            for (const [oldest] of [...this.kept].slice(0, -MOST_KEPT)) {
                this.kept.delete(oldest);
            }
            return { checked, errors, isFromBefore: false };
        }
        const before = anyway ? undefined : this.kept.get(uri)?.();
        return { checked: before ?? checked, errors, isFromBefore: before !== undefined };
    }
}

/** A plan of older texts; recipes are as they are now. */
function lookAgain(folder: Folder, file: string, texts: Checked['texts']): Checked {
    return check(file, {
        read: (path) => {
            const text = texts.get(path);
            return text === undefined ? folder.read(path) : { state: 'read', text };
        },
    });
}

/** The places that a panel's parts come from, each counted once. */
export class Sources {
    private readonly found: Location[] = [];
    private readonly numbers = new Map<string, number | undefined>();

    constructor(
        private readonly place: Place,
        private readonly client: Pick<Client, 'showsVirtualTexts'>,
        /** The texts that the origins are of. */
        private readonly texts: Checked['texts'],
    ) {}

    /** The number of a place in the list; nothing for what was written nowhere. */
    numberOf(origin: Origin | undefined): number | undefined {
        if (!origin) {
            return undefined;
        }
        const key = `${origin.file}:${origin.start}:${origin.end}`;
        if (!this.numbers.has(key)) {
            const location = locationOf(this.place.folder, this.asOfNow(origin), this.client);
            this.numbers.set(key, location && this.found.push(location) - 1);
        }
        return this.numbers.get(key);
    }

    /** Places that are counted already, by a drawing; before any other. What lies in no file leads to what stands in for it. */
    take(origins: readonly Origin[], instead: Origin): void {
        for (const origin of origins) {
            const location = locationOf(this.place.folder, this.asOfNow(origin), this.client);
            this.found.push(location ?? locationOf(this.place.folder, this.asOfNow(instead), this.client)!);
        }
    }

    get places(): readonly Location[] {
        return this.found;
    }

    /** A place of an older text, in the text as it is now. */
    private asOfNow(origin: Origin): Origin {
        const before = this.texts.get(origin.file);
        const now = this.place.folder.textOf(origin.file);
        if (before === undefined || now === undefined || before === now) {
            return origin;
        }
        const { start, end, text } = difference(before, now);
        const moved = (offset: number): number =>
            offset <= start ? offset : offset >= end ? offset + text.length - (end - start) : start;
        return { ...origin, start: moved(origin.start), end: moved(origin.end) };
    }
}
