import { InlayHintKind, type InlayHint, type Range } from 'vscode-languageserver';
import type { Checked } from '../check.js';
import type { Origin } from '../plan/origin.js';
import { show, type Quantity } from '../plan/quantity.js';
import { counted, listed } from '../rules/wording.js';
import { eveningClock } from '../service/clock/evening.js';
import type { Band } from '../service/heat/band.js';
import type { DishHeat } from '../service/heat/types.js';
import { guestWords } from './guest-counts.js';
import { sentence } from './markdown.js';
import { eventsWith } from './names.js';
import type { HintKind, Settings } from './settings.js';
import type { Place } from './workspace.js';

/** A figure to show behind some words. */
interface Hint {
    readonly kind: HintKind;
    /** It stands where these end. */
    readonly after: Origin;
    readonly label: string;
    /** What the figure is, in a sentence. */
    readonly about: string;
}

/** What is computed of courses, dishes and pours, shown where they are written: times, counts, temperatures at the guest. */
export function inlayHints({ folder, path }: Place, within: Range, { hints }: Settings): InlayHint[] {
    const document = folder.documentOf(path);
    const events = eventsWith(folder, path);
    if (!document || events.length > 1) {
        return [];
    }
    const checked = folder.checked(events[0] ?? path);
    const all = [
        ...(hints.times ? timeHints(checked) : []),
        ...(hints.counts ? countHints(checked) : []),
        ...(hints.temperatures ? temperatureHints(checked) : []),
    ];
    const [start, end] = [document.offsetAt(within.start), document.offsetAt(within.end)];
    return all
        .filter(({ after }) => after.file === path && after.end >= start && after.end <= end)
        .sort((a, b) => a.after.end - b.after.end)
        .map(({ after, label, about }) => ({
            position: document.positionAt(after.end),
            label,
            tooltip: about,
            kind: InlayHintKind.Parameter,
            paddingLeft: true,
        }));
}

// ------------------------------------------------------------------ times
function timeHints({ plan, service }: Checked): Hint[] {
    const clock = eveningClock(plan);
    const { menu } = plan;
    const { run } = service;
    if (!clock || !menu || !run) {
        return [];
    }
    const courses = run.courses.flatMap(({ course, served }): Hint[] => {
        const after = menu.courses[course]?.head ?? menu.coffee?.head;
        const [first, last] = [clock.face(served.first), clock.face(served.last)];
        return after
            ? [
                  {
                      kind: 'times',
                      after,
                      label: first === last ? first : `${first} to ${last}`,
                      about: `Computed: the first guest is served at ${first}, the last at ${last}.`,
                  },
              ]
            : [];
    });
    const speeches = run.speeches.flatMap(({ speech, start, end, at }): Hint[] => {
        const written = menu.speeches[speech];
        return written && at === undefined
            ? [
                  {
                      kind: 'times',
                      after: written.origin,
                      label: clock.face(start),
                      about: `Computed: from ${clock.face(start)} to ${clock.face(end)}.`,
                  },
              ]
            : [];
    });
    return [...courses, ...speeches];
}

// ------------------------------------------------------------------ counts
function countHints({ service }: Checked): Hint[] {
    const dishes = service.servings.flatMap(({ course, portions }) =>
        course.hasDishes ? portions : portions.filter(({ count }) => count !== service.guestCount),
    );
    const portions = dishes
        .filter(({ dish: { who } }) => who?.sort !== 'some' || who.count === undefined)
        .map(({ dish, count, groups }): Hint => ({
            kind: 'counts',
            after: dish.head,
            label: counted(count, 'guest'),
            about: `Computed: ${guestWords(groups) || 'nobody'}.`,
        }));
    const bottles = service.drinks.flatMap((need): Hint[] => {
        const number = need.bottles.reduce((sum, { count }) => sum + count, 0);
        const sizes = listed(need.bottles.map(({ count, size }) => `${count} of ${size} ml`));
        return number > 0
            ? [
                  {
                      kind: 'counts',
                      after: need.facts.pour.head,
                      label: counted(number, 'bottle'),
                      about: `Computed for ${counted(need.drinkers, 'guest')}: ${sizes}${need.isSizeStated ? '' : ', a usual size'}.`,
                  },
              ]
            : [];
    });
    return [...portions, ...bottles];
}

// ------------------------------------------------------------------ temperatures
function temperatureHints({ plan, service }: Checked): Hint[] {
    return service.heat.dishes.flatMap((heat): Hint[] => {
        const dish = plan.menu?.courses[heat.course]?.dishes[heat.dish];
        const after = dish?.served.temperature;
        const said = after && atTheGuest(heat, after);
        return said ? [{ kind: 'temperatures', after: after.origin, ...said }] : [];
    });
}

function atTheGuest(heat: DishHeat, { unit }: Quantity): Pick<Hint, 'label' | 'about'> | undefined {
    const wanted = unit === '°F' ? '°F' : '°C';
    const figure = (celsius: number): string => show(celsius, wanted, 0);
    const band = ({ low, high }: Band): string => `${figure(low).replace(/ .*/, '')} to ${figure(high)}`;
    const last = heat.last?.temperature;
    const found = last ?? heat.published;
    if (!found) {
        return undefined;
    }
    const label = found.celsius === undefined ? band(found) : figure(found.celsius);
    const who = last ? 'At the last guest' : 'At the guest';
    return {
        label: `${label} at the ${last ? 'last ' : ''}guest`,
        about: `${who} it is estimated at ${band(found)}. ${sentence(`error: ${found.because}`)} A thermometer decides.`,
    };
}
