import { degreesOf } from '../../plan/degrees.js';
import { standardDrink } from '../../service/drinks/alcohol.js';
import { counted, listed } from '../../rules/wording.js';
import type { Chilling } from '../../service/chilling/types.js';
import type { AlcoholEach } from '../../service/drinks/types.js';
import { courseTitle, faces, pieceCalled, piecesCalled, type SheetSource } from './evening.js';
import { cupChecks, glassChecks, poursTable } from './pours.js';
import type { Block, Cell, Sheet } from './sheet.js';

const LICENSED =
    'Who is served, and how much, is for the local law and licensed staff. Planned is not an amount to reach.';

const WAY: Record<Chilling['way'], string> = {
    fridge: 'fridge',
    freezer: 'freezer',
    'ice-water': 'ice water',
    counter: 'in the room',
};

/** Bottles, when they go into the cold, glasses, pours and what they come to; `undefined` where nothing is poured. */
export function barSheet(source: SheetSource): Sheet | undefined {
    const { service } = source;
    return service.pours.length === 0
        ? undefined
        : {
              name: 'bar',
              title: 'Bar',
              subtitle: counted(service.guestCount, 'guest'),
              blocks: [
                  ...chilling(source),
                  ...bottles(source),
                  ...glasses(source),
                  ...poursTable(source),
                  ...checks(source),
                  ...alcohol(source),
              ],
          };
}

function chilling({ plan, service }: SheetSource): Block[] {
    const face = faces(plan);
    return service.chilling.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Into the cold' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'Start by', figures: true, share: 0.14 },
                      { head: 'Drink' },
                      { head: 'Where', share: 0.18 },
                      { head: 'To', figures: true, share: 0.11 },
                      { head: 'Takes', share: 0.24 },
                      { head: 'First pour', figures: true, share: 0.14 },
                  ],
                  rows: service.chilling
                      .toSorted((a, b) => (a.startBy ?? 0) - (b.startBy ?? 0))
                      .map(({ startBy, title, way, to, takes, neededBy }): Cell[] => [
                          { text: face(startBy), strong: true },
                          title,
                          WAY[way],
                          degreesOf(plan, to),
                          takes ? `${Math.round(takes.soonest)} to ${Math.round(takes.latest)} min` : 'never so cold',
                          face(neededBy),
                      ]),
              },
              {
                  sort: 'caution',
                  text: 'Feel or measure a bottle before it is poured. One forgotten in a freezer bursts; glass near ice means throwing the ice away.',
              },
          ];
}

function bottles({ service }: SheetSource): Block[] {
    const drinks = service.drinks.map((need): Cell[] => [
        { text: need.title, strong: true },
        need.bottles.map(({ size, count }) => `${count} × ${litres(size)}`).join(', '),
        need.cases.map(({ each, full, loose }) => cases(each, full, loose)).join('; '),
        String(need.drinkers),
        '',
    ]);
    const water = service.water.map((need): Cell[] => [
        { text: `Water, ${need.choice}`, strong: true },
        need.from === 'bottles'
            ? `${need.count} × ${litres(need.size)}`
            : `${need.count} fillings of a jug, ${litres(need.size)} each`,
        '',
        String(need.drinkers),
        '',
    ]);
    const guessed = service.drinks.filter(({ isSizeStated, millilitres }) => !isSizeStated && millilitres > 0);
    return drinks.length + water.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Bottles' },
              {
                  sort: 'table',
                  columns: [
                      { head: 'Drink' },
                      { head: 'Bottles', share: 0.26 },
                      { head: 'Cases', share: 0.22 },
                      { head: 'Guests', figures: true, share: 0.11 },
                      { head: 'Left', toFill: true, share: 0.1 },
                  ],
                  rows: [...drinks, ...water],
              },
              ...(guessed.length > 0
                  ? [
                        {
                            sort: 'text' as const,
                            text: `Bottle size assumed, not stated: ${guessed.map(({ title }) => title).join(', ')}.`,
                        },
                    ]
                  : []),
          ];
}

