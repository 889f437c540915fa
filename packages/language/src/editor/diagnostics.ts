import {
    DiagnosticSeverity,
    type Diagnostic,
    type DiagnosticRelatedInformation,
    type Location,
} from 'vscode-languageserver';
import { isFromCupboard, type Origin } from '../plan/origin.js';
import type { Severity } from '../plan/types.js';
import type { Client } from './client.js';
import type { Folder, PlacedFinding } from './folder.js';
import { cupboardLocation, ruleAddress } from './virtual-texts.js';

/** Carried by a diagnostic, so that a fix is found without reading the message. */
export interface FindingData {
    /** The plan in which it was found: the file itself, or one that uses it. */
    readonly plan: string;
    readonly rule: string;
}

const SEVERITY: Record<Severity, DiagnosticSeverity> = {
    error: DiagnosticSeverity.Error,
    warning: DiagnosticSeverity.Warning,
    info: DiagnosticSeverity.Information,
    hint: DiagnosticSeverity.Hint,
};

/** The findings of a file as the protocol has them, in the order of the text. */
export function diagnosticsOf(folder: Folder, path: string, client: Client): Diagnostic[] {
    return folder.findingsIn(path).flatMap((placed) => diagnosticOf(folder, placed, client) ?? []);
}

export function diagnosticOf(folder: Folder, { plan, finding }: PlacedFinding, client: Client): Diagnostic | undefined {
    const range = folder.rangeOf(finding.at);
    if (!range) {
        return undefined;
    }
    const data: FindingData = { plan, rule: finding.rule };
    const related = client.takesRelated ? relatedOf(folder, finding.related, client) : [];
    return {
        range,
        severity: SEVERITY[finding.severity],
        code: finding.rule,
        codeDescription: { href: ruleAddress(finding.rule, client) },
        source: 'underliner',
        // What to do has a line of its own: an editor that shows a message on one line cuts a long one off.
        message: [finding.message, finding.hint].filter((part) => part !== undefined).join('\n'),
        ...(related.length > 0 ? { relatedInformation: related } : {}),
        data,
    };
}

function relatedOf(
    folder: Folder,
    related: PlacedFinding['finding']['related'],
    client: Client,
): DiagnosticRelatedInformation[] {
    return related.flatMap(({ at, message }) => {
        const location = locationOf(folder, at, client);
        return location ? [{ location, message }] : [];
    });
}

/** A place as the client can go there; a place in the standard cupboard only where the client shows it. */
export function locationOf(
    folder: Folder,
    at: Origin,
    client: Pick<Client, 'showsVirtualTexts'>,
): Location | undefined {
    if (isFromCupboard(at)) {
        return client.showsVirtualTexts ? cupboardLocation(at) : undefined;
    }
    const range = folder.rangeOf(at);
    return range && { uri: folder.uriOf(at.file), range };
}
