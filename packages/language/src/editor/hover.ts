import { MarkupKind, type Hover } from 'vscode-languageserver';
import { ruleById } from '../rules/index.js';
import { aboutCourseAt } from './about-course.js';
import { aboutFigure } from './about-figure.js';
import { aboutName } from './about-name.js';
import { aboutTemperature } from './about-temperature.js';
import type { Client } from './client.js';
import { escaped, inPlainWords } from './markdown.js';
import { eventsWith, namesAt } from './names.js';
import { ruleAddress } from './virtual-texts.js';
import type { Place } from './workspace.js';

/**
 * What is known of the words at an offset: what a name stands for, a course with its times and counts, a figure in other units,
 * what a temperature becomes at the guest, why a finding there matters.
 */
export function hoverAt(
    place: Place,
    offset: number,
    client: Pick<Client, 'takesMarkdown' | 'showsPictures' | 'ruleCommand'>,
): Hover | undefined {
    const { folder, path } = place;
    const text = folder.textOf(path) ?? '';
    const all = namesAt(folder.readingOf(path), offset);
    // Of a range of tables, which one word declares, the first tells of them all.
    const names = all.filter(({ sort }, index) => all.findIndex((each) => each.sort === sort) === index);
    const events = eventsWith(folder, path);
    const checked = folder.checked(events.length === 1 ? events[0]! : path);
    const figure = aboutFigure(text, offset);
    const temperature = aboutTemperature(checked, path, offset);
    const course = aboutCourseAt(checked, path, offset);
    const parts = [
        ...(course ? [course.words] : []),
        ...names.flatMap((name) => aboutName(name, checked, client.showsPictures) ?? []),
        ...(figure ? [figure.words] : []),
        ...(temperature ? [temperature.words] : []),
        ...findingsAt(place, offset).map((id) => aboutRule(id, client)),
    ];
    if (parts.length === 0) {
        return undefined;
    }
    const at = names[0]?.origin ?? (figure && { file: path, ...figure }) ?? temperature?.at ?? course?.at;
    const range = at && folder.rangeOf(at);
    const page = [...new Set(parts)].join('\n\n---\n\n');
    return {
        contents: client.takesMarkdown
            ? { kind: MarkupKind.Markdown, value: page }
            : { kind: MarkupKind.PlainText, value: inPlainWords(page) },
        ...(range ? { range } : {}),
    };
}

function findingsAt({ folder, path }: Place, offset: number): readonly string[] {
    const here = folder
        .findingsIn(path)
        .filter(({ finding }) => finding.at.start <= offset && offset <= finding.at.end);
    return [...new Set(here.map(({ finding }) => finding.rule))];
}

function aboutRule(id: string, client: Pick<Client, 'ruleCommand'>): string {
    const rule = ruleById(id);
    return rule
        ? `**${escaped(rule.title)}** ([${id}](${ruleAddress(id, client)}))\n\n${escaped(rule.why)}\n\n*Source: ${escaped(rule.source.join('; '))}*`
        : `\`${id}\``;
}
