import { undercooked } from '../service/undercooked.js';
import { firstSight } from './first-sight.js';
import { defineRule } from './rule.js';
import { agreeing, listed, quoted } from './wording.js';

/** Names the dishes and reminds, as temperature S16 asks; the local authority may want other words. */
const noticeOf = (titles: readonly string[]): string =>
    `${listed(titles)} ${agreeing(titles.length, 'is', 'are')} served raw or undercooked. Eating raw or undercooked meat, seafood, shellfish or eggs may raise your risk of illness, above all with certain medical conditions.`;

const plan = (notice: string, cook: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24
${notice}}

menu {
    course main {
        lasts 35 min
        dish "Grilled sirloin" is steak {
            served on dinner-plate warmed at 54 °C
            ${cook}
            contains nothing
        }
    }
}
`;

export default defineRule({
    id: 'advisory-missing',
    group: 'safety',
    safety: 'floor',
    since: '0.1.0',
    title: 'Raw or undercooked food without a notice on the menu',
    why: 'Guests decide for themselves whether to eat it, and can do so only when the menu tells them. In many places the food code demands it.',
    source: ['temperature S16', 'temperature S11', 'temperature S12', 'temperature S13'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('', '<|cook to 52 °C|>') }],
        right: [{ text: plan(`    notice "${noticeOf(['Grilled sirloin'])}"\n`, 'cook to 52 °C') }],
    },
    check({ plan, service, report }) {
        const { event } = plan;
        if (!event || event.notice?.text.trim()) {
            return;
        }
        const isNew = firstSight();
        const found = service.facts.flatMap(({ dish, kind }) => {
            const how = undercooked(dish, kind, plan);
            return how ? [{ dish, ...how }] : [];
        });
        const notice = noticeOf([...new Set(found.map(({ dish }) => dish.title))]);
        for (const { dish, at, words } of found.filter((each) => isNew(each.at))) {
            report({
                at,
                message: `${quoted(dish.title)} ${words}, and the menu gives guests no notice of it.`,
                hint: 'Put one notice on the menu for all that is raw or undercooked, in the words that the local food code asks for; never serve it to guests who are highly susceptible.',
                related: [{ at: event.titleOrigin, message: 'The event has no `notice`.' }],
                fixes: [
                    {
                        title: 'Put a notice on the menu',
                        safety: 'unsafe',
                        preferred: true,
                        changes: [{ do: 'add-clause', to: event.origin, clause: `notice "${notice}"` }],
                    },
                ],
            });
        }
    },
});
