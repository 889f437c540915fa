import { degreesOf, limitIn, scaleOfMenu } from '../../plan/degrees.js';
import { counted, listed } from '../../rules/wording.js';
import { coolingLimits } from '../../service/heat/cooling.js';
import { portionsToCook } from '../../service/numbers.js';
import { isOutTooLong } from '../../service/preparations/warming.js';
import type { Dish } from '../../plan/types.js';
import { sentApart } from './at-the-table.js';
import {
    allergenPlates,
    CONTACT,
    courseTitle,
    dishOf,
    faces,
    FIGURES_ADVISE,
    needsOf,
    pieceCalled,
    serverOf,
    type SheetSource,
} from './evening.js';
import type { Block, Cell, Sheet } from './sheet.js';

/** The kitchen's evening: when to fire, plate and go; how many of what for whom; how hot; what to check and to note. */
export function kitchenSheet(source: SheetSource): Sheet {
    const { plan, service } = source;
    const crew = plan.event?.crew;
    return {
        name: 'kitchen',
        title: 'Kitchen',
        subtitle: [
            counted(service.guestCount, 'guest'),
            ...(crew?.count ? [`${crew.count} of the crew eat${crew.at ? ` at ${crew.at.written}` : ''}`] : []),
        ].join(' · '),
        blocks: [
            ...times(source),
            ...apart(source),
            ...counts(source),
            ...temperatures(source),
            ...warming(source),
            ...checks(source),
            ...log(source),
        ],
    };
}

function times({ plan, service }: SheetSource): Block[] {
    const face = faces(plan);
    const courses = service.run?.courses.filter(({ course }) => plan.menu?.courses[course]) ?? [];
    return courses.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Fire, plate, go' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'Course' },
                      { head: 'Fire', figures: true, share: 0.13 },
                      { head: 'Plate', figures: true, share: 0.21 },
                      { head: 'Go', figures: true, share: 0.21 },
                  ],
                  rows: courses.map(({ course, fired, plated, leftPass }) => [
                      courseTitle(plan, course),
                      { text: face(fired), strong: true },
                      `${face(plated.first)}–${face(plated.last)}`,
                      `${face(leftPass.first)}–${face(leftPass.last)}`,
                  ]),
              },
          ];
}

function apart(source: SheetSource): Block[] {
    const items = sentApart(source);
    return items.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Beside the plates, for the table' },
              { sort: 'list', items },
          ];
}

function counts(source: SheetSource): Block[] {
    const { plan, service } = source;
    const { plates } = service.seats;
    const servings = [...(service.bread ? [service.bread.serving] : []), ...service.servings];
    const rows = servings.flatMap((serving) =>
        serving.portions.flatMap(({ dish, count }): Cell[][] => {
            const own = plates.filter((plate) => plate.course === serving.course.index && plate.dish === dish.index);
            const cook = portionsToCook(plan, { dish, count });
            const title =
                serving.course.hasDishes || serving.course.index < 0
                    ? `${courseTitle(plan, serving.course.index)}: ${dish.title}`
                    : dish.title;
            return [
                [{ text: title, strong: true }, '', String(count), cook === count ? '' : `cook ${cook}`],
                ...own
                    .filter(({ marker }) => marker !== undefined)
                    .map((plate): Cell[] => [
                        `   ${plate.groups.map((group) => needsOf(service.groups[group]) || 'no special needs').join('; ')}`,
                        { text: plate.marker!, strong: true },
                        String(plate.count),
                        plate.leftOff.length > 0 ? `without ${listed(plate.leftOff)}` : '',
                    ]),
            ];
        }),
    );
    return rows.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Plates' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'Dish, and for whom' },
                      { head: 'Mark', share: 0.13 },
                      { head: 'Plates', figures: true, share: 0.11 },
                      { head: 'Note', share: 0.24 },
                  ],
                  rows,
              },
              { sort: 'caution', text: CONTACT },
          ];
}

function temperatures(source: SheetSource): Block[] {
    const { plan, service } = source;
    const { code } = plan;
    const { figures } = code;
    const rows = service.facts.map(({ dish, vessel }): Cell[] => [
        dish.title,
        [
            dish.cookTo && `cook to ${dish.cookTo.temperature.written}`,
            dish.reheat && `reheat to ${dish.reheat.temperature.written}`,
            dish.heldAt && `hold at ${dish.heldAt.temperature.written}`,
            dish.leavesPass && `pass at ${dish.leavesPass.temperature.written}`,
        ]
            .filter((word) => word !== undefined)
            .join(', '),
        vesselOf(source, dish, vessel?.name),
        dish.served.temperature?.written ?? '',
    ]);
    const cooling = coolingLimits(code);
    const limit = (name: string, words: (figure: string) => string): string[] =>
        figures[name] ? [words(figures[name].size.written)] : [];
    /** As the code writes it, and in the scale of the menu. */
    const degrees = (name: string, bound: 'least' | 'most', words: (figure: string) => string): string[] => {
        const figure = figures[name];
        const { written } = figure?.size ?? {};
        const own = figure && limitIn(scaleOfMenu(plan), figure, bound).words;
        return written === undefined ? [] : [words(own === written ? written : `${written} (${own})`)];
    };
    const limits = [
        ...degrees('hot-holding', 'least', (size) => `Hot food is held at ${size} or more.`),
        ...degrees('cold-holding', 'most', (size) => `Cold food is held at ${size} or less.`),
        ...degrees('reheating', 'least', (size) => `Reheated food reaches ${size}.`),
        ...(cooling
            ? [
                  `Cooked food cools to ${degreesOf(plan, cooling.first.celsius)} within ${hours(cooling.first.minutes)}, to ${degreesOf(plan, cooling.last.celsius)} within ${hours(cooling.last.minutes)} in all.`,
              ]
            : ['For cooling, ask the local authority: this code’s figures are not in the cupboard.']),
        ...limit('off-control-time', (size) => `Without heat or cold no longer than ${size}.`),
    ];
    return [
        { sort: 'heading', text: 'Temperatures' },
        {
            sort: 'table',
            columns: [
                { head: 'Dish' },
                { head: 'Cook, hold, pass', share: 0.29 },
                { head: 'Vessel', share: 0.27 },
                { head: 'At the guest', figures: true, share: 0.13 },
            ],
            rows,
        },
        { sort: 'heading', text: `Limits: ${code.called ?? code.name}`, level: 3 },
        { sort: 'list', items: limits },
        {
            sort: 'caution',
            text: `${FIGURES_ADVISE} Warm vessels: say “hot plate” and carry them by a cloth or the plate under them.`,
        },
    ];
}

