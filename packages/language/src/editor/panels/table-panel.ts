import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Checked } from '../../check.js';
import { SAID, type DrawnPiece, type PieceState } from '../../output/drawing/drawn-piece.js';
import { coverPicture, neighboursPicture, roomPicture, tablePicture } from '../../output/drawing/pictures.js';
import type { Lettering } from '../../output/drawing/svg.js';
import { piecesAt, stepAlongside } from '../../output/drawing/standing.js';
import { eveningClock } from '../../service/clock/evening.js';
import type { PlacedPiece } from '../../service/cover-geometry/types.js';
import type { Step, Variation } from '../../service/types.js';
import { choiceOf, leadsTo, pictureBox, press } from './controls.js';
import type { Panel, PanelInput } from './panel.js';
import { writtenAt } from './piece-sources.js';
import type { PanelChoices } from './requests.js';
import type { Sources } from './shown-plan.js';

/** From near to far. */
const VIEWS = [
    { value: 'cover', words: 'Cover' },
    { value: 'neighbours', words: 'Neighbours' },
    { value: 'table', words: 'Table' },
    { value: 'room', words: 'Room' },
] as const;
type View = (typeof VIEWS)[number]['value'];

/** Of a page that does not say how wide it is, in dots. */
const USUAL_WIDTH = '700';
/** Words are large enough in a panel so wide, mm, and larger in a picture that a narrower one shows whole. */
const [WIDEST, NARROWEST] = [200, 80];
/** So wide is a picture printed of whose dots a panel has one, mm: its words are then about eleven dots high. */
const PER_DOT = 0.36;

/** What is to be seen, with every choice made that the plan allows. */
interface Sight {
    readonly checked: Checked;
    readonly sources: Sources;
    readonly view: View;
    readonly variation: Variation;
    readonly step: Step;
    readonly table?: string;
    readonly seat: number;
    /** How wide the page is, in dots. */
    readonly width: string;
}

/** The laid table: one step of the evening at a time, from one cover to the whole room. */
export const tablePanel: Panel = {
    title: 'Laid table',
    show(input) {
        const { plan, service } = input.checked;
        if (!plan.menu || service.variations.length === 0) {
            return { missing: 'There is no cover to lay yet: the plan has no menu, or no guests who eat of it.' };
        }
        const sight = sightOf(input);
        const { view, table } = sight;
        const isRoom = view === 'room';
        return [
            h('div', { class: 'tools' }, [
                zoom(sight),
                ...(service.variations.length > 1 && !isRoom ? [variations(sight)] : []),
                ...(table !== undefined && (view === 'neighbours' || view === 'table') ? [tables(sight)] : []),
                ...(table !== undefined && view === 'neighbours' ? [seats(sight)] : []),
            ]),
            ...(isRoom ? [] : [scrubber(sight)]),
            ...picture(sight),
            ...(isRoom ? roomLists(sight) : pieceLists(sight)),
        ];
    },
};

// ---------------------------------------------------------------- what is chosen
function sightOf({ checked, choices, sources }: PanelInput): Sight {
    const { service } = checked;
    const variation = service.variations[numberOf(choices, 'variation')] ?? service.variations[0]!;
    const step = variation.steps[Math.min(numberOf(choices, 'step'), variation.steps.length - 1)]!;
    const views = VIEWS.map(({ value }) => value).filter((each) => canShow(checked, each));
    const view = views.find((each) => each === choices.view) ?? 'cover';
    const eaters = service.seats.guests.filter((guest) => guest.variation === variation.index);
    const table = (
        service.tables.find(({ name }) => name === choices.table) ??
        service.tables.find(({ name }) => eaters.some((guest) => guest.table === name)) ??
        service.tables[0]
    )?.name;
    const there = service.tables.find(({ name }) => name === table)?.seats.map(({ number }) => number) ?? [];
    const chosen = numberOf(choices, 'seat');
    const eater = eaters.find((guest) => guest.table === table)?.seat;
    const seat = there.includes(chosen) ? chosen : (eater ?? there[0] ?? 1);
    return { checked, sources, view, variation, step, table, seat, width: choices.width ?? USUAL_WIDTH };
}

