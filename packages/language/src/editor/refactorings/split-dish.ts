import { CodeActionKind } from 'vscode-languageserver';
import { AstUtils } from 'langium';
import { isCourse, isDish, type Course, type CourseClause } from '../../grammar/generated/ast.js';
import { parseText } from '../../grammar/parse.js';
import type { Origin } from '../../plan/origin.js';
import type { Need } from '../../plan/types.js';
import { asName } from '../../rules/wording.js';
import type { GuestGroup } from '../../service/types.js';
import { applyEdits, type TextEdit } from '../fixes.js';
import { formatEdits } from '../format.js';
import { eventsWith } from '../names.js';
import { bracesIn, linesOf, pageOf, textOf, type Page } from '../page.js';
import { difference } from '../../plan/text-difference.js';
import type { Refactoring, Selected } from './refactoring.js';

/** Clauses that a course says for all of its dishes. */
const OF_THE_COURSE: readonly CourseClause['$type'][] = ['Lasts', 'StartsAt', 'Preset', 'Pour', 'Lay', 'Waiver'];
/** Clauses that the new dish begins with: what it is served in and eaten with. */
const KEPT: readonly CourseClause['$type'][] = ['Served', 'Eaten'];

/**
 * A dish for guests who eat otherwise, beside the one there is. What is in it is left for the cook to say: until then it
 * is found that nothing is stated.
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
    const atCursor = folder
        .findingsIn(path)
        .filter(({ finding: { at } }) => at.start <= end && start <= at.end)
        .flatMap(({ finding }) => finding.related.map(({ at }) => at));
    /** Who the finding at the cursor speaks of comes first, then who would get what they must not have in this course. */
    const rank = ({ origin }: GuestGroup): number =>
        atCursor.some((at) => sameOrigin(at, origin))
            ? 0
            : service.reaches.some(({ group, course }) => course === read.index && sameOrigin(group.origin, origin))
              ? 1
              : 2;
    const wanted = new Set(
        service.groups
            .filter(({ needs }) => needs.length > 0)
            .sort((one, other) => rank(one) - rank(other))
            .map(({ needs }) => labelOf(needs))
            .filter((label) => !served.has(label)),
    );
    return [...wanted].flatMap((who) => {
        const split = splitOff(pageOf(text), course, read.title, who);
        return split
            ? [
                  {
                      title: `Split off a dish for ${who.startsWith('without') ? `guests ${who}` : who}`,
                      kind: CodeActionKind.RefactorRewrite,
                      edits: new Map([[path, [split]]]),
                  },
              ]
            : [];
    });
}

function sameOrigin(one: Origin, other: Origin): boolean {
    return one.file === other.file && one.start === other.start && one.end === other.end;
}

/** As `for` takes it: `vegetarian without tree-nuts`. */
function labelOf(needs: readonly Need[]): string {
    return needs
        .map((need) => {
            switch (need.sort) {
                case 'children':
                    return 'children';
                case 'diet':
                    return asName(need.diet.name);
                case 'without':
                    return `without ${need.what.map(({ name }) => asName(name)).join(' and ')}`;
            }
        })
        .join(' ');
}

function splitOff(page: Page, course: Course, title: string, who: string): TextEdit | undefined {
    const whole = course.$cstNode!;
    const braces = bracesIn(page, { start: whole.offset, end: whole.end });
    if (!braces) {
        return undefined;
    }
    const changed =
        course.dishes.length > 0
            ? withDishMore(page, course, title, who)
            : withTwoDishes(page, course, braces.open.end, braces.close.start, title, who);
    const edited = applyEdits(page.text, [changed]);
    const laidOut = applyEdits(
        edited,
        formatEdits(edited, { start: whole.offset, end: whole.end + edited.length - page.text.length }),
    );
    return difference(page.text, laidOut);
}

/** The course's own clauses stay; all others go into the dish for the rest, comments with them. */
function withTwoDishes(page: Page, course: Course, start: number, end: number, title: string, who: string): TextEdit {
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
    return { start, end, text: `\n${[...kept, first, newDish(page, course.clauses, title, who)].join('\n')}\n` };
}

function withDishMore(page: Page, course: Course, title: string, who: string): TextEdit {
    const last = course.dishes.at(-1)!;
    const model = course.dishes.find(({ who: for_ }) => for_?.$type !== 'ForSome') ?? last;
    const kind = isDish(model) && model.kind ? ` is ${model.kind}` : '';
    const { end } = last.$cstNode!;
    return { start: end, end, text: `\n${newDish(page, model.clauses, model.title ?? title, who, kind)}` };
}

function newDish(page: Page, clauses: readonly CourseClause[], title: string, who: string, kind = ''): string {
    const kept = clauses
        .filter(({ $type }) => KEPT.includes($type))
        .map(({ $cstNode: node }) => textOf(page, { start: node!.offset, end: node!.end }));
    return [`dish "${title}, ${who}"${kind} for ${forGuests(who)} {`, ...kept, '}'].join('\n');
}

/** `for guests without gluten` reads better than `for without gluten`. */
function forGuests(who: string): string {
    return who.startsWith('without') ? `guests ${who}` : who;
}
