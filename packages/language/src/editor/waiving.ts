import type { Origin } from '../plan/origin.js';
import type { Plan, Reading } from '../plan/types.js';
import { ruleById } from '../rules/index.js';
import type { Intention } from '../rules/fixes.js';
import type { Rule } from '../rules/rule.js';
import { quoted } from '../rules/wording.js';
import { editsOf, type TextEdit } from './fixes.js';
import type { Folder, PlacedFinding } from './folder.js';
import type { Asked } from './questions.js';

/** Where a rule is silenced: in the block around a finding, or in the house for good. */
export type Reach = 'here' | 'house';

export interface Silencing {
    readonly title: string;
    readonly reach: Reach;
    readonly rule: string;
    /** The plan that the finding was made in. */
    readonly plan: string;
    /** Of the finding, in its file. */
    readonly at: Origin;
}

/** Asked before either is written. */
export const REASON_QUESTION: Asked = {
    key: 'reason',
    label: 'Because …',
    prompt: 'Say why in a few words. They stand in the plan and on the captain’s sheet.',
    example: 'agreed with the host',
    now: '',
    problemOf: (answer) => (answer === '' ? 'A reason has at least one word.' : undefined),
};

/** Rules about waivers themselves, which a waiver does not silence. */
const ABOUT_WAIVERS: readonly string[] = ['waiver-without-effect', 'off-without-reason', 'safety-not-waivable'];

/** How a finding can be silenced with a reason: not where someone could be harmed, nor where a text can't be understood. */
export function silencings(folder: Folder, { plan, finding }: PlacedFinding): Silencing[] {
    const rule = ruleById(finding.rule);
    if (!rule || !mayBeSilenced(rule)) {
        return [];
    }
    const { plan: resolved } = folder.checked(plan);
    const made = { rule: rule.id, plan, at: finding.at };
    const reading = folder.readingOf(finding.at.file);
    return [
        ...(reading && blockAround(reading, finding.at)
            ? [{ ...made, reach: 'here' as const, title: `Waive ${quoted(rule.id)} here because …` }]
            : []),
        ...(houseOf(resolved)
            ? [{ ...made, reach: 'house' as const, title: `Turn ${quoted(rule.id)} off for the house because …` }]
            : []),
    ];
}

function mayBeSilenced({ id, safety, group }: Rule): boolean {
    return safety === undefined && group !== 'text' && !ABOUT_WAIVERS.includes(id);
}

/** The edits that write a waiver or the house's setting with its reason; empty where there is no place for it any more. */
export function silence(
    folder: Folder,
    { rule, reach, plan, at }: Omit<Silencing, 'title'>,
    reason: string,
): ReadonlyMap<string, readonly TextEdit[]> {
    const because = `because "${reason.replace(/["“”„\r\n]/g, "'").trim()}"`;
    const change = reach === 'here' ? waiver(folder, rule, at, because) : setting(folder, rule, plan, because);
    return change
        ? editsOf({ title: '', safety: 'show', changes: [change] }, (file) => folder.textOf(file))
        : new Map();
}

function waiver(folder: Folder, rule: string, at: Origin, because: string): Intention | undefined {
    const reading = folder.readingOf(at.file);
    const block = reading && blockAround(reading, at);
    return block && { do: 'add-clause', to: block, clause: `waive ${rule} ${because}` };
}

function setting(folder: Folder, rule: string, plan: string, because: string): Intention | undefined {
    const { plan: resolved } = folder.checked(plan);
    const house = houseOf(resolved);
    const words = `rule ${rule} is off ${because}`;
    const there = resolved.house.settings.findLast((each) => each.rule.name === rule);
    return there ? { do: 'replace', at: there.origin, words } : house && { do: 'add-clause', to: house, clause: words };
}

function houseOf({ house }: Plan): Origin | undefined {
    return house.origin;
}

/** The smallest block around a place that a waiver can stand in. */
function blockAround({ events, menus }: Reading, { start, end }: Origin): Origin | undefined {
    const blocks = [
        ...events,
        ...menus,
        ...menus.flatMap(({ courses, bread, coffee }) => [
            ...(bread ? [bread, ...bread.dishes, ...bread.accompaniments] : []),
            ...(coffee ? [coffee, ...coffee.accompaniments] : []),
            ...courses,
            ...courses.flatMap((course) => [
                ...course.pours,
                ...(course.hasDishes ? course.dishes : []),
                ...course.dishes.flatMap((dish) => [...dish.accompaniments, ...dish.pours]),
            ]),
        ]),
    ].map(({ origin }) => origin);
    return blocks
        .filter((block) => block.start <= start && end <= block.end)
        .sort((a, b) => a.end - a.start - (b.end - b.start))[0];
}
