import { standardTexts } from '../cupboard/generated/texts.js';
import { explainInMarkdown } from '../explain.js';
import { CUPBOARD_PREFIX } from '../plan/origin.js';
import { ruleById } from '../rules/index.js';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Location } from 'vscode-languageserver';
import type { Origin } from '../plan/origin.js';
import type { Client } from './client.js';

// Texts that ship inside the program and lie in no folder. A client that shows them says so when it starts
// (`initializationOptions: { virtualTexts: true }`) and asks for each by its address with the request below.

/** `{ uri }` → `{ text }`, or `null` where there is none. */
export const VIRTUAL_TEXT_REQUEST = 'underliner/virtualText';
/** A file of the standard cupboard: `underliner-cupboard:/forks.cover`. */
export const CUPBOARD_SCHEME = 'underliner-cupboard';
/** The page of a rule: `underliner-rule:/three-per-side.md`. */
export const RULE_SCHEME = 'underliner-rule';

let texts: Readonly<Record<string, string>> | undefined;
const documents = new Map<string, TextDocument>();

/** A file of the standard cupboard as origins name it, such as `cupboard/forks.cover`. */
export function cupboardText(file: string): string | undefined {
    texts ??= JSON.parse(standardTexts) as Record<string, string>;
    return Object.hasOwn(texts, file) ? texts[file] : undefined;
}

export function cupboardLocation(origin: Origin): Location | undefined {
    const text = cupboardText(origin.file);
    if (text === undefined) {
        return undefined;
    }
    const uri = `${CUPBOARD_SCHEME}:/${origin.file.slice(CUPBOARD_PREFIX.length)}`;
    const document = documents.get(uri) ?? TextDocument.create(uri, 'cover', 0, text);
    documents.set(uri, document);
    return { uri, range: { start: document.positionAt(origin.start), end: document.positionAt(origin.end) } };
}

/** Where a link to a rule leads: to its page, or to the client's own command that shows it. */
export function ruleAddress(id: string, { ruleCommand }: Pick<Client, 'ruleCommand'>): string {
    return ruleCommand === undefined
        ? `${RULE_SCHEME}:/${id}.md`
        : `command:${ruleCommand}?${encodeURIComponent(JSON.stringify([id]))}`;
}

export function virtualText(uri: string): string | undefined {
    const [, scheme, name] = /^([^:]+):\/*([^/]+)$/.exec(uri) ?? [];
    if (scheme === CUPBOARD_SCHEME) {
        return cupboardText(CUPBOARD_PREFIX + name);
    }
    const rule = scheme === RULE_SCHEME ? ruleById(name!.replace(/\.md$/, '')) : undefined;
    return rule && explainInMarkdown(rule);
}
