import type { Finding } from '../../rules/rule.js';
import { paired, type Change, type Compared } from './change.js';

/** Findings that are new, gone, or say another figure now. The same finding is one of the same rule about the same words. */
export function changedFindings(before: Compared, after: Compared): Change[] {
    return paired(keyed(before), keyed(after), ({ key }) => key).flatMap(({ key, was, is }): Change[] => {
        const said = (finding: Finding): string => `${finding.rule}: ${finding.message.replace(/\.$/, '')}`;
        if (was && is) {
            return was.finding.message === is.finding.message
                ? []
                : [{ subject: 'findings', key, text: `now says ${said(is.finding)}` }];
        }
        return is
            ? [{ subject: 'findings', key, text: `new ${is.finding.severity}, ${said(is.finding)}` }]
            : [{ subject: 'findings', key, text: `gone, ${said(was!.finding)}` }];
    });
}

function keyed({ findings, texts }: Compared): { readonly key: string; readonly finding: Finding }[] {
    return findings.map((finding) => {
        const words = texts.get(finding.at.file)?.slice(finding.at.start, finding.at.end) ?? '';
        return {
            key: `${finding.rule} ${words.replaceAll(/\s+/g, ' ').replaceAll(/\d+([.,]\d+)?/g, '#')}`,
            finding,
        };
    });
}
