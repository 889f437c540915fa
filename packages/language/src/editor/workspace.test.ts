import { beforeEach, describe, expect, it } from 'vitest';
import type { PublishDiagnosticsParams } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { CLIENT } from '../../../../tests/support/open-plan.js';
import type { FileText } from '../plan/files.js';
import type { Disk } from './disk.js';
import { Publisher } from './publisher.js';
import { Workspace } from './workspace.js';

const HALL = 'file:///hall';
const INN = 'file:///hall/inn';

/** The disk, by folder and path; tests write to it. */
let texts: Record<string, Record<string, string>>;
let told: Map<string, PublishDiagnosticsParams>;
/** Every telling, in order, as `file: rules`. */
let tellings: string[];
let workspace: Workspace;
let publisher: Publisher;
let versions: number;

const disk: Disk = {
    list: (folder) => Promise.resolve(Object.keys(texts[folder] ?? {}).filter((path) => path.endsWith('.cover'))),
    read: (folder, path) => {
        const text = texts[folder]?.[path];
        return Promise.resolve(text === undefined ? { state: 'missing' } : { state: 'read', text });
    },
};

beforeEach(() => {
    texts = {};
    told = new Map();
    tellings = [];
    versions = 0;
    workspace = new Workspace(disk);
    const connection = {
        sendDiagnostics: (params: PublishDiagnosticsParams) => {
            told.set(params.uri, params);
            tellings.push(`${params.uri}: ${params.diagnostics.map(({ code }) => code).join()}`);
            return Promise.resolve();
        },
        console: { error: (message: string) => tellings.push(`error: ${message}`) },
    };
    publisher = new Publisher(
        connection as unknown as ConstructorParameters<typeof Publisher>[0],
        workspace,
        () => CLIENT,
    );
});

/** Everything waits for turns of the event loop, nothing for the clock. */
const settled = async () => {
    for (let turn = 0; turn < 200; turn++) {
        await new Promise((resolve) => setImmediate(resolve));
    }
    // Nothing turns round and round when all is told.
    expect(publisher.isBusy).toBe(false);
};
const found = (uri: string) => told.get(uri)?.diagnostics.map(({ code }) => code);
const document = (uri: string, text: string) => TextDocument.create(uri, 'cover', ++versions, text);
const FAULTY = 'house "Hall" { spare 5 }\n';
const SOUND = 'house "Hall" { spare 5 % }\n';

