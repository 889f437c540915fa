import type { Element } from 'hast';
import { h } from 'hastscript';
import { drawEvening } from '../../output/drawing/draw-evening.js';
import { partsOf, type EveningPart } from '../../output/drawing/evening/parts.js';
import { courseTitle, faces } from '../../output/sheets/evening.js';
import type { CourseRun } from '../../service/run/types.js';
import { figureCell, leadsTo, pictureBox, press } from './controls.js';
import type { Panel, PanelInput } from './panel.js';

/** Of a page that does not say how wide it is, in dots. */
const USUAL_WIDTH = '800';
const WIDEST = 4000;

/** The run sheet over the clock, with the temperatures at the guests; and its courses as a table. */
export const eveningPanel: Panel = {
    title: 'Evening',
    show(input) {
        const { checked, choices, sources } = input;
        const isFitted = choices.size === 'fit';
        const parts = partsOf(checked);
        const part = parts.find((each) => each === choices.part);
        const width = choices.width ?? USUAL_WIDTH;
        const drawn = drawEvening(checked, {
            part,
            width: isFitted ? Math.min(Number(width) || 0, WIDEST) : undefined,
        });
        if (!drawn) {
            return {
                missing:
                    'No times are computed yet: the plan has to name its guests, the room with its tables, and the team.',
            };
        }
        sources.take(drawn.places, checked.plan.event!.titleOrigin);
        const box = pictureBox(drawn.drawing, 'Picture of the evening');
        return [
            h('div', { class: 'tools' }, [
                h('div', { class: 'joined', role: 'group', ariaLabel: 'Size of the picture' }, [
                    press('size-fit', 'size', {
                        value: 'fit',
                        words: 'Whole evening',
                        isPressed: isFitted,
                        key: isFitted ? undefined : '-',
                    }),
                    press('size-full', 'size', {
                        value: 'full',
                        words: 'Full size',
                        isPressed: !isFitted,
                        key: isFitted ? '+' : undefined,
                    }),
                ]),
                ...(parts.length > 1 ? [whichPart(parts, part)] : []),
            ]),
            // The page says how wide it is where it is not as wide as what it was given.
            h('div', isFitted ? { class: 'whole', dataWidth: width } : { class: 'full' }, [box]),
            h('p', { id: 'named', class: 'named', dataNamed: true }, 'Point at a bar to read what it is.'),
            courses(input),
        ];
    },
};

const WORDS: Readonly<Record<EveningPart, string>> = { 'set-up': 'Set-up', service: 'Service', strike: 'Strike' };

function whichPart(parts: readonly EveningPart[], chosen: EveningPart | undefined): Element {
    const button = (value: string, words: string, isPressed: boolean): Element =>
        press(`part-${value || 'all'}`, 'part', { value, words, isPressed });
    return h('div', { class: 'joined', role: 'group', ariaLabel: 'Part of the evening' }, [
        button('', 'Everything', chosen === undefined),
        ...parts.map((part) => button(part, WORDS[part], part === chosen)),
    ]);
}

const HEADS = ['Called', 'Leaves the pass', 'First guest', 'Last guest', 'Cleared'];

/** What the picture shows of the courses, to be read, and gone through with the keyboard. */
function courses({ checked, sources }: PanelInput): Element {
    const { plan, service } = checked;
    const face = faces(plan);
    const row = ({ course, fired, leftPass, served, cleared }: CourseRun): Element => {
        const title = courseTitle(plan, course);
        const at = sources.numberOf(plan.menu?.courses[course]?.head ?? plan.menu?.coffee?.head);
        const times = [fired, leftPass.first, served.first, served.last, cleared.last];
        return h('tr', [
            h('th', { scope: 'row' }, [leadsTo(at, title, `${title}: show where it is written`)]),
            ...times.map((minutes, index) => figureCell(HEADS[index]!, [{ type: 'text', value: face(minutes) }])),
        ]);
    };
    return h('div', { id: 'list', class: 'list', tabIndex: 0, role: 'group', ariaLabel: 'Times of the courses' }, [
        h('table', [
            h('thead', [
                h('tr', [
                    h('th', { scope: 'col' }, 'Course'),
                    ...HEADS.map((head) => h('th', { scope: 'col', class: 'figure' }, head)),
                ]),
            ]),
            h('tbody', service.run!.courses.map(row)),
        ]),
    ]);
}
