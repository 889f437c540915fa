import { SUBJECTS, type Change, type Subject } from './change.js';

const HEADINGS: Record<Subject, string> = {
    allergens: 'Allergens and diets',
    guests: 'Guests',
    day: 'The day',
    menu: 'Menu',
    pieces: 'Pieces to pull',
    supplies: 'Supplies',
    drinks: 'Drinks',
    times: 'Times',
    temperatures: 'Temperatures',
    room: 'Room',
    team: 'Team',
    tasks: 'Setup and strike',
    house: 'House',
    findings: 'Findings',
    plan: 'Behind the plan',
};

/** The changes as lines under headings; `nothing` where there are none. */
export function tellChanges(changes: readonly Change[], nothing: string): string {
    return changes.length === 0 ? `${nothing}\n` : sections(changes, (heading) => heading, '    ');
}

/** The same as Markdown. */
export function tellChangesInMarkdown(changes: readonly Change[], nothing: string): string {
    return changes.length === 0 ? `${nothing}\n` : sections(changes, (heading) => `### ${heading}\n`, '- ');
}

function sections(changes: readonly Change[], head: (heading: string) => string, bullet: string): string {
    return SUBJECTS.flatMap((subject) => {
        const own = changes.filter((change) => change.subject === subject);
        return own.length === 0
            ? []
            : [`${head(HEADINGS[subject])}\n${own.map(({ text }) => `${bullet}${sentence(text)}\n`).join('')}`];
    }).join('\n');
}

function sentence(text: string): string {
    return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
