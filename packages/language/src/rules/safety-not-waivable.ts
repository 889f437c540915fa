import type { RuleSetting } from '../plan/types.js';
import type { Fix } from './fixes.js';
import { defineRule, type Rule } from './rule.js';
import { asName, quoted } from './wording.js';

export default defineRule({
    id: 'safety-not-waivable',
    group: 'safety',
    safety: 'fixed',
    since: '0.1.0',
    title: 'A safety rule switched off, lowered too far or waived',
    why: 'A house may have its own customs, not its own burns or allergies. What can hurt a guest stays in sight of everyone who reads the plan.',
    source: ['temperature 3.1', 'temperature 4.1', 'common practice, no source'],
    fix: 'always',
    scope: 'file',
    examples: {
        wrong: [
            {
                title: 'An allergen can’t be switched off',
                text: 'house "Saltmarsh Hall" {\n    <|rule allergen-reaches-guest is off because "guests know"|>\n}\n',
            },
            {
                title: 'Other safety rules stay at least a warning',
                text: 'house "Saltmarsh Hall" {\n    <|rule allergens-not-stated is hint because "the recipes say so"|>\n}\n',
            },
        ],
        right: [
            {
                text: 'house "Saltmarsh Hall" {\n    rule allergens-not-stated is warning because "the recipe book is being checked"\n}\n',
            },
        ],
    },
    check({ plan, rules, report }) {
        for (const setting of plan.house.settings) {
            const rule = rules?.get(setting.rule.name);
            const isTooLow =
                rule?.safety === 'fixed'
                    ? setting.level !== 'error'
                    : setting.level !== 'error' && setting.level !== 'warning';
            if (rule?.safety && isTooLow) {
                report({
                    at: setting.origin,
                    message: `${quoted(rule.id)} keeps guests from harm and ${limit(rule)}; this line has no effect.`,
                    hint:
                        rule.safety === 'fixed'
                            ? 'Take the line out, and change the service.'
                            : 'Make it a warning, with the reason.',
                    fixes: [rule.safety === 'fixed' ? takeOut(setting) : lowerToWarning(setting)],
                });
            }
        }
        for (const waiver of plan.waivers) {
            if (rules?.get(waiver.rule.name)?.safety === 'fixed') {
                report({
                    at: waiver.origin,
                    message: `${quoted(waiver.rule.name)} keeps guests from harm and can’t be waived; this line has no effect.`,
                    hint: 'Take the line out, and change the service.',
                    fixes: [takeOut(waiver)],
                });
            }
        }
    },
});

function limit({ safety }: Pick<Rule, 'safety'>): string {
    return safety === 'fixed' ? 'can be neither switched off nor lowered' : 'can be lowered to a warning at most';
}

/** The line does nothing, so that taking it out changes nothing. */
function takeOut({ rule, origin }: Pick<RuleSetting, 'rule' | 'origin'>): Fix {
    return {
        title: `Take out the line about ${quoted(rule.name)}`,
        safety: 'safe',
        preferred: true,
        changes: [{ do: 'remove', at: origin }],
    };
}

function lowerToWarning({ rule, reason, origin }: RuleSetting): Fix {
    const because = reason ? ` because "${reason.text}"` : '';
    return {
        title: `Make ${quoted(rule.name)} a warning`,
        safety: 'unsafe',
        preferred: true,
        changes: [{ do: 'replace', at: origin, words: `rule ${asName(rule.name)} is warning${because}` }],
    };
}
