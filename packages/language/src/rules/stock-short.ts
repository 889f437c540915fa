import { isFromCupboard, type Origin } from '../plan/origin.js';
import { show } from '../plan/quantity.js';
import type { Plan } from '../plan/types.js';
import { flatwareOf } from '../service/cover.js';
import type { PullLine, Service } from '../service/types.js';
import type { Fix } from './fixes.js';
import { defineRule, type RuleExample } from './rule.js';
import { suitsKind } from '../plan/suiting.js';
import { counted, quoted } from './wording.js';

const event = (bowls: number): RuleExample['text'] => `house "Saltmarsh Hall" {
    own 60 soup-plate, ${bowls} soup-bowl, 60 soup-spoon, 60 napkin, 60 underliner, 60 service-plate, 60 water-glass
    spare 5 %
}

event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

menu {
    course soup "Leek and potato" {
        served in soup-bowl warmed to 60 °C at 66 °C
        eaten with soup-spoon warmed, brought with the course
        lasts 15 min
        contains milk
    }
}
`;

export default defineRule({
    id: 'stock-short',
    group: 'service',
    since: '0.1.0',
    title: 'The evening needs more of a piece than the house owns',
    why: 'What is short is found out when the table is laid, with the guests at the door. Renting, or another piece, takes a day.',
    source: ['quantities 4', 'common practice, no source'],
    fix: 'sometimes',
    scope: 'event',
    examples: {
        wrong: [
            {
                title: 'Thirty bowls for forty guests',
                text: event(30).replace(
                    'served in soup-bowl warmed to 60 °C',
                    'served in <|soup-bowl|> warmed to 60 °C',
                ),
            },
        ],
        right: [{ text: event(60) }],
    },
    check({ plan, service, report }) {
        for (const line of service.pull) {
            // A piece the house does not list at all may be one it never counts; one it lists is counted.
            const stock = plan.house.stock.find((each) => each.piece.name === line.piece);
            const at = line.short > 0 && stock ? firstUse(plan, service, line.piece) : undefined;
            if (!at || !stock) {
                continue;
            }
            const fix = substitute(plan, service, line);
            report({
                at,
                message: `${counted(service.setFor, 'cover')} ${service.setFor === 1 ? 'needs' : 'need'} ${line.pull} ${quoted(line.piece)}${withSpare(plan, line)}; the house owns ${line.owned}. Short by ${line.short}.`,
                hint: `${fix ? `${fix.title}, or rent` : 'Rent'} ${line.short}.`,
                related: [{ at: stock.origin, message: `The house says here that it owns ${stock.count.count}.` }],
                fixes: fix ? [fix] : [],
            });
        }
    },
});

function withSpare(plan: Plan, line: PullLine): string {
    const share = plan.house.spares.find((spare) => !spare.piece || spare.piece.name === line.piece)?.share;
    return line.spare > 0 && share ? ` with ${show(share.value, '%', 1)} spare` : '';
}

/** Where the plan first asks for the piece: the words that name it, else the heading of the dish whose kind does. */
function firstUse(plan: Plan, service: Service, name: string): Origin | undefined {
    const vessel = service.facts.find((facts) => facts.vessel?.name === name || facts.underliner?.name === name);
    if (vessel) {
        const { served, head } = vessel.dish;
        return [served.vessel, served.under].find((use) => use?.piece.name === name)?.piece.origin ?? head;
    }
    for (const { cover } of service.variations) {
        const pieces = [...flatwareOf(cover), ...cover.glasses, ...cover.broughtGlasses];
        const found = pieces.find(({ piece }) => piece.name === name);
        if (found && !isFromCupboard(found.origin)) {
            return found.origin;
        }
    }
    return plan.menu?.bread?.plate?.name === name ? plan.menu.bread.plate.origin : plan.event?.titleOrigin;
}

/** Another vessel that suits the dish, of which the house has enough over; only where one dish alone is served in the short one. */
function substitute(plan: Plan, service: Service, line: PullLine): Fix | undefined {
    const served = service.facts.filter(
        (facts) => facts.vessel?.name === line.piece || facts.underliner?.name === line.piece,
    );
    const [facts] = served;
    const stated = facts?.dish.served.vessel;
    if (served.length !== 1 || !facts?.vessel || facts.kind === undefined || stated?.piece.name !== line.piece) {
        return undefined;
    }
    const { vessel, kind, dish } = facts;
    const other = plan.house.stock.find(({ piece, count }) => {
        const found = plan.cupboard.pieces.get(piece.name);
        const pulled = service.pull.find((each) => each.piece === piece.name)?.pull ?? 0;
        return (
            found?.family === vessel.family &&
            found.name !== vessel.name &&
            suitsKind(plan.cupboard, found.name, kind) &&
            count.count - pulled >= line.pull
        );
    });
    return (
        other && {
            title: `Serve ${quoted(dish.title)} ${stated.how} ${quoted(other.piece.name)}`,
            safety: 'unsafe',
            changes: [{ do: 'replace', at: stated.piece.origin, words: other.piece.name }],
        }
    );
}