function cases(each: number, full: number, loose: number): string {
    return [full > 0 ? `${full} of ${each}` : undefined, loose > 0 ? `${loose} loose` : undefined]
        .filter((word) => word !== undefined)
        .join(' and ');
}

function glasses({ plan, service }: SheetSource): Block[] {
    const lines = service.pull.filter(
        ({ piece, pull }) => pull > 0 && plan.cupboard.pieces.get(piece)?.family === 'glass',
    );
    return lines.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Glasses' },
              {
                  sort: 'list',
                  items: lines.map((line) => {
                      const rack = service.stock.racks.find(({ piece }) => piece === line.piece);
                      const use = service.drinks.find(({ glass }) => glass?.piece === line.piece)?.glass;
                      return [
                          piecesCalled(plan, line.piece, line.pull),
                          rack && `${counted(rack.racks, 'rack')} of ${rack.each} (${pieceCalled(plan, rack.rack)})`,
                          use && (use.comes === 'laid' ? 'laid' : 'brought with its course'),
                      ]
                          .filter((word) => word !== undefined)
                          .join(', ');
                  }),
              },
          ];
}

function checks(source: SheetSource): Block[] {
    const glasses = glassChecks(source);
    const cups = cupChecks(source);
    const sorts = [...(glasses.length > 0 ? ['glasses'] : []), ...(cups.length > 0 ? ['cups'] : [])];
    return sorts.length === 0
        ? []
        : [{ sort: 'heading', text: `Two people check each of these ${listed(sorts)}` }, ...glasses, ...cups];
}

function alcohol({ plan, service }: SheetSource): Block[] {
    const each = service.alcohol.filter(({ grams }) => grams > 0);
    const grams = standardDrink(plan);
    const limit = plan.customs['alcohol-limit'].value;
    // Guests with other dishes and the same drinks stand in one line.
    const together = new Map<
        string,
        { readonly words: string; readonly drinks: string; readonly sets: AlcoholEach[] }
    >();
    for (const set of each) {
        const words = set.by
            .filter((one) => one.grams > 0)
            .map(({ use: { facts }, drinks: part }) =>
                [facts.pour.title, part?.toFixed(1), `(${courseTitle(plan, facts.course)})`]
                    .filter((word) => word !== undefined)
                    .join(' '),
            )
            .join(', ');
        const { drinks, grams: own } = set;
        const row = { words, drinks: drinks === undefined ? `${Math.round(own)} g` : drinks.toFixed(1), sets: [] };
        together.set(words, together.get(words) ?? row);
        together.get(words)!.sets.push(set);
    }
    const rows = [...together.values()];
    return each.length === 0
        ? []
        : [
              { sort: 'heading', text: 'Standard drinks' },
              {
                  sort: 'table',
                  ...(grams === undefined
                      ? {}
                      : {
                            caption: `${plan.code.called ?? plan.code.name}: ${grams} g of alcohol each. The house takes care above ${limit} a guest.`,
                        }),
                  columns: [
                      { head: 'A guest who has' },
                      { head: 'And takes every pour of', share: 0.4 },
                      { head: 'Drinks', figures: true, share: 0.14 },
                  ],
                  rows: rows.map(({ words, drinks, sets }): Cell[] => [
                      whoHas(sets, rows.length),
                      words,
                      { text: drinks, strong: true },
                  ]),
              },
              { sort: 'caution', text: LICENSED },
          ];
}

/** The dishes that come with a drink of their own; without one, whoever else there is. */
function whoHas(sets: readonly AlcoholEach[], rows: number): string {
    const [{ by }] = sets as [AlcoholEach];
    const dishes = by.flatMap(({ use, grams }) => (grams > 0 && use.facts.dish ? [use.facts.dish.title] : []));
    if (dishes.length > 0) {
        return [...new Set(dishes)].join(' and ');
    }
    return rows === 1 ? 'Any of the dishes' : sets.map(({ variation }) => variation.label).join('; or ');
}

/** `750 ml`, `1.5 l`. */
const litres = (millilitres: number): string =>
    millilitres >= 1000 ? `${Math.round(millilitres / 10) / 100} l` : `${Math.round(millilitres)} ml`;
