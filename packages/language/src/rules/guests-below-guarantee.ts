import { defineRule } from './rule.js';
import { agreeing, counted } from './wording.js';

const plan = (guests: string): string => `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests ${guests}
}

menu {
    course main "Braised lentils" {
        served in soup-plate warmed at 64 °C
        lasts 30 min
        contains celery
    }
}
`;

export default defineRule({
    id: 'guests-below-guarantee',
    group: 'guests',
    severity: 'info',
    since: '0.2.0',
    title: 'Fewer guests expected than the host pays for',
    why: 'The host pays for the number that is guaranteed and may bring as many after all. Food is cooked and wine is pulled for those expected.',
    source: ['quantities 4', 'common practice, no source'],
    fix: 'always',
    scope: 'event',
    examples: {
        wrong: [{ text: plan('40 guaranteed <|46|> set for 48') }],
        right: [
            { title: 'As many as are paid for', text: plan('46 guaranteed 46 set for 48') },
            { title: 'More come than were promised', text: plan('48 guaranteed 46 set for 50') },
        ],
    },
    check({ plan, report }) {
        const { expected, guaranteed, setFor } = plan.event?.guests ?? {};
        if (!expected || !guaranteed || guaranteed.count <= expected.count) {
            return;
        }
        // Fewer covers than are paid for is `portions-do-not-add-up`.
        if (guaranteed.count > Math.max(expected.count, setFor?.count ?? 0)) {
            return;
        }
        const fewer = guaranteed.count - expected.count;
        report({
            at: guaranteed.origin,
            message: `${counted(guaranteed.count, 'guest')} ${agreeing(guaranteed.count, 'is', 'are')} guaranteed and ${expected.count} expected: food is cooked and bottles are pulled for ${fewer} fewer than the host pays for.`,
            hint: `Expect ${guaranteed.count} while they may still come; once it is sure that they do not, settle with the host what becomes of what is paid.`,
            related: [{ at: expected.origin, message: `${counted(expected.count, 'guest')} expected here.` }],
            fixes: [
                {
                    title: `Expect ${counted(guaranteed.count, 'guest')}`,
                    safety: 'unsafe',
                    changes: [{ do: 'replace', at: expected.origin, words: String(guaranteed.count) }],
                },
            ],
        });
    },
});