function vesselOf({ plan }: SheetSource, { served }: Dish, name: string | undefined): string {
    const use = served.vessel;
    const words = name === undefined ? '' : pieceCalled(plan, name);
    return use?.state ? `${words}, ${use.state}${use.to ? ` to ${use.to.written}` : ''}` : words;
}

const hours = (minutes: number): string => (minutes % 60 === 0 ? `${minutes / 60} h` : `${minutes} min`);

function warming({ plan, service }: SheetSource): Block[] {
    const face = faces(plan);
    const loads = service.preparations?.warming ?? [];
    return loads.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Warming' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'In', figures: true, share: 0.11 },
                      { head: 'Out', figures: true, share: 0.11 },
                      { head: 'Plated by', figures: true, share: 0.13 },
                      { head: 'What' },
                      { head: 'To', figures: true, share: 0.11 },
                      { head: 'Where', share: 0.21 },
                  ],
                  rows: loads.map(({ start, end, wantedUntil, piece, pieces, to, gear, course }) => [
                      { text: face(start), strong: true },
                      face(end),
                      // What leaves the warmer before its time is what nobody expects.
                      isOutTooLong({ end, wantedUntil })
                          ? { text: face(wantedUntil), strong: true }
                          : face(wantedUntil),
                      `${pieces} × ${pieceCalled(plan, piece)}, ${courseTitle(plan, course)}`,
                      to === undefined ? '' : degreesOf(plan, to),
                      gear?.replaceAll('-', ' ') ?? '',
                  ]),
              },
          ];
}

function checks(source: SheetSource): Block[] {
    const plates = allergenPlates(source);
    return plates.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Allergen plates: two people check each' },
              ...plates.map(({ course, plate, guest, marker }): Block => ({
                  sort: 'check',
                  text: `${marker} · ${guest.table} seat ${guest.seat} · ${dishOf(source, course, plate.dish)?.title ?? courseTitle(source.plan, course)}${
                      plate.leftOff.length > 0 ? `, without ${listed(plate.leftOff)}` : ''
                  }`,
                  by: ['pass', serverOf(source, guest.table) ?? 'server'],
              })),
          ];
}

/** A line for each thing a thermometer has to be put into. */
function log({ plan, service }: SheetSource): Block[] {
    const { figures } = plan.code;
    const scale = scaleOfMenu(plan);
    const rows = service.facts.flatMap(({ dish, isHot, isCold, wanted }): Cell[][] => {
        const isFrozen = wanted !== undefined && wanted < 0;
        const isHeld = dish.heldAt !== undefined || !dish.served.raw;
        const line = (what: string, limit: string): Cell[] => [`${dish.title}: ${what}`, limit, '', '', ''];
        return [
            ...(dish.cookTo ? [line('cooked, core', `${dish.cookTo.temperature.written} or more`)] : []),
            ...(dish.reheat ? [line('reheated', `${dish.reheat.temperature.written} or more`)] : []),
            ...(isHot && isHeld && figures['hot-holding']
                ? [
                      line(
                          'held hot',
                          `${dish.heldAt?.temperature.written ?? limitIn(scale, figures['hot-holding'], 'least').words} or more`,
                      ),
                  ]
                : []),
            ...(isFrozen ? [line('from the freezer', dish.served.temperature?.written ?? '')] : []),
            ...(isCold && !isFrozen && figures['cold-holding']
                ? [line('held cold', `${limitIn(scale, figures['cold-holding'], 'most').words} or less`)]
                : []),
            ...(dish.leavesPass ? [line('at the pass', dish.leavesPass.temperature.written)] : []),
        ];
    });
    return rows.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Thermometer log' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'What' },
                      { head: 'Wanted', share: 0.2 },
                      { head: 'Time', toFill: true, share: 0.12 },
                      { head: scale, toFill: true, share: 0.12 },
                      { head: 'By', toFill: true, share: 0.12 },
                  ],
                  rows,
              },
          ];
}