function numberOf(choices: PanelChoices, name: string): number {
    const number = Number(choices[name] ?? '0');
    return Number.isSafeInteger(number) && number > 0 ? number : 0;
}

function canShow({ service }: Checked, view: View): boolean {
    return view === 'cover' || (view === 'room' ? service.room !== undefined : service.tables.length > 0);
}

// ---------------------------------------------------------------- controls
function zoom({ checked, view }: Sight): Element {
    const at = VIEWS.findIndex(({ value }) => value === view);
    const nextTo = (way: 1 | -1): number =>
        VIEWS.findIndex(({ value }, index) => (index - at) * way > 0 && canShow(checked, value));
    const further = nextTo(1);
    const nearer = VIEWS.findLastIndex(({ value }, index) => index < at && canShow(checked, value));
    return h(
        'div',
        { class: 'joined', role: 'group', ariaLabel: 'How much is in sight' },
        VIEWS.map(({ value, words }, index) =>
            press(`view-${value}`, 'view', {
                value,
                words,
                isPressed: value === view,
                disabled: !canShow(checked, value),
                key: index === further ? '-' : index === nearer ? '+' : undefined,
            }),
        ),
    );
}

function variations({ checked, variation }: Sight): Element {
    const options = checked.service.variations.map(({ index, label, count }) => ({
        value: String(index),
        words: `${label} (${count})`,
    }));
    return choiceOf('variation', 'Dishes', options, String(variation.index));
}

function tables({ checked, table }: Sight): Element {
    const options = checked.service.tables.map(({ name }) => ({ value: name, words: name }));
    return choiceOf('table', 'Table', options, table!);
}

function seats({ checked, table, seat }: Sight): Element {
    const { service } = checked;
    const options = service.tables
        .find(({ name }) => name === table)!
        .seats.map(({ number }) => ({ value: String(number), words: String(number) }));
    return choiceOf('seat', 'Seat', options, String(seat));
}

function scrubber(sight: Sight): Element {
    const { step, variation } = sight;
    const last = variation.steps.length - 1;
    const words = `Step ${step.index + 1} of ${last + 1}: ${stepWords(sight)}`;
    return h('div', { class: 'scrubber' }, [
        press('step-back', 'step', {
            value: String(step.index - 1),
            words: '◀',
            label: 'The step before',
            key: ',',
            disabled: step.index === 0,
        }),
        h('input', {
            id: 'choose-step',
            type: 'range',
            min: 0,
            max: last,
            value: step.index,
            dataChoice: 'step',
            ariaLabel: 'Step of the evening',
            ariaValueText: words,
        }),
        press('step-on', 'step', {
            value: String(step.index + 1),
            words: '▶',
            label: 'The next step',
            key: '.',
            disabled: step.index === last,
        }),
        h('output', { id: 'step', htmlFor: 'choose-step' }, words),
    ]);
}

/** The step's title, with the clock where the evening is computed. */
function stepWords({ checked: { plan, service }, step }: Sight): string {
    const clock = eveningClock(plan);
    const course = service.run?.courses.find((each) => each.course === step.course);
    const span = course && (step.sort === 'serve' ? course.served : step.sort === 'clear' ? course.cleared : undefined);
    if (!clock || !span) {
        return step.title;
    }
    const [first, last] = [clock.face(span.first), clock.face(span.last)];
    return `${step.title}, ${first === last ? first : `${first} to ${last}`}`;
}

// ---------------------------------------------------------------- the picture
function picture(sight: Sight): ElementContent[] {
    const svg = drawn(sight);
    return svg === undefined
        ? [h('p', { class: 'missing' }, 'There is nothing to draw here yet.')]
        : [
              h('div', { dataWidth: sight.width }, [
                  pictureBox(svg, `Picture of the ${sight.view === 'neighbours' ? 'covers' : sight.view}`),
              ]),
              h('p', { id: 'named', class: 'named', dataNamed: true }, 'Point at a thing to read its name.'),
          ];
}

