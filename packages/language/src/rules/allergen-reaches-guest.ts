import type { Cupboard } from '../plan/cupboard.js';
import { withParents } from '../plan/names.js';
import { isFromCupboard } from '../plan/origin.js';
import type { Conflict, GuestGroup } from '../service/types.js';
import { guestsOf, statedHere } from './guest-words.js';
import { defineRule } from './rule.js';
import { agreeing, quoted } from './wording.js';

export default defineRule({
    id: 'allergen-reaches-guest',
    group: 'safety',
    safety: 'fixed',
    since: '0.1.0',
    title: 'A guest is given something with an allergen they must not meet',
    why: 'A trace can close a throat. The plan has to keep the dish, its sauce, the bread and the glass away from the guest before anyone plates.',
    source: ['temperature 3.1', 'temperature 3.2', 'temperature 3.3', 'temperature 3.4'],
    fix: 'never',
    noFix: 'No wording makes food safe: only the kitchen can leave the allergen out or cook something else, and then the plan says so.',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'The butter on every bread plate',
                text: `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24 {
        2 without milk
    }
}

menu {
    course main "Braised lentils" {
        served in soup-plate warmed at 64 °C
        lasts 30 min
        contains celery
    }
    bread from main until main on bread-plate with butter-spreader {
        contains gluten
        butter { contains <|milk|> }
    }
}
`,
            },
        ],
        right: [
            {
                title: 'Left off for those guests',
                text: `event "Harbour lunch" {
    date 2026-10-17
    zone America/Halifax
    seated 12:30
    guests 24 {
        2 without milk
    }
}

menu {
    course main "Braised lentils" {
        served in soup-plate warmed at 64 °C
        lasts 30 min
        contains celery
    }
    bread from main until main on bread-plate with butter-spreader {
        contains gluten
        butter left off for guests without milk { contains milk }
    }
}
`,
            },
        ],
    },
    check({ plan, service, report }) {
        for (const { group, count, conflict, course } of service.reaches) {
            if (!conflict.allergen) {
                continue;
            }
            const where = plan.menu?.courses[course];
            // A course that is one dish goes by the dish's own title.
            const isSaid = where === undefined || conflict.carrier === quoted(where.title);
            const at = isFromCupboard(conflict.origin) ? (where?.head ?? group.origin) : conflict.origin;
            report({
                at,
                message: `${withArticle(conflict.carrier)} ${isSaid ? '' : `in \`${where.title}\` `}contains ${contents(conflict, plan.cupboard)}, and ${guestsOf({ ...group, count })} would get it.`,
                hint: remedy(conflict, group),
                related: [{ at: group.origin, message: statedHere(group) }],
            });
        }
    },
});

/** `The butter`, `The sauce \`Cider cream\``; a dish or drink by its title alone. */
function withArticle(carrier: string): string {
    return carrier.startsWith('`') ? carrier : `The ${carrier}`;
}

/** What is in it, and which of the guest's words it falls under. */
function contents({ substance, excluded }: Conflict, { substances }: Cupboard): string {
    if (substance === excluded) {
        return quoted(substance);
    }
    return withParents(substance, substances).has(excluded)
        ? `${quoted(substance)} (${quoted(excluded)})`
        : `${quoted(substance)} (perhaps ${quoted(excluded)})`;
}

function remedy({ excluded }: Conflict, group: GuestGroup): string {
    const them = agreeing(group.count, 'this guest', 'these guests');
    return `Give ${them} something without ${excluded}, or leave it off their plates; keep boards, oil, hands and tongs apart, for traces carry over. The local food code and licensed staff decide.`;
}
