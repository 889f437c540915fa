import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Range } from 'vscode-languageserver';
import { PlanChecker, type Checked } from '../check.js';
import type { Files, FileText } from '../plan/files.js';
import type { Origin } from '../plan/origin.js';
import { FileReader } from '../plan/read-text.js';
import type { Reading } from '../plan/types.js';
import type { Finding } from '../rules/rule.js';

/** One plan looked at, and what that look depended on. */
interface Look {
    readonly checked: Checked;
    /** Every file that was asked for, those that are not there too. */
    readonly reads: ReadonlySet<string>;
    /** By the file they are in: the plan's own, or one it uses. Absent until somebody has asked for them. */
    findings?: ReadonlyMap<string, readonly Finding[]>;
}

/** A finding with the plan in which it was found: the file itself, or one that uses it. */
export interface PlacedFinding {
    readonly plan: string;
    readonly finding: Finding;
}

const NOTHING: readonly Finding[] = [];

/**
 * The files of one workspace folder, and what is known of them. An open document's text goes before the disk's.
 * Everything is worked out when it is asked for, from the texts as they are at that moment, and kept while they stay:
 * so an answer never speaks of an older text than the one the client has.
 */
export class Folder implements Files {
    /** Files that a plan asked for and that were not read yet. */
    readonly wanted = new Set<string>();
    private readonly open = new Map<string, TextDocument>();
    private readonly held = new Map<string, FileText>();
    private readonly readings = new Map<string, { readonly text: string; readonly reading: Reading }>();
    /** They keep what they have read of a file, so that a change makes them read little. */
    private readonly readers = new Map<string, FileReader>();
    /** They keep what they have worked out of a plan, so that a change makes them work out little. */
    private readonly checkers = new Map<string, PlanChecker>();
    private readonly looks = new Map<string, Look>();
    private readonly pages = new Map<string, TextDocument>();
    /** As the client writes them. */
    private readonly addresses = new Map<string, string>();

    /** @param uri of the folder, without a slash at its end */
    constructor(readonly uri: string) {}

    // ---------------------------------------------------------------- texts
    read(path: string): FileText {
        const document = this.open.get(path);
        if (document) {
            return { state: 'read', text: document.getText() };
        }
        const held = this.held.get(path);
        if (held === undefined) {
            this.wanted.add(path);
        }
        return held ?? { state: 'missing' };
    }

    textOf(path: string): string | undefined {
        const found = this.read(path);
        return found.state === 'read' ? found.text : undefined;
    }

    /** The version of the client's document; absent for a file that is not open. */
    versionOf(path: string): number | undefined {
        return this.open.get(path)?.version;
    }

    isOpen(path: string): boolean {
        return this.open.has(path);
    }

    /** Whether the text of the disk is known, though it may be that there is none. */
    isHeld(path: string): boolean {
        return this.held.has(path);
    }

    /** Every plan, open or not, in the order of the paths. */
    get plans(): readonly string[] {
        const held = [...this.held].filter(([path, { state }]) => state === 'read' && path.endsWith('.cover'));
        return [...new Set([...this.open.keys(), ...held.map(([path]) => path)])].sort();
    }

    hasPlan(path: string): boolean {
        return this.open.has(path) || (path.endsWith('.cover') && this.held.get(path)?.state === 'read');
    }

    /** Whether its findings can be shown: a plan, or any other text that plans use. */
    hasText(path: string): boolean {
        return this.open.has(path) || this.held.get(path)?.state === 'read';
    }

    opened(path: string, document: TextDocument): void {
        this.open.set(path, document);
        this.addresses.set(path, document.uri);
    }

    closed(path: string): void {
        this.open.delete(path);
    }

    /** @param text as it is on the disk */
    hold(path: string, text: FileText): void {
        this.wanted.delete(path);
        this.held.set(path, text);
    }

    /** Forgets a file that was deleted, or every file of a folder that was. @returns the paths forgotten */
    forget(path: string): readonly string[] {
        const gone = [...this.held.keys()].filter((each) => each === path || each.startsWith(`${path}/`));
        for (const each of gone) {
            this.held.set(each, { state: 'missing' });
            this.readers.delete(each);
            this.checkers.delete(each);
        }
        return gone;
    }

    // ---------------------------------------------------------------- what they say
    readonly readText = (path: string, text: string): Reading => {
        const known = this.readings.get(path);
        if (known?.text === text) {
            return known.reading;
        }
        const reader = this.readers.get(path) ?? new FileReader(path);
        this.readers.set(path, reader);
        const reading = reader.read(text);
        this.readings.set(path, { text, reading });
        return reading;
    };