function drawn(sight: Sight): string | undefined {
    const { checked, view, variation, step, table, seat } = sight;
    const lettering = letteringOf(sight);
    switch (view) {
        case 'cover':
            return coverPicture(checked, variation, step, (piece) => sourceOf(sight, variation, piece), lettering);
        case 'neighbours':
            return neighboursPicture(checked, table!, seat, onTable(sight));
        case 'table':
            return tablePicture(checked, table!, onTable(sight));
        case 'room':
            return roomPicture(checked, (name) => tableSource(sight, name), lettering);
    }
}

/** The panel itself says what the title of a picture would. */
function letteringOf({ width }: Sight): Lettering {
    return { printedWidth: Math.max(NARROWEST, Math.min(WIDEST, (Number(width) || 0) * PER_DOT)) };
}

/** The other covers of a table are at the same movement of the service. */
function onTable(sight: Sight) {
    const { checked, variation, step } = sight;
    return {
        ...letteringOf(sight),
        // They stand below the picture, in full.
        needs: 'unsaid' as const,
        subtitle: `Step ${step.index + 1}: ${step.title}`,
        pieces: (index: number, all: readonly PlacedPiece[]): DrawnPiece[] => {
            const other = checked.service.variations[index]!;
            const { step: own, isSame } = stepAlongside(variation, other.steps, step.index);
            return piecesAt(own, all).flatMap((piece) =>
                isSame || piece.state !== 'cleared'
                    ? [{ ...piece, state: isSame ? piece.state : 'standing', at: sourceOf(sight, other, piece) }]
                    : [],
            );
        },
    };
}

function sourceOf({ checked, sources }: Sight, variation: Variation, piece: PlacedPiece): number | undefined {
    return sources.numberOf(writtenAt(checked, variation, piece));
}

function tableSource({ checked: { plan }, sources }: Sight, name: string): number | undefined {
    const written = plan.room?.tables.find(({ names }) => names.includes(name));
    return sources.numberOf(written?.first.origin);
}

// ---------------------------------------------------------------- the same in words
const HEADINGS: Readonly<Record<PieceState, string>> = {
    brought: 'Brought now',
    used: 'In use',
    cleared: 'Cleared now',
    standing: 'On the table',
};

/** What the picture shows, to be read, and gone through with the keyboard. */
function pieceLists(sight: Sight): Element[] {
    const { checked, variation, step } = sight;
    const pieces = piecesAt(step, checked.service.coverGeometry[variation.index]!.pieces);
    const lists = (['brought', 'used', 'cleared', 'standing'] as const).flatMap((state) => {
        const own = pieces.filter((piece) => piece.state === state);
        return own.length === 0
            ? []
            : [
                  h('section', { class: state }, [
                      h('h2', HEADINGS[state]),
                      h(
                          'ul',
                          own.map((piece) => {
                              const label = `${piece.label}${SAID[state]}: show where it is written`;
                              return h(
                                  'li',
                                  leadsTo(sourceOf(sight, variation, piece), piece.label, label, {
                                      dataPiece: piece.id,
                                  }),
                              );
                          }),
                      ),
                  ]),
              ];
    });
    return [h('div', { class: 'lists' }, [...lists, ...needsList(sight)])];
}

/** Who at the table in sight needs what. */
function needsList({ checked: { service }, sources, view, table }: Sight): Element[] {
    const rows = service.seats.guests.flatMap((guest) => {
        const group = service.groups[guest.group]!;
        const isInSight = guest.table === table && group.needs.length > 0;
        return isInSight
            ? [h('li', [leadsTo(sources.numberOf(group.origin), `seat ${guest.seat}: ${group.label}`)])]
            : [];
    });
    return view === 'cover' || rows.length === 0
        ? []
        : [h('section', [h('h2', `Needs at table ${table}`), h('ul', rows)])];
}

function roomLists(sight: Sight): Element[] {
    const { checked } = sight;
    const rows = checked.service.tables.map(({ name, seats: there }) => {
        const guests = checked.service.seats.tables.find((table) => table.name === name)?.guests ?? 0;
        return h('li', [
            leadsTo(tableSource(sight, name), name, `Table ${name}: show where it is written`, { dataTable: name }),
            ` ${guests} of ${there.length} seats taken`,
        ]);
    });
    return [h('div', { class: 'lists' }, [h('section', [h('h2', 'Tables'), h('ul', rows)])])];
}
