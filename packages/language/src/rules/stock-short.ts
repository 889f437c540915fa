import type { Cupboard } from '../plan/cupboard.js';
import { isFromCupboard, type Origin } from '../plan/origin.js';
import { show } from '../plan/quantity.js';
import type { Plan } from '../plan/types.js';
import { flatwareOf } from '../service/cover.js';
import type { Remedy } from '../service/stock/types.js';
import type { PullLine, Service } from '../service/types.js';
import type { Fix } from './fixes.js';
import { defineRule, type Related, type RuleExample } from './rule.js';
import { remedyFix } from './stock-remedies.js';
import { agreeing, counted, quoted } from './wording.js';

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

const twoCourses = (forks: number, menu = ''): RuleExample['text'] => `house "Saltmarsh Hall" {
    own ${forks} salad-fork, 90 dessert-fork
    washing { 45 racks per hour  polish 8 pieces per min  drying 5 min }
}

event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests 40
}

room "Boathouse" 14 m by 11 m {
    table A to E: round 72 inch, 8 seats, 1 accessible
}

team { captain 1   servers 4   runners 2   plating-lines 1 at 12 plates per min }

menu {
    course appetizer "Beets and curd" {
        served on salad-plate at 8 °C
        eaten with salad-fork
        lasts 20 min
        contains milk
    }
    course main "Braised chicken" is poultry {
        served on dinner-plate warmed to 60 °C at 64 °C
        cook to 74 °C
        lasts 30 min
        contains celery
    }
    course salad "Bitter leaves" {
        served on salad-plate at 8 °C
        eaten with salad-fork
        lasts 12 min
        contains mustard
    }
    ${menu}
}
`;

export default defineRule({
    id: 'stock-short',
    group: 'service',
    since: '0.1.0',
    title: 'The evening needs more of a piece than there are',
    why: 'What is short is found out when the table is laid, with the guests at the door. Renting, another piece or a wash in between has to be arranged the day before.',
    source: ['quantities 4', 'quantities 5', 'common practice, no source'],
    fix: 'always',
    customs: ['rent-cost', 'delivery-cost', 'wash-cost', 'substitute-cost', 'rent-lot'],
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
            {
                title: 'Fifty forks for eighty plates',
                text: twoCourses(50).replace('eaten with salad-fork', 'eaten with <|salad-fork|>'),
            },
        ],
        right: [
            { text: event(60) },
            {
                title: 'Forks that are washed in between',
                text: twoCourses(50, 'wash salad-fork after appetizer for salad'),
            },
        ],
    },
    check({ plan, service, report }) {
        // Whether anything is short is known at once; what may be done about it takes the run sheet.
        for (const line of service.pull.filter(({ short }) => short > 0)) {
            const fixes = fixesFor(plan, service.stock.remedies.get(line.piece) ?? []);
            // The others are worked out where somebody asks for them.
            const [best] = fixes;
            const at = firstUse(plan, service, line.piece);
            if (!at) {
                continue;
            }
            report({
                at,
                message: `${whatNeeds(plan, service, line)} ${line.pull} ${quoted(line.piece)}${beside(plan, service, line)}; ${whatIsThere(line)}. Short by ${line.short}.`,
                hint: best && `${best.title}${/[Rr]ent \d/.test(best.title) ? '' : `, or rent ${line.short}`}.`,
                related: whereStated(plan, line),
                fixes: () => {
                    const [first, ...others] = fixes;
                    return others.length > 0 ? [{ ...first!, preferred: true }, ...others] : first ? [first] : [];
                },
            });
        }
    },
});

/** One for each way that the plan has a place for; each is worked out when it is come to. */
function fixesFor(plan: Plan, ways: Iterable<Remedy>): Iterable<Fix> {
    return {
        *[Symbol.iterator]() {
            for (const way of ways) {
                const fix = remedyFix(plan, way);
                if (fix) {
                    yield fix;
                }
            }
        },
    };
}

/** Covers need what lies at them; the rest is for those who serve. */
function whatNeeds({ cupboard }: Plan, { setFor }: Service, { piece }: PullLine): string {
    return isGear(cupboard, piece)
        ? 'The service needs'
        : `${counted(setFor, 'cover')} ${agreeing(setFor, 'needs', 'need')}`;
}

const isGear = (cupboard: Cupboard, piece: string): boolean => cupboard.pieces.get(piece)?.family === 'gear';

/** What of the number is spares, what does without, and, of what nobody can count at a cover, why there are so many. */
function beside({ house, cupboard }: Plan, { counts }: Service, line: PullLine): string {
    const { spares } = house;
    const share = (spares.find((spare) => spare.piece?.name === line.piece) ?? spares.find((spare) => !spare.piece))
        ?.share;
    const by = isGear(cupboard, line.piece) ? counts.find(({ piece }) => piece === line.piece)?.by : undefined;
    return [
        ...(by ? [` (${by.map(({ purpose }) => purpose).join('; ')})`] : []),
        ...(line.spare > 0 && share ? [` with ${show(share.value, '%', 1)} spare`] : []),
        ...(line.washed > 0 ? [` beside ${line.washed} that are washed in between`] : []),
    ].join('');
}

function whatIsThere({ owned, rented }: PullLine): string {
    return [
        ...(owned === undefined ? [] : [`the house owns ${owned}`]),
        ...(rented > 0 ? [`${rented} ${agreeing(rented, 'is', 'are')} rented`] : []),
    ].join(' and ');
}

function whereStated({ house, event }: Plan, { piece }: PullLine): Related[] {
    const owned = house.stock.find((each) => each.piece.name === piece);
    const rented = event?.rents.find((each) => each.piece.name === piece);
    return [
        ...(owned ? [{ at: owned.origin, message: `The house says here that it owns ${owned.count.count}.` }] : []),
        ...(rented ? [{ at: rented.origin, message: `The event rents ${rented.count.count} here.` }] : []),
    ];
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
    const { bread, coffee, water } = plan.menu ?? {};
    return (
        gearClause(plan, name) ??
        (bread?.plate?.name === name ? bread.plate.origin : undefined) ??
        (service.coffee?.cup?.name === name ? (coffee?.cup?.origin ?? coffee?.head) : undefined) ??
        (name === 'water-jug' ? water?.origin : undefined) ??
        plan.event?.titleOrigin
    );
}

/** The words that have something poured from gear or carried under it. */
function gearClause({ menu }: Plan, name: string): Origin | undefined {
    const dishes = (menu?.courses ?? []).flatMap((course) => course.dishes);
    const poured = dishes
        .flatMap(({ served, accompaniments }) => [
            served.pouredAtTable,
            ...accompaniments.map((each) => each.pouredAtTable),
        ])
        .find((each) => each?.gear?.name === name);
    const covered = name === 'dome' ? dishes.find(({ carried }) => carried?.how === 'covered')?.carried : undefined;
    return poured?.gear?.origin ?? covered?.origin;
}