    readingOf(path: string): Reading | undefined {
        const text = this.textOf(path);
        return text === undefined ? undefined : this.readText(path, text);
    }

    /** The plan with everything worked out from it. */
    checked(path: string): Checked {
        return this.look(path).checked;
    }

    /** Whether the plan was looked at since anything it depends on has changed. */
    isKnown(path: string): boolean {
        return this.looks.has(path);
    }

    private look(path: string): Look {
        const known = this.looks.get(path);
        if (known) {
            return known;
        }
        const reads = new Set<string>();
        const files: Files = {
            read: (each) => {
                reads.add(each);
                return this.read(each);
            },
        };
        const checker = this.checkers.get(path) ?? new PlanChecker(path);
        this.checkers.set(path, checker);
        const checked = checker.check(files, { readText: this.readText });
        const look: Look = { checked, reads };
        this.looks.set(path, look);
        return look;
    }

    /**
     * A text has changed, come or gone: what was worked out from it no longer holds.
     * @returns the plans to look at again, and the files that their findings were in
     */
    changed(path: string): { readonly plans: readonly string[]; readonly files: readonly string[] } {
        const stale = [...this.looks].filter(([plan, { reads }]) => plan === path || reads.has(path));
        for (const [plan] of stale) {
            this.looks.delete(plan);
        }
        this.readings.delete(path);
        this.pages.delete(path);
        const plans = new Set([
            ...(this.hasPlan(path) ? [path] : []),
            ...stale.map(([plan]) => plan).filter((plan) => this.hasPlan(plan)),
        ]);
        return {
            plans: [...plans],
            files: [...new Set([path, ...stale.flatMap(([, { findings }]) => [...(findings?.keys() ?? [])])])],
        };
    }

    /** What is found in a file: by itself, and by every known plan that uses it; the same words once. */
    findingsIn(path: string): readonly PlacedFinding[] {
        const own = this.hasPlan(path) ? (findingsOf(this.look(path)).get(path) ?? NOTHING) : NOTHING;
        const found = new Map<string, PlacedFinding>();
        const add = (plan: string, finding: Finding): void => {
            const key = `${finding.at.start}:${finding.at.end}:${finding.rule}:${finding.message}`;
            if (!found.has(key)) {
                found.set(key, { plan, finding });
            }
        };
        own.forEach((finding) => add(path, finding));
        for (const [plan, look] of this.looks) {
            if (plan !== path) {
                (findingsOf(look).get(path) ?? NOTHING).forEach((finding) => add(plan, finding));
            }
        }
        return [...found.values()].sort((a, b) => a.finding.at.start - b.finding.at.start);
    }

    /** The files that a plan's findings are in, itself first. */
    filesWithFindings(plan: string): readonly string[] {
        return [...new Set([plan, ...findingsOf(this.look(plan)).keys()])];
    }

    /** The files that a plan is made of, itself first. */
    filesOf(plan: string): readonly string[] {
        return this.checked(plan).plan.readings.map(({ file }) => file);
    }

    // ---------------------------------------------------------------- places
    uriOf(path: string): string {
        return this.addresses.get(path) ?? `${this.uri}/${path.split('/').map(encodeURIComponent).join('/')}`;
    }

    /** The text as it is now, to turn offsets into lines and characters. */
    documentOf(path: string): TextDocument | undefined {
        const document = this.open.get(path) ?? this.pages.get(path);
        if (document) {
            return document;
        }
        const text = this.textOf(path);
        if (text === undefined) {
            return undefined;
        }
        const page = TextDocument.create(this.uriOf(path), 'cover', 0, text);
        this.pages.set(path, page);
        return page;
    }

    rangeOf({ file, start, end }: Origin): Range | undefined {
        const document = this.documentOf(file);
        return document && { start: document.positionAt(start), end: document.positionAt(end) };
    }
}

function findingsOf(look: Look): ReadonlyMap<string, readonly Finding[]> {
    if (look.findings) {
        return look.findings;
    }
    const files = new Map<string, Finding[]>();
    for (const finding of look.checked.findings) {
        const others = files.get(finding.at.file);
        if (others) {
            others.push(finding);
        } else {
            files.set(finding.at.file, [finding]);
        }
    }
    look.findings = files;
    return files;
}
