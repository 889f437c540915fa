import { MarkupKind, type Hover } from 'vscode-languageserver';
import { ruleById } from '../rules/index.js';
import { aboutFigure } from './about-figure.js';
import { aboutName } from './about-name.js';
import { escaped } from './markdown.js';
import { eventsWith, namesAt } from './names.js';
import { ruleAddress } from './virtual-texts.js';
import type { Place } from './workspace.js';

/** What is known of the words at an offset: why a finding there matters, what a name stands for, a figure in other units. */
export function hoverAt(place: Place, offset: number): Hover | undefined {
    const { folder, path } = place;
    const text = folder.textOf(path) ?? '';
    const names = namesAt(folder.readingOf(path), offset);
    const events = eventsWith(folder, path);
    const checked = folder.checked(events.length === 1 ? events[0]! : path);
    const figure = aboutFigure(text, offset);
    const parts = [
        ...names.flatMap((name) => aboutName(name, checked) ?? []),
        ...(figure ? [figure.words] : []),
        ...findingsAt(place, offset).map(aboutRule),
    ];
    if (parts.length === 0) {
        return undefined;
    }
    const at = names[0]?.origin ?? (figure && { file: path, ...figure });
    const range = at && folder.rangeOf(at);
    return {
        contents: { kind: MarkupKind.Markdown, value: [...new Set(parts)].join('\n\n---\n\n') },
        ...(range ? { range } : {}),
    };
}

function findingsAt({ folder, path }: Place, offset: number): readonly string[] {
    const here = folder
        .findingsIn(path)
        .filter(({ finding }) => finding.at.start <= offset && offset <= finding.at.end);
    return [...new Set(here.map(({ finding }) => finding.rule))];
}

function aboutRule(id: string): string {
    const rule = ruleById(id);
    return rule
        ? `**${escaped(rule.title)}** ([${id}](${ruleAddress(id)}))\n\n${escaped(rule.why)}\n\n*Source: ${escaped(rule.source.join('; '))}*`
        : `\`${id}\``;
}
