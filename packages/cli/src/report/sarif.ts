import type { Location, Log, ReportingDescriptor, Result } from 'sarif';
import { explainInMarkdown, GROUP_SEVERITY, rules, type Rule, type Severity } from 'underliner-language';
import { countCodePoints } from './lines.js';
import type { LocatedFinding, Place } from './located.js';
import type { Reporter } from './reporter.js';

declare const UNDERLINER_VERSION: string;

/** Static Analysis Results Interchange Format 2.1.0 (OASIS), with what is known of each rule that speaks. */
export const reportSarif: Reporter = ({ findings }) => {
    const spoken = new Set(findings.map(({ finding }) => finding.rule));
    const described = rules.filter(({ id }) => spoken.has(id));
    const log: Log = {
        $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
        version: '2.1.0',
        runs: [
            {
                tool: {
                    driver: {
                        name: 'Underliner',
                        semanticVersion: UNDERLINER_VERSION,
                        rules: described.map(descriptor),
                    },
                },
                // The format knows UTF-16 units and code points only.
                columnKind: 'unicodeCodePoints',
                originalUriBaseIds: { WORKSPACE: { description: { text: 'The root of the workspace.' } } },
                results: findings.map((found) => result(found, described)),
            },
        ],
    };
    return `${JSON.stringify(log, null, 2)}\n`;
};

const levels: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = {
    error: 'error',
    warning: 'warning',
    info: 'note',
    hint: 'note',
};

/** How code hosts call the gravity of what is no weakness of security. */
const gravities: Readonly<Record<Severity, 'error' | 'warning' | 'recommendation'>> = {
    error: 'error',
    warning: 'warning',
    info: 'recommendation',
    hint: 'recommendation',
};

function descriptor(rule: Rule): ReportingDescriptor {
    const { id, group, title, why, source } = rule;
    const severity = rule.severity ?? GROUP_SEVERITY[group];
    return {
        id,
        shortDescription: { text: `${title}.` },
        fullDescription: { text: why },
        help: { text: `${why} Sources: ${source.join(', ')}.`, markdown: explainInMarkdown(rule) },
        defaultConfiguration: { level: levels[severity] },
        properties: { tags: [group], 'problem.severity': gravities[severity] },
    };
}

function result({ finding, place, related }: LocatedFinding, described: readonly Rule[]): Result {
    const { rule, severity, message, hint } = finding;
    const ruleIndex = described.findIndex(({ id }) => id === rule);
    return {
        ruleId: rule,
        ...(ruleIndex >= 0 && { ruleIndex }),
        level: levels[severity],
        message: { text: [message, hint].filter(Boolean).join(' ') },
        locations: [location(place)],
        ...(related.length > 0 && {
            relatedLocations: related.map(({ place, message }, id) => ({
                id,
                ...location(place),
                message: { text: message },
            })),
        }),
    };
}

function location({ inWorkspace, start, end, lines }: Place): Location {
    const from = lines?.at(start, countCodePoints);
    const to = lines?.at(end, countCodePoints);
    return {
        physicalLocation: {
            artifactLocation: {
                uri: inWorkspace.split('/').map(encodeURIComponent).join('/'),
                uriBaseId: 'WORKSPACE',
            },
            ...(from &&
                to && {
                    region: { startLine: from.line, startColumn: from.column, endLine: to.line, endColumn: to.column },
                }),
        },
    };
}
