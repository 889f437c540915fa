import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Range } from 'vscode-languageserver';
import { Folder } from '../../packages/language/src/editor/folder.js';
import type { Client } from '../../packages/language/src/editor/client.js';
import type { Place } from '../../packages/language/src/editor/workspace.js';

// A plan as it is open in an editor, with the cursor at `<|>`. Files are headed by `//- name.cover`; the one with the
// cursor, or the last, is open; the others lie on the disk.

export interface OpenPlan extends Place {
    /** Where the cursor is; 0 without one. */
    readonly offset: number;
    readonly text: string;
    /** The words of a range of the protocol. */
    words(range: Range, file?: string): string;
    /** Where the nth of some words stands, as a range of the protocol. */
    rangeOf(words: string, nth?: number): Range;
}

export const CLIENT: Client = {
    takesVersionedEdits: true,
    takesRelated: true,
    takesSymbolTree: true,
    showsVirtualTexts: true,
    ruleCommand: undefined,
    registersWatchers: false,
    tellsFolders: true,
    takesNewFiles: true,
    asksReasons: false,
    showsPanels: false,
    takesSnippets: true,
    takesRows: true,
    takesMarkdown: true,
    showsPictures: true,
    takesDisabled: true,
    goesToPlaces: true,
    hasSettings: false,
    refreshes: false,
};

export const FOLDER = 'file:///saltmarsh';

export function openPlan(written: string): OpenPlan {
    const files = filesOf(written);
    const folder = new Folder(FOLDER);
    const { name: path, text: marked } = files.find(({ text }) => text.includes('<|>')) ?? files.at(-1)!;
    for (const { name, text } of files) {
        folder.hold(name, { state: 'read', text: text.replace('<|>', '') });
    }
    const text = marked.replace('<|>', '');
    const document = TextDocument.create(`${FOLDER}/${path}`, 'cover', 7, text);
    folder.opened(path, document);
    return {
        folder,
        path,
        text,
        offset: Math.max(0, marked.indexOf('<|>')),
        words: (range, file = path) => folder.documentOf(file)!.getText(range),
        rangeOf: (words, nth = 0) => {
            let start = -1;
            for (let found = 0; found <= nth; found++) {
                start = text.indexOf(words, start + 1);
            }
            return { start: document.positionAt(start), end: document.positionAt(start + words.length) };
        },
    };
}

function filesOf(written: string): readonly { readonly name: string; readonly text: string }[] {
    const parts = written.split(/^\/\/-[ \t]*\/?(\S+)[ \t]*\n/m);
    const files = parts.length === 1 ? [{ name: 'plan.cover', text: written }] : [];
    for (let index = 1; index < parts.length; index += 2) {
        files.push({ name: parts[index]!, text: parts[index + 1]! });
    }
    return files;
}