describe('a workspace', () => {
    it('tells of files that were never opened, and nothing of sound ones', async () => {
        texts[HALL] = { 'a.cover': FAULTY, 'b.cover': SOUND, 'c.md': '' };
        await workspace.addFolder(HALL);
        await settled();
        expect(tellings).toEqual([`${HALL}/a.cover: missing-unit`]);
    });

    it('tells of a file of any name that a plan uses, for as long as it uses it', async () => {
        texts[HALL] = { 'a.cover': 'use "stock.txt"\n', 'stock.txt': FAULTY, 'other.txt': FAULTY };
        await workspace.addFolder(HALL);
        await settled();
        expect(tellings).toEqual([`${HALL}/stock.txt: missing-unit`]);
        texts[HALL]['a.cover'] = SOUND;
        await workspace.changedOnDisk(`${HALL}/a.cover`);
        await settled();
        expect(found(`${HALL}/stock.txt`)).toEqual([]);
    });

    it('reads what a plan asks for before it calls it missing', async () => {
        workspace.open(document('file:///elsewhere/event.cover', 'use "house.cover"\n'));
        texts['file:///elsewhere'] = { 'house.cover': SOUND };
        await settled();
        expect(tellings).toEqual(['file:///elsewhere/event.cover: ']);
    });

    it('tells the version, and what is found once for edits that come together', async () => {
        texts[HALL] = { 'a.cover': SOUND };
        await workspace.addFolder(HALL);
        await settled();
        workspace.open(document(`${HALL}/a.cover`, SOUND));
        for (let edit = 0; edit < 20; edit++) {
            workspace.change(document(`${HALL}/a.cover`, edit % 2 === 0 ? SOUND : FAULTY));
        }
        await settled();
        expect(tellings).toEqual([`${HALL}/a.cover: missing-unit`]);
        expect(told.get(`${HALL}/a.cover`)!.version).toBe(21);
    });

    it('gives a document to the innermost folder, and to another when folders come and go', async () => {
        texts[HALL] = { 'house.cover': SOUND, 'inn/event.cover': 'use "../house.cover"\n' };
        texts[INN] = { 'event.cover': 'use "../house.cover"\n' };
        await workspace.addFolder(HALL);
        workspace.open(document(`${INN}/event.cover`, 'use "../house.cover"\n'));
        await settled();
        expect(found(`${INN}/event.cover`)).toEqual([]);
        await workspace.addFolder(INN);
        await settled();
        expect(found(`${INN}/event.cover`)).toEqual(['file-leaves-workspace']);
        workspace.removeFolder(INN);
        await settled();
        expect(found(`${INN}/event.cover`)).toEqual([]);
    });

    it('forgets the findings of a folder that leaves', async () => {
        texts[HALL] = { 'a.cover': FAULTY };
        await workspace.addFolder(HALL);
        await settled();
        workspace.removeFolder(HALL);
        await settled();
        expect(found(`${HALL}/a.cover`)).toEqual([]);
    });

    it('forgets the files of a deleted folder, and finds those of a new one', async () => {
        texts[HALL] = { 'a/b.cover': FAULTY };
        await workspace.addFolder(HALL);
        await settled();
        workspace.deletedOnDisk(`${HALL}/a`);
        await settled();
        expect(found(`${HALL}/a/b.cover`)).toEqual([]);
        texts[HALL] = { 'c/b.cover': FAULTY };
        await workspace.changedOnDisk(`${HALL}/c`);
        await settled();
        expect(found(`${HALL}/c/b.cover`)).toEqual(['missing-unit']);
    });

    it('keeps a text that was never saved at the top of the first folder', async () => {
        texts[HALL] = { 'house.cover': SOUND };
        await workspace.addFolder(HALL);
        workspace.open(document('untitled:Untitled-1', 'use "house.cover"\nuse "gone.cover"\n'));
        await settled();
        expect(found('untitled:Untitled-1')).toEqual(['file-not-found']);
        workspace.close('untitled:Untitled-1');
        await settled();
        expect(found('untitled:Untitled-1')).toEqual([]);
    });

    it('keeps what was read last, whichever reading ends last', async () => {
        const answers: ((text: FileText) => void)[] = [];
        const slow = new Workspace({
            list: () => Promise.resolve(['a.cover']),
            read: () => new Promise((resolve) => answers.push(resolve)),
        });
        const added = slow.addFolder(HALL);
        await settled();
        const changed = slow.changedOnDisk(`${HALL}/a.cover`);
        answers[1]!({ state: 'read', text: SOUND });
        await changed;
        answers[0]!({ state: 'read', text: FAULTY });
        await added;
        expect(slow.all[0]!.textOf('a.cover')).toBe(SOUND);
        // Deleted while it was read: what comes in is of before.
        const again = slow.changedOnDisk(`${HALL}/a.cover`);
        slow.deletedOnDisk(`${HALL}/a.cover`);
        answers[2]!({ state: 'read', text: SOUND });
        await again;
        expect(slow.all[0]!.plans).toEqual([]);
    });

    it('says nothing of a folder that left while it was read', async () => {
        const answers: ((text: FileText) => void)[] = [];
        const slow = new Workspace({
            list: () => Promise.resolve(['a.cover']),
            read: () => new Promise((resolve) => answers.push(resolve)),
        });
        const touched: string[] = [];
        slow.onTouched(({ plans }) => touched.push(...plans));
        const added = slow.addFolder(HALL);
        await settled();
        slow.removeFolder(HALL);
        answers[0]!({ state: 'read', text: FAULTY });
        await added;
        expect(touched).toEqual([]);
    });

    it('looks no longer at a file outside all folders when it is closed', async () => {
        const uri = 'file:///elsewhere/house.cover';
        texts['file:///elsewhere'] = { 'house.cover': FAULTY };
        workspace.open(document(uri, FAULTY));
        await settled();
        expect(found(uri)).toEqual(['missing-unit']);
        workspace.close(uri);
        await settled();
        expect(found(uri)).toEqual([]);
    });

    it('knows a file by its name with blanks and accents', async () => {
        texts[HALL] = { 'Fête d’été.cover': FAULTY };
        await workspace.addFolder(HALL);
        await settled();
        const uri = [...told.keys()][0]!;
        expect(decodeURIComponent(uri)).toBe(`${HALL}/Fête d’été.cover`);
        workspace.open(document(uri, SOUND));
        await settled();
        expect(found(uri)).toEqual([]);
    });
});
