import { surestFix, type Finding, type Severity } from 'underliner-language';
import type { Palette } from '../colors.js';
import { excerpt } from './excerpt.js';
import type { LocatedFinding, Place } from './located.js';
import type { Reporter, Run } from './reporter.js';

/** For people: each finding with the line it speaks of, what to do and which fix there is; a summary last. */
export const reportText: Reporter = (run, palette) =>
    [...run.findings.map((found) => describe(found, palette)), summary(run, palette)].join('\n');

/** One finding, with its last line end. */
export function describe({ finding, place, related }: LocatedFinding, palette: Palette): string {
    const { severity, rule, message, hint } = finding;
    const lines = [
        `${palette.place(position(place))}: ${palette.severity[severity](severity)}: ${message} ${palette.quiet(`(${rule})`)}`,
    ];
    const shown = place.lines ? excerpt(place.lines, place.start, place.end) : [];
    const width = Math.max(4, ...shown.map(({ number }) => String(number).length));
    const margin = (label: string | number) => palette.quiet(`${String(label).padStart(width)} |`);
    for (const { number, source, marks } of shown) {
        lines.push(`${margin(number)} ${source}`);
        lines.push(`${margin('')} ${palette.severity[severity](marks)}`);
    }
    const indent = ' '.repeat(width + 1);
    if (hint !== undefined) {
        lines.push(`${indent}${hint}`);
    }
    const fix = fixLine(finding);
    if (fix !== undefined) {
        lines.push(`${indent}${palette.fix(fix)}`);
    }
    for (const { place, message } of related) {
        lines.push(`${indent}${palette.quiet(`${position(place)}:`)} ${message}`);
    }
    return lines.map((line) => `${line}\n`).join('');
}

function position({ file, start, lines }: Place): string {
    if (lines === undefined) {
        return file;
    }
    const { line, column } = lines.at(start);
    return `${file}:${line}:${column}`;
}

/** How what mends it is applied; where only the writer can choose, all that there is to choose from. */
function fixLine({ fixes }: Finding): string | undefined {
    const safe = surestFix(fixes, 'safe');
    const unsafe = surestFix(fixes, 'unsafe');
    if (safe) {
        return `--fix: ${safe.title}`;
    }
    if (unsafe) {
        return `--unsafe-fixes: ${unsafe.title}`;
    }
    return fixes.length > 0 ? `In the editor: ${fixes.map(({ title }) => title).join(', or: ')}` : undefined;
}

const severities = ['error', 'warning', 'info', 'hint'] as const satisfies readonly Severity[];
const called: Readonly<Record<Severity, readonly [one: string, many: string]>> = {
    error: ['error', 'errors'],
    warning: ['warning', 'warnings'],
    info: ['info', 'info'],
    hint: ['hint', 'hints'],
};

function summary(run: Run, palette: Palette): string {
    const found = severities
        .filter((severity) => run.counts[severity] > 0)
        .map((severity) => palette.severity[severity](count(run.counts[severity], ...called[severity])));
    const sentences = [`${count(run.filesChecked, 'file', 'files')} checked: ${found.join(', ') || 'nothing found'}.`];
    if (run.hidden > 0) {
        sentences.push(`${run.hidden} not shown; \`--show hint\` shows all.`);
    }
    if (run.fixed > 0) {
        sentences.push(`${count(run.fixed, 'fix', 'fixes')} applied.`);
    }
    const fixable = run.findings.filter(({ finding }) => finding.hasSafeFix).length;
    if (fixable > 0) {
        sentences.push(`${fixable} can be fixed with \`--fix\`.`);
    }
    return `${sentences.join(' ')}\n`;
}

function count(number: number, one: string, many: string): string {
    return `${number} ${number === 1 ? one : many}`;
}
