import {
    SemanticTokenModifiers,
    SemanticTokensBuilder,
    SemanticTokenTypes,
    type Range,
    type SemanticTokens,
    type SemanticTokensLegend,
} from 'vscode-languageserver';
import type { NameSort, Occurrence } from '../plan/types.js';
import { isInCupboard } from './names.js';
import type { Place } from './workspace.js';

/** Names of each sort by the standard's types, so that every theme has a colour for them. Titles stay texts. */
const TYPE: Partial<Record<NameSort, SemanticTokenTypes>> = {
    piece: SemanticTokenTypes.variable,
    kind: SemanticTokenTypes.type,
    drink: SemanticTokenTypes.type,
    'kind-or-drink': SemanticTokenTypes.type,
    substance: SemanticTokenTypes.enumMember,
    diet: SemanticTokenTypes.enumMember,
    code: SemanticTokenTypes.namespace,
    custom: SemanticTokenTypes.property,
    choice: SemanticTokenTypes.enumMember,
    rule: SemanticTokenTypes.function,
    course: SemanticTokenTypes.type,
    table: SemanticTokenTypes.parameter,
    shape: SemanticTokenTypes.enumMember,
    role: SemanticTokenTypes.parameter,
};

const MODIFIERS = [SemanticTokenModifiers.declaration, SemanticTokenModifiers.defaultLibrary] as const;
const types = [...new Set(Object.values(TYPE))];

export const legend: SemanticTokensLegend = { tokenTypes: types, tokenModifiers: [...MODIFIERS] };

/** The names of a file, or of the lines of a range. Words of the language are coloured by the client's own grammar. */
export function semanticTokens({ folder, path }: Place, within?: Range): SemanticTokens {
    const builder = new SemanticTokensBuilder();
    const document = folder.documentOf(path);
    let end = 0;
    for (const occurrence of inOrder(folder.readingOf(path)?.occurrences ?? [])) {
        const { origin, sort } = occurrence;
        const type = TYPE[sort];
        if (!document || type === undefined || origin.start < end || isTitle(document.getText(), origin.start)) {
            continue;
        }
        const at = document.positionAt(origin.start);
        end = origin.end;
        if (!within || (at.line >= within.start.line && at.line <= within.end.line)) {
            builder.push(
                at.line,
                at.character,
                origin.end - origin.start,
                types.indexOf(type),
                modifiersOf(occurrence),
            );
        }
    }
    return builder.build();
}

/** Where several names stand in one word, the one that is used goes before the one that is declared. */
function inOrder(occurrences: readonly Occurrence[]): readonly Occurrence[] {
    return [...occurrences].sort(
        (a, b) => a.origin.start - b.origin.start || Number(a.role === 'declares') - Number(b.role === 'declares'),
    );
}

function isTitle(text: string, start: number): boolean {
    return /["“„]/.test(text[start] ?? '');
}

function modifiersOf(occurrence: Occurrence): number {
    const isDeclared = occurrence.role === 'declares' ? 1 << MODIFIERS.indexOf(SemanticTokenModifiers.declaration) : 0;
    const isStandard =
        occurrence.role === 'uses' && isInCupboard(occurrence)
            ? 1 << MODIFIERS.indexOf(SemanticTokenModifiers.defaultLibrary)
            : 0;
    return isDeclared | isStandard;
}
