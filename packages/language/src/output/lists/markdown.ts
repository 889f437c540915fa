import { dayInWords } from '../sheets/evening.js';
import { ERRORS_LEFT, type List, type ListCell } from './list.js';

/** The list as a table of GitHub Flavored Markdown, under its title, with the cautions below. */
export function listMarkdown({ title, event, date, revision, despiteErrors, columns, rows, cautions }: List): string {
    const about = [
        event,
        ...(date === undefined ? [] : [dayInWords(date)]),
        ...(revision === undefined ? [] : [`revision ${revision}`]),
    ];
    const paragraphs = [
        `## ${cell(title)}`,
        cell(about.join(', ')),
        ...(despiteErrors ? [`**${ERRORS_LEFT}**`] : []),
        [
            line(columns.map(({ head }) => head)),
            `| ${columns.map(({ figures }) => (figures ? '--:' : ':--')).join(' | ')} |`,
            ...rows.map(line),
        ].join('\n'),
        ...cautions.map(cell),
    ];
    return `${paragraphs.join('\n\n')}\n`;
}

function line(cells: readonly ListCell[]): string {
    return `| ${cells.map(cell).join(' | ')} |`;
}

/** Everything a plan says is text: no mark of it makes a link, a heading or another column. */
function cell(text: ListCell): string {
    return typeof text === 'number'
        ? String(text)
        : (text ?? '').replace(/[\\`*_<>[\]#|~&]/g, '\\$&').replace(/\s+/g, ' ');
}
