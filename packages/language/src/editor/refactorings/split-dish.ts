import { CodeActionKind } from 'vscode-languageserver';
import { AstUtils } from 'langium';
import { isCourse, isDish, type Course, type CourseClause } from '../../grammar/generated/ast.js';
import { parseText } from '../../grammar/parse.js';
import type { Cupboard } from '../../plan/cupboard.js';
import type { Origin } from '../../plan/origin.js';
import type { Need } from '../../plan/types.js';
import { needAsWritten } from '../../rules/guest-words.js';
import { isKeptFromKind } from '../../service/diets.js';
import type { GuestGroup } from '../../service/types.js';
import { applyEdits, type TextEdit } from '../fixes.js';
import { formatEdits } from '../format.js';
import type { PlacedFinding } from '../folder.js';
import { eventsWith } from '../names.js';
import { bracesIn, linesOf, pageOf, textOf, type Page } from '../page.js';
import { difference } from '../../plan/text-difference.js';
import type { Refactoring, Selected } from './refactoring.js';

/** Clauses that a course says for all of its dishes. */
const OF_THE_COURSE: readonly CourseClause['$type'][] = ['Lasts', 'StartsAt', 'Preset', 'Pour', 'Lay', 'Waiver'];
/** Clauses that the new dish begins with: what it is served in and eaten with. */
const KEPT: readonly CourseClause['$type'][] = ['Served', 'Eaten'];

/** The finding that a dish more mends. Where an allergen reaches a guest nothing is called a fix. */
const MENDED = 'diet-not-served';

/**
 * A dish for guests who eat otherwise, beside the one there is. What is in it is left for the cook to say: until then it
 * is found that nothing is stated. Where its kind would be one that these guests are kept from, it gets the course's, such
 * as `main`. Where it is found at the cursor that these guests have no dish, it is a fix: nobody shall take silencing that
 * for the only way out.
 */
export function splitDish({ folder, path, start, end }: Selected): Refactoring[] {
    const { service, plan } = folder.checked(eventsWith(folder, path)[0] ?? path);
    const read = plan.menu?.courses.find(
        ({ origin }) => origin.file === path && origin.start <= start && end <= origin.end,
    );
    if (!read) {
        return [];
    }
    const text = folder.textOf(path) ?? '';
    const { tree, problems } = parseText(text);
    const course = AstUtils.streamAst(tree)
        .filter(isCourse)
        .find(({ $cstNode: node }) => node?.offset === read.origin.start);
    if (!course || problems.length > 0) {
        return [];
    }
    const served = new Set(read.dishes.flatMap(({ who }) => (who?.sort === 'some' ? [labelOf(who.needs)] : [])));
    const found = folder.findingsIn(path).filter(({ finding: { at } }) => at.start <= end && start <= at.end);
    const speaksOf = ({ finding: { related } }: PlacedFinding, { origin }: GuestGroup): boolean =>
        related.some(({ at }) => sameOrigin(at, origin));
    /** Who the finding at the cursor speaks of comes first, then who would get what they must not have in this course. */
    const rank = (group: GuestGroup): number =>
        found.some((each) => speaksOf(each, group))
            ? 0
            : service.reaches.some(
                    ({ group: { origin }, course }) => course === read.index && sameOrigin(group.origin, origin),
                )
              ? 1
              : 2;
    const groups = service.groups
        .filter(
            ({ needs }) =>
                needs.length > 0 && needs.every((need) => isKnown(need, plan.cupboard)) && !served.has(labelOf(needs)),
        )
        .sort((one, other) => rank(one) - rank(other));
    const once = groups.filter(
        (group, index) => groups.findIndex(({ needs }) => labelOf(needs) === labelOf(group.needs)) === index,
    );
    return once.flatMap((group) => {
        const who = labelOf(group.needs);
        const isKeptFrom = (name: string): boolean => {
            const kind = plan.cupboard.kinds.get(name);
            return kind !== undefined && isKeptFromKind(kind, group, plan.cupboard);
        };
        const split = splitOff(pageOf(text), course, read.title, { who, isKeptFrom });
        const mends = found.some((each) => speaksOf(each, group) && each.finding.rule === MENDED);
        return split
            ? [
                  {
                      title: `Split off a dish for ${forGuests(who)}`,
                      kind: mends ? CodeActionKind.QuickFix : CodeActionKind.RefactorRewrite,
                      edits: new Map([[path, [split]]]),
                  },
              ]
            : [];
    });
}

