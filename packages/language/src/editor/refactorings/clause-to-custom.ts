import { CodeActionKind } from 'vscode-languageserver';
import type { CustomName } from '../../plan/customs.js';
import type { Origin } from '../../plan/origin.js';
import type { Quantity } from '../../plan/quantity.js';
import type { Dish, Plan, Reading } from '../../plan/types.js';
import type { Intention } from '../../rules/fixes.js';
import { quoted } from '../../rules/wording.js';
import { eventsWith } from '../names.js';
import { editsFor, type Refactoring, type Selected } from './refactoring.js';

/** A clause that says for one thing what a custom says for all. */
interface Said {
    readonly at: Origin;
    readonly custom: CustomName;
    readonly value: string;
    /** What becomes of the clause once the house says it. */
    readonly change: Intention;
}

/** What one dish, room or toast says becomes what the house always does. */
export function clauseToCustom({ folder, path, start, end }: Selected): Refactoring[] {
    const reading = folder.readingOf(path);
    const { plan } = folder.checked(eventsWith(folder, path)[0] ?? path);
    const text = folder.textOf(path) ?? '';
    const said = (reading ? clausesOf(reading, text) : []).filter(({ at }) => at.start <= start && end <= at.end);
    return said.flatMap(({ custom, value, change }) => {
        const set = settingOf(plan, custom, value);
        const title = `Make ${quoted(`${custom}: ${value}`)} the custom of the house`;
        const edits = set ? editsFor(folder, title, [change, set]) : new Map();
        return edits.size > 0 ? [{ title, kind: CodeActionKind.RefactorRewrite, edits }] : [];
    });
}

/** `undefined` where there is no house, or the house says so already. */
function settingOf({ house }: Plan, name: CustomName, value: string): Intention | undefined {
    const custom = house.customs.find((each) => each.name.name === name);
    return house.origin === undefined
        ? undefined
        : {
              do: 'set-custom',
              house: house.origin,
              ...(house.layingOrigin ? { laying: house.layingOrigin } : {}),
              ...(custom ? { custom: custom.origin } : {}),
              name,
              value,
          };
}

function clausesOf({ menus, rooms }: Reading, text: string): Said[] {
    const courses = menus.flatMap((menu) => menu.courses);
    return [
        ...rooms.flatMap(({ temperature }) =>
            temperature ? [whole('room-temperature', temperature.written, withWord('at', temperature, text))] : [],
        ),
        ...courses.flatMap(({ lasts }) =>
            lasts && !lasts.spread ? [whole('eating-time', lasts.time.written, lasts.origin)] : [],
        ),
        ...courses.flatMap(({ dishes }) => dishes.flatMap((dish) => servedClauses(dish, text))),
    ];
}

/** `warmed to 62 °C` keeps its `warmed`: how warm that is, is the house's to say. */
function servedClauses({ served: { vessel, under, side } }: Dish, text: string): Said[] {
    const warmth = [vessel, under].flatMap((use): Said[] => {
        const custom = use?.state === 'warmed' ? 'warmed-to' : 'chilled-to';
        return use?.to ? [{ ...whole(custom, use.to.written, withWord('to', use.to, text)), at: use.origin }] : [];
    });
    return [...warmth, ...(side ? [whole('serve-from', side.side, side.origin)] : [])];
}

function whole(custom: CustomName, value: string, at: Origin): Said {
    return { at, custom, value, change: { do: 'remove', at } };
}

/** A figure and the word before it. */
function withWord(word: string, { origin }: Quantity, text: string): Origin {
    return { ...origin, start: text.lastIndexOf(word, origin.start - 1) };
}
