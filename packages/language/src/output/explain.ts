import type { Severity } from '../plan/types.js';
import { readExample } from '../rules/example.js';
import type { Safety } from '../rules/fixes.js';
import { GROUP_SEVERITY, type Rule, type RuleExample } from '../rules/rule.js';

/** What a check says about one of a rule's wrong examples. */
export interface Outcome {
    readonly file: string;
    /** From 1. */
    readonly line: number;
    /** The words the finding lands on. */
    readonly words: string;
    readonly message: string;
    readonly hint?: string;
    readonly fixes: readonly { readonly title: string; readonly safety: Safety }[];
}

/** An explanation before it has a form; names and code in its texts stand in back-quotes. */
export type Block =
    | { readonly sort: 'title' | 'heading' | 'paragraph'; readonly text: string }
    | { readonly sort: 'points'; readonly texts: readonly string[] }
    | { readonly sort: 'code'; readonly text: string };

const SEVERITY: Record<Severity, string> = {
    error: 'an error',
    warning: 'a warning',
    info: 'an information',
    hint: 'a hint',
};

const FIX: Record<Rule['fix'], string> = {
    always: 'Every finding comes with a fix.',
    sometimes: 'Some findings come with a fix.',
    never: 'There is no fix.',
};

const SAFETY: Record<Safety, string> = {
    safe: 'also with `check --fix`',
    unsafe: 'also with `check --unsafe-fixes`',
    show: 'by hand only',
};

export function severityOf(rule: Rule): Severity {
    return rule.severity ?? GROUP_SEVERITY[rule.group];
}

/**
 * Everything there is to say about a rule, from its own file: the one source of `explain`, the hover and docs/rules.
 * @param outcomes what a check says of each wrong example, in their order; left out where there is no time for a check
 */
export function explanation(rule: Rule, outcomes: readonly (readonly Outcome[])[] = []): readonly Block[] {
    const { wrong, right } = rule.examples;
    return [
        { sort: 'title', text: `${rule.id}: ${lowerFirst(rule.title)}` },
        { sort: 'paragraph', text: standing(rule) },
        { sort: 'heading', text: 'Why' },
        { sort: 'paragraph', text: rule.why },
        ...wrong.flatMap((example, index) => [
            ...headed('Wrong', example, index, wrong.length),
            ...(outcomes[index] ?? []).flatMap((outcome) => said(outcome, example)),
        ]),
        ...right.flatMap((example, index) => headed('Right', example, index, right.length)),
        { sort: 'heading', text: 'Fix' },
        { sort: 'paragraph', text: [FIX[rule.fix], rule.noFix].filter((text) => text !== undefined).join(' ') },
        { sort: 'heading', text: 'Setting it' },
        ...setting(rule),
        ...customs(rule),
        { sort: 'heading', text: 'Sources' },
        { sort: 'paragraph', text: `${rule.source.join('; ')}.` },
    ];
}

function standing(rule: Rule): string {
    const severity = SEVERITY[severityOf(rule)];
    return rule.safety === 'fixed'
        ? `This is always ${severity}.`
        : `This is ${severity} unless the house sets it otherwise.`;
}

function headed(word: 'Wrong' | 'Right', example: RuleExample, index: number, count: number): Block[] {
    return [
        { sort: 'heading', text: count > 1 ? `${word} ${index + 1}` : word },
        ...(example.title === undefined ? [] : [{ sort: 'paragraph' as const, text: `${example.title}:` }]),
        ...codeOf(example),
    ];
}

function codeOf(example: RuleExample): Block[] {
    const files = Object.entries(readExample(example.text).texts);
    return files.flatMap(([name, text]): Block[] => [
        ...(files.length > 1 ? [{ sort: 'paragraph' as const, text: `\`${name}\`:` }] : []),
        { sort: 'code', text: text.trimEnd() },
    ]);
}

function said(outcome: Outcome, example: RuleExample): Block[] {
    const isOneFile = Object.keys(readExample(example.text).texts).length === 1;
    const where = `Line ${outcome.line}${isOneFile ? '' : ` of \`${outcome.file}\``}`;
    return [
        { sort: 'paragraph', text: `${where}, ${inBackQuotes(outcome.words)}:` },
        {
            sort: 'points',
            texts: [
                [outcome.message, outcome.hint].filter((text) => text !== undefined).join(' '),
                ...outcome.fixes.map(({ title, safety }) => `Fix: ${title} (${SAFETY[safety]}).`),
            ],
        },
    ];
}

function setting(rule: Rule): Block[] {
    switch (rule.safety) {
        case 'fixed':
            return [{ sort: 'paragraph', text: 'Someone could be harmed: it can be neither waived nor switched off.' }];
        case 'floor':
            return [
                {
                    sort: 'paragraph',
                    text: 'Someone could be harmed: the house can make it a warning, with a reason, and no less; where it is waived it still warns.',
                },
                { sort: 'code', text: `rule ${rule.id} is warning because "…"` },
            ];
        case undefined:
            return [
                {
                    sort: 'paragraph',
                    text: 'In the house, for every event; or in the block it concerns, for that block. Both need a reason.',
                },
                { sort: 'code', text: `rule ${rule.id} is off because "…"\nwaive ${rule.id} because "…"` },
            ];
    }
}

function customs({ customs: names = [] }: Rule): Block[] {
    if (names.length === 0) {
        return [];
    }
    const list = names.map((name) => `\`${name}\``).join(', ');
    return [
        { sort: 'heading', text: 'Customs it reads' },
        { sort: 'paragraph', text: `${list}: declared by the house in \`laying { … }\`.` },
    ];
}

/** The explanation as Markdown; ends with a line end. */
export function asMarkdown(blocks: readonly Block[]): string {
    const parts = blocks.map((block) => {
        switch (block.sort) {
            case 'title':
                return `# ${escaped(block.text)}`;
            case 'heading':
                return `## ${escaped(block.text)}`;
            case 'paragraph':
                return escaped(block.text);
            case 'points':
                return block.texts.map((text) => `- ${escaped(text)}`).join('\n');
            case 'code':
                return `\`\`\`cover\n${block.text}\n\`\`\``;
        }
    });
    return `${parts.join('\n\n')}\n`;
}

/** The explanation as plain text for a terminal; ends with a line end. */
export function asText(blocks: readonly Block[]): string {
    const parts = blocks.map((block) => {
        switch (block.sort) {
            case 'title':
            case 'heading':
                return block.text;
            case 'paragraph':
                return `  ${block.text}`;
            case 'points':
                return block.texts.map((text) => `  - ${text}`).join('\n');
            case 'code':
                return block.text.replace(/^(?=.)/gm, '    ');
        }
    });
    return `${parts.join('\n\n')}\n`;
}

/** Characters that Markdown would read as marks, outside back-quotes. */
function escaped(text: string): string {
    return text
        .split(/(`[^`]*`)/)
        .map((part) => (part.startsWith('`') ? part : part.replace(/[\\*_<>[\]]/g, '\\$&')))
        .join('');
}

function inBackQuotes(words: string): string {
    const line = words.split('\n')[0]!.trimEnd();
    return line === words ? `\`${line}\`` : `\`${line} …\``;
}

function lowerFirst(text: string): string {
    // A name of its own, such as `UK`, keeps its capitals.
    return /^[A-Z][a-z ]/.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}
