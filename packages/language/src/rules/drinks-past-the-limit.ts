import { standardDrink } from '../service/drinks/alcohol.js';
import { isBeyondStrength } from './drinks.js';
import { defineRule, type RuleExample } from './rule.js';
import { listed, quoted } from './wording.js';

const event = (amount: string): RuleExample['text'] => `event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 24
}

menu {
    course main "Braised beef" {
        served on dinner-plate warmed to 60 °C at 62 °C
        lasts 30 min
        contains celery, beef
        pour "Country red" ${amount} into red-wine-glass at 15 °C, is medium-red-wine, refill 2 {
            contains sulphites
            instead "Pressed blackcurrant" 120 ml, is juice { contains nothing }
        }
    }
}
`;

export default defineRule({
    id: 'drinks-past-the-limit',
    group: 'drinks',
    since: '0.1.0',
    title: 'More alcohol a guest than the house’s line for caution',
    why: 'The plan says what is poured, not what is drunk. Past the line the captain briefs servers to ask before each pour, and water and food keep pace.',
    source: ['quantities 2.4', 'quantities 2.5'],
    fix: 'never',
    noFix: 'How much is poured is for the host to say, and who is served is for the local law and licensed staff; a plan must not settle it.',
    customs: ['alcohol-limit'],
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Three large pours of one wine',
                text: event('150 ml').replace('event "Harbour supper"', 'event <|"Harbour supper"|>'),
            },
        ],
        right: [{ text: event('80 ml') }],
    },
    check({ plan, service, report }) {
        const limit = plan.customs['alcohol-limit'].value;
        const standard = standardDrink(plan);
        // Of guests with different dishes, those who have most.
        const [most] = service.alcohol.toSorted((a, b) => b.grams - a.grams);
        const isSlip = service.pours.some(({ pour, kind }) => pour.strength && isBeyondStrength(pour.strength, kind));
        if (!plan.event || !most?.drinks || standard === undefined || most.drinks <= limit || isSlip) {
            return;
        }
        const said = most.by.map(({ use, drinks }) => `${quoted(use.facts.pour.title)} ${drinks!.toFixed(1)}`);
        report({
            at: plan.event.titleOrigin,
            message: `A guest who takes every pour has ${pastLimit(most.drinks, limit)} standard drinks of ${standard} g (${listed(said)}); this house draws its line for caution at ${limit}.`,
            hint: 'Brief the servers to ask before each pour, and keep water and a drink without alcohol at hand; the label gives the strength, and the local law and licensed staff decide who is served.',
            related: most.by.map(({ use: { facts } }) => ({
                at: facts.pour.titleOrigin,
                message: `${quoted(facts.pour.title)} is poured here.`,
            })),
        });
    },
});

/** With as many decimals as it takes to see that it is more: 2.03 against 2. */
function pastLimit(drinks: number, limit: number): string {
    const rounded = drinks.toFixed(1);
    return Number(rounded) > limit ? rounded : drinks.toFixed(2);
}
