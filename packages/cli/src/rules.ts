import { GROUP_SEVERITY, rules } from 'underliner-language';
import type { RuleListFormat } from './formats.js';
import { palette, wantsColor, type ColorChoice } from './colors.js';
import { writeResult } from './output.js';

export interface RulesOptions {
    readonly format: RuleListFormat;
    readonly color: ColorChoice;
}

/** `underliner rules`: every rule, by group and id. */
export function runRules({ format, color }: RulesOptions): number {
    const listed = rules
        .map(({ id, group, severity = GROUP_SEVERITY[group], title, fix }) => ({ id, group, severity, fix, title }))
        .sort((a, b) => compare(a.group, b.group) || compare(a.id, b.id));
    if (format === 'json') {
        writeResult(`${JSON.stringify(listed, null, 2)}\n`);
        return 0;
    }
    const colors = palette(wantsColor(color, 1));
    const width = Math.max(0, ...listed.map(({ id }) => id.length));
    let group: string | undefined;
    for (const rule of listed) {
        if (rule.group !== group) {
            writeResult(`${group === undefined ? '' : '\n'}${colors.place(rule.group)}\n`);
            group = rule.group;
        }
        const severity = colors.severity[rule.severity](rule.severity.padEnd(7));
        writeResult(`  ${rule.id.padEnd(width)}  ${severity}  ${rule.title}\n`);
    }
    return 0;
}

function compare(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}
