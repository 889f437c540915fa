import type { Severity } from 'underliner-language';
import type { Palette } from '../colors.js';
import type { ReportFormat } from '../formats.js';
import type { LocatedFinding } from './located.js';
import { reportText } from './text.js';

/** What one run of `check` has to say. */
export interface Run {
    /** In order, only those to show. */
    readonly findings: readonly LocatedFinding[];
    /** Of all findings, shown or not. */
    readonly counts: Readonly<Record<Severity, number>>;
    readonly filesChecked: number;
    /** Findings below `--show`. */
    readonly hidden: number;
    /** Fixes written by `--fix`. */
    readonly fixed: number;
}

/** Turns a run into the text of one format, with its last line end. */
export type Reporter = (run: Run, palette: Palette) => string | Promise<string>;

/** Each reporter but the usual one is loaded only when it is asked for. */
export async function reporterFor(format: ReportFormat): Promise<Reporter> {
    switch (format) {
        case 'text':
            return reportText;
        case 'json':
            return (await import('./json.js')).reportJson;
        case 'sarif':
            return (await import('./sarif.js')).reportSarif;
        case 'github':
            return (await import('./github.js')).reportGithub;
    }
}
