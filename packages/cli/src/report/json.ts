import type { Fix, Severity } from 'underliner-language';
import type { LocatedFinding, Place } from './located.js';
import type { Reporter } from './reporter.js';

/** Raised when a field changes its meaning or goes; new fields may come at any time. */
export const JSON_VERSION = 1;

/** For programs; the shape is `schema/findings.schema.json` of this package. */
export const reportJson: Reporter = ({ findings, counts, filesChecked, fixed }) =>
    `${JSON.stringify({ version: JSON_VERSION, filesChecked, fixed, counts, findings: findings.map(findingJson) }, null, 2)}\n`;

export interface JsonPlace {
    readonly file: string;
    /** Absent for a file of the standard cupboard. */
    readonly start?: JsonPosition;
    readonly end?: JsonPosition;
}

export interface JsonPosition {
    /** From 1. */
    readonly line: number;
    /** From 1, in characters as a reader counts them. */
    readonly column: number;
    /** From 0, in UTF-16 units from the beginning of the text. */
    readonly offset: number;
}

export interface JsonFinding extends JsonPlace {
    readonly rule: string;
    readonly severity: Severity;
    readonly message: string;
    readonly hint?: string;
    readonly related: readonly (JsonPlace & { readonly message: string })[];
    readonly fixes: readonly { readonly title: string; readonly safety: Fix['safety']; readonly preferred: boolean }[];
}

function findingJson({ finding, place, related }: LocatedFinding): JsonFinding {
    const { rule, severity, message, hint, fixes } = finding;
    return {
        ...placeJson(place),
        rule,
        severity,
        message,
        ...(hint !== undefined && { hint }),
        related: related.map(({ place, message }) => ({ ...placeJson(place), message })),
        fixes: fixes.map(({ title, safety, preferred }) => ({ title, safety, preferred: preferred ?? false })),
    };
}

function placeJson({ file, start, end, lines }: Place): JsonPlace {
    const position = (offset: number) => lines && { ...lines.at(offset), offset };
    return lines ? { file, start: position(start), end: position(end) } : { file };
}
