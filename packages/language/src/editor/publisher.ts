import type { Connection } from 'vscode-languageserver';
import { askNextRule, type Checked } from '../check.js';
import type { Client } from './client.js';
import { diagnosticsOf } from './diagnostics.js';
import type { Folder } from './folder.js';
import { inNextTurn, nextTurn } from './next-turn.js';
import type { Touched, Workspace } from './workspace.js';

/**
 * Messages are read one a turn, so edits that came together are all read before a plan is looked at: it waits while
 * every turn brings another, but no longer than this many.
 */
const MOST_TURNS = 500;

/** Whoever asks meanwhile waits for so long and for the rule being asked, ms. Not a turn after every rule: turns cost time, too. */
const LONGEST_TURN = 4;

/**
 * Tells the client what is found, for open files and all others of the workspace. Plans wait in a queue, the one being
 * typed first and open ones before others; a look that a newer text makes stale is given up, but never two in a row:
 * so findings keep coming while someone types without a pause.
 */
export class Publisher {
    /** Plans to look at, by folder, none that has none; later ones first. */
    private readonly queue = new Map<Folder, Set<string>>();
    /** Files whose findings may be others though no plan of theirs is in the queue, such as deleted ones. */
    private readonly stale = new Map<Folder, Set<string>>();
    /** What the client was last told, by address. */
    private readonly told = new Map<string, string>();
    private isScheduled = false;
    private isOtherChanged = false;
    /** The last look was given up for a newer text; the next one is finished, whatever comes. */
    private wasCutShort = false;
    /** How often texts have changed. */
    private changes = 0;

    constructor(
        private readonly connection: Pick<Connection, 'sendDiagnostics' | 'console'>,
        private readonly workspace: Workspace,
        private readonly client: () => Client,
        /** When all is told and a plan in sight has changed through another file than its own. */
        private readonly onOthersChanged: () => void = () => undefined,
        /** When all is told that is found in a plan. */
        private readonly onTold: (plan: string) => void = () => undefined,
        /** When nothing is left to look at. */
        private readonly onQuiet: () => void = () => undefined,
    ) {
        workspace.onTouched((touched) => this.touched(touched));
    }

    /** Whether there is something to look at. */
    get isBusy(): boolean {
        return this.isScheduled;
    }

    private touched({ folder, plans, files }: Touched): void {
        for (const plan of plans) {
            // To the end, as the one touched last.
            take(this.queue, folder, plan);
            add(this.queue, folder, plan);
        }
        this.changes++;
        this.isOtherChanged ||= plans.some((plan) => plan !== files[0] && folder.isOpen(plan));
        files.forEach((file) => add(this.stale, folder, file));
        this.schedule();
    }

    private schedule(): void {
        if (!this.isScheduled) {
            this.isScheduled = true;
            inNextTurn(() => this.whenQuiet(MOST_TURNS));
        }
    }

    /** Two turns without a change: in the one between, the next message that had arrived would have been read. */
    private whenQuiet(turns: number): void {
        const known = this.changes;
        inNextTurn(() => {
            if (this.changes === known || turns === 0) {
                void this.turn();
            } else {
                this.whenQuiet(turns - 1);
            }
        });
    }

    private async turn(): Promise<void> {
        try {
            await this.lookAtNext();
        } catch (failure) {
            this.connection.console.error(`A plan could not be looked at: ${String(failure)}`);
        }
        this.isScheduled = false;
        if (this.queue.size > 0 || this.stale.size > 0) {
            this.schedule();
            return;
        }
        if (this.isOtherChanged) {
            this.isOtherChanged = false;
            this.onOthersChanged();
        }
        this.onQuiet();
    }

    private async lookAtNext(): Promise<void> {
        const [folder, plan] = this.next() ?? [];
        if (folder && plan !== undefined) {
            take(this.queue, folder, plan);
            if (!folder.hasPlan(plan)) {
                this.tell(folder, plan);
                return;
            }
            const checked = folder.checked(plan);
            // What the plan asked for is read first: nothing is called missing that only was not read yet.
            if (folder.wanted.size > 0) {
                add(this.queue, folder, plan);
                await this.workspace.fetchWanted(folder);
                return;
            }
            if (!(await this.judge(folder, plan, checked))) {
                return;
            }
            checked.broken.forEach(({ rule, error }) =>
                this.connection.console.error(`The rule ${rule} broke over ${plan}: ${String(error)}`),
            );
            folder.filesWithFindings(plan).forEach((file) => this.tell(folder, file));
            this.onTold(folder.uriOf(plan));
            return;
        }
        for (const [stale, files] of this.stale) {
            this.stale.delete(stale);
            files.forEach((file) => this.tell(stale, file));
        }
    }

    /**
     * Asks every rule, as many a turn as are quickly answered, so that a question asked meanwhile does not wait for them all.
     * @returns false where the plan has changed meanwhile; it is in the queue again
     */
    private async judge(folder: Folder, plan: string, checked: Checked): Promise<boolean> {
        let began = performance.now();
        while (!askNextRule(checked)) {
            if (this.wasCutShort || performance.now() - began < LONGEST_TURN) {
                continue;
            }
            await nextTurn();
            began = performance.now();
            if (!folder.isKnown(plan) || folder.checked(plan) !== checked) {
                this.wasCutShort = true;
                return false;
            }
        }
        this.wasCutShort = false;
        return true;
    }

    /** The plan touched last among the open ones, else any. */
    private next(): readonly [Folder, string] | undefined {
        const all = [...this.queue].flatMap(([folder, plans]) => [...plans].map((plan) => [folder, plan] as const));
        return all.findLast(([folder, plan]) => folder.isOpen(plan)) ?? all[0];
    }

    private tell(folder: Folder, file: string): void {
        const uri = folder.uriOf(file);
        const home = this.workspace.locate(uri);
        if (home.folder !== folder && home.folder.hasPlan(home.path)) {
            // It has moved to another folder, which speaks for it.
            return;
        }
        const diagnostics = folder.hasText(file) ? diagnosticsOf(folder, file, this.client()) : [];
        const version = folder.versionOf(file);
        const telling = JSON.stringify([version, diagnostics]);
        const isNews = this.told.has(uri)
            ? this.told.get(uri) !== telling
            : diagnostics.length > 0 || version !== undefined;
        if (!isNews) {
            return;
        }
        if (folder.hasText(file)) {
            this.told.set(uri, telling);
        } else {
            this.told.delete(uri);
        }
        void this.connection.sendDiagnostics({ uri, diagnostics, ...(version === undefined ? {} : { version }) });
    }
}

function add(sets: Map<Folder, Set<string>>, folder: Folder, item: string): void {
    sets.set(folder, (sets.get(folder) ?? new Set()).add(item));
}

function take(sets: Map<Folder, Set<string>>, folder: Folder, item: string): void {
    const set = sets.get(folder);
    set?.delete(item);
    if (set?.size === 0) {
        sets.delete(folder);
    }
}
