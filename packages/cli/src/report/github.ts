import type { Severity } from 'underliner-language';
import type { LocatedFinding } from './located.js';
import type { Reporter } from './reporter.js';

/** Workflow commands, which a GitHub build shows beside the changed lines. Hints are notices too. */
export const reportGithub: Reporter = ({ findings }) => findings.map(annotation).join('');

const commands: Readonly<Record<Severity, string>> = {
    error: 'error',
    warning: 'warning',
    info: 'notice',
    hint: 'notice',
};

function annotation({ finding, place }: LocatedFinding): string {
    const from = place.lines?.at(place.start);
    const to = place.lines?.at(place.end);
    // Columns of a range over several lines would be refused.
    const columns = from?.line === to?.line ? { col: from?.column, endColumn: to?.column } : {};
    const properties = {
        file: place.inWorkspace,
        line: from?.line,
        endLine: to?.line,
        ...columns,
        title: finding.rule,
    };
    const written = Object.entries(properties)
        .filter(([, value]) => value !== undefined)
        .map(([name, value]) => `${name}=${escapeProperty(String(value))}`);
    const message = [finding.message, finding.hint].filter(Boolean).join('\n');
    return `::${commands[finding.severity]} ${written.join(',')}::${escapeMessage(message)}\n`;
}

function escapeMessage(text: string): string {
    return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapeProperty(text: string): string {
    return escapeMessage(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
