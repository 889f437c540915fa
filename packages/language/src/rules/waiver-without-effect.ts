import { defineRule } from './rule.js';
import { quoted } from './wording.js';

const plan = (waiver: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
}

menu {
    course dessert "Poached pear" {
        served on dessert-plate at 8 °C
        lasts 20 min
        contains nothing
${waiver}    }
}
`;

export default defineRule({
    id: 'waiver-without-effect',
    group: 'text',
    severity: 'warning',
    since: '0.1.0',
    title: 'A waiver where there is nothing to waive',
    why: 'A waiver left over from an earlier menu hides the next mistake of its kind, and the captain reads a reason for something that is not so.',
    source: ['common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('        <|waive three-per-side because "agreed with the host"|>\n') }],
        right: [{ text: plan('') }],
    },
    check({ plan, rules, unusedWaivers, report }) {
        // A menu checked alone has no guests yet, so that many rules are silent; an unknown rule is `unknown-name`.
        const waivers = plan.event ? (unusedWaivers ?? []) : [];
        for (const { rule, origin } of waivers) {
            const known = rules?.get(rule.name);
            if (known === undefined || known.safety === 'fixed') {
                continue;
            }
            report({
                at: origin,
                message: `Nothing breaks ${quoted(rule.name)} here any more, so there is nothing to waive.`,
                hint: 'Take the waiver out.',
                fixes: [
                    {
                        title: `Take out the waiver of ${quoted(rule.name)}`,
                        safety: 'safe',
                        preferred: true,
                        changes: [{ do: 'remove', at: origin }],
                    },
                ],
            });
        }
    },
});
