import type { Severity } from '../plan/types.js';
import { defineRule, GROUP_SEVERITY } from './rule.js';
import { quoted } from './wording.js';

const HEAVIEST_FIRST: readonly (Severity | 'off')[] = ['error', 'warning', 'info', 'hint', 'off'];

export default defineRule({
    id: 'off-without-reason',
    group: 'text',
    since: '0.1.0',
    title: 'A rule switched off, lowered or waived without saying why',
    why: 'The captain on the night and the chef next year see only what is written. Without the reason nobody knows whether it still holds.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the chef knows the reason.',
    scope: 'file',
    examples: {
        wrong: [{ text: 'house "Saltmarsh Hall" {\n    <|rule matched-pair is off|>\n}\n' }],
        right: [
            {
                text: 'house "Saltmarsh Hall" {\n    rule matched-pair is off because "the fish forks are out for repair"\n}\n',
            },
        ],
    },
    check({ plan, rules, report }) {
        const hint = 'Say why in a few words: `because "…"`.';
        for (const { rule, level, reason, origin } of plan.house.settings) {
            const known = rules?.get(rule.name);
            const own = known && (known.severity ?? GROUP_SEVERITY[known.group]);
            // Taking a rule more seriously needs no excuse; what can't be lowered is `safety-not-waivable`.
            const isLowered = own !== undefined && HEAVIEST_FIRST.indexOf(level) > HEAVIEST_FIRST.indexOf(own);
            if (!reason?.text.trim() && isLowered && known?.safety !== 'fixed') {
                report({
                    at: origin,
                    message: `${quoted(rule.name)} is ${level === 'off' ? 'switched off' : `lowered from ${own} to ${level}`} without a reason.`,
                    hint,
                });
            }
        }
        for (const { rule, reason, origin } of plan.waivers) {
            const known = rules?.get(rule.name);
            if (!reason?.text.trim() && known && known.safety !== 'fixed') {
                report({ at: origin, message: `${quoted(rule.name)} is waived without a reason.`, hint });
            }
        }
    },
});