/** The guests of the new dish. */
interface Guests {
    /** As `for` takes them. */
    readonly who: string;
    /** Whether dishes of a kind are made of what they may not have. */
    readonly isKeptFrom: (kind: string) => boolean;
}

function sameOrigin(one: Origin, other: Origin): boolean {
    return one.file === other.file && one.start === other.start && one.end === other.end;
}

/** What a name that nothing declares stands for, nobody can cook for. */
function isKnown(need: Need, { diets, substances }: Cupboard): boolean {
    switch (need.sort) {
        case 'children':
            return true;
        case 'diet':
            return diets.has(need.diet.name);
        case 'without':
            return need.what.every(({ name }) => substances.has(name));
    }
}

/** As `for` takes it: `vegetarian without tree-nuts`. */
function labelOf(needs: readonly Need[]): string {
    return needs.map(needAsWritten).join(' ');
}

function splitOff(page: Page, course: Course, title: string, guests: Guests): TextEdit | undefined {
    const whole = course.$cstNode!;
    const changed =
        course.dishes.length > 0
            ? withDishMore(page, course, title, guests)
            : withTwoDishes(page, course, title, guests);
    if (!changed) {
        return undefined;
    }
    const edited = applyEdits(page.text, [changed]);
    const laidOut = applyEdits(
        edited,
        formatEdits(edited, { start: whole.offset, end: whole.end + edited.length - page.text.length }),
    );
    return difference(page.text, laidOut);
}

/** The course's own clauses stay; all others go into the dish for the rest, comments with them. */
function withTwoDishes(page: Page, course: Course, title: string, guests: Guests): TextEdit | undefined {
    const whole = course.$cstNode!;
    const braces = bracesIn(page, { start: whole.offset, end: whole.end });
    if (!braces) {
        return undefined;
    }
    const [start, end] = [braces.open.end, braces.close.start];
    const own = course.clauses
        .filter(({ $type }) => OF_THE_COURSE.includes($type))
        .map(
            ({ $cstNode: node }) =>
                linesOf(page, { start: node!.offset, end: node!.end }) ?? { start: node!.offset, end: node!.end },
        );
    let dish = '';
    let from = start;
    for (const span of own) {
        dish += page.text.slice(from, span.start);
        from = span.end;
    }
    dish += page.text.slice(from, end);
    const kept = own.map((span) => textOf(page, span).trim());
    const first = `dish "${title}" for the rest {\n${dish.trim()}\n}`;
    const more = newDish(page, course, course.clauses, title, guests);
    return { start, end, text: `\n${[...kept, first, more].join('\n')}\n` };
}

function withDishMore(page: Page, course: Course, title: string, guests: Guests): TextEdit {
    const last = course.dishes.at(-1)!;
    const model = course.dishes.find(({ who: for_ }) => for_?.$type !== 'ForSome') ?? last;
    const { end } = last.$cstNode!;
    const kind = isDish(model) ? model.kind : undefined;
    return { start: end, end, text: `\n${newDish(page, course, model.clauses, model.title ?? title, guests, kind)}` };
}

/** @param kind of the dish that it is modelled on, where that says one */
function newDish(
    page: Page,
    course: Course,
    clauses: readonly CourseClause[],
    title: string,
    { who, isKeptFrom }: Guests,
    kind?: string,
): string {
    const kept = clauses
        .filter(({ $type }) => KEPT.includes($type))
        .map(({ $cstNode: node }) => textOf(page, { start: node!.offset, end: node!.end }));
    // Said by none, it is of the course's kind: `course main "Roast chicken" is poultry`.
    const given = kind ?? course.dishKind;
    const own = given !== undefined && isKeptFrom(given) ? course.kind : kind;
    const is = own === undefined ? '' : ` is ${own}`;
    return [`dish "${title}, ${who}"${is} for ${forGuests(who)} {`, ...kept, '}'].join('\n');
}

/** `for guests without gluten` reads better than `for without gluten`. */
function forGuests(who: string): string {
    return who.startsWith('without') ? `guests ${who}` : who;
}
