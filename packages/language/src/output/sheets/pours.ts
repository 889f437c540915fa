import { listed } from '../../rules/wording.js';
import { courseTitle, pieceCalled, type SheetSource } from './evening.js';
import type { Pour } from '../../plan/types.js';
import type { Block, Cell } from './sheet.js';

/** What is poured when, into which glass, how much of it; nothing where nothing is poured. */
export function poursTable(source: SheetSource): Block[] {
    const { plan, service } = source;
    const { water } = plan.menu ?? {};
    const called = water?.pour.glass?.name;
    const all = [
        ...(water
            ? [{ pour: water.pour, with: 'All courses', title: `Water, ${listed(water.choices, 'or')}`, glass: called }]
            : []),
        ...service.pours
            .filter(({ course }) => course >= 0)
            .map(({ pour, course, glass }) => ({
                pour,
                with: courseTitle(plan, course),
                title: pour.title,
                glass: glass?.name,
            })),
    ];
    const rows = all.map(({ pour, with: course, title, glass }): Cell[] => [
        course,
        { text: title, strong: true },
        [pour.amount?.written, glass && `in ${pieceCalled(plan, glass)}`]
            .filter((word) => word !== undefined)
            .join(' '),
        manner(pour),
    ]);
    return rows.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Pours' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'With', share: 0.24 },
                      { head: 'Drink', share: 0.24 },
                      { head: 'How much' },
                      { head: 'Note', share: 0.3 },
                  ],
                  rows,
              },
          ];
}

/** `the host tastes first; 1 refill; instead: Sorrel cordial`. */
export function manner(pour: Pour): string {
    return [
        pour.temperature && `at ${pour.temperature.written}`,
        pour.tasted ? 'the host tastes first' : undefined,
        pour.refills && `${pour.refills.count} ${pour.refills.count === 1 ? 'refill' : 'refills'}`,
        pour.toppedUpUntil && `topped up until ${pour.toppedUpUntil.name}`,
        pour.instead.length > 0 ? `or ${pour.instead.map(({ title }) => title).join(', ')}` : undefined,
    ]
        .filter((word) => word !== undefined)
        .join('; ');
}
