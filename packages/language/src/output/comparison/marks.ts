import { sortOf } from '../../rules/guest-words.js';
import { listed, quoted } from '../../rules/wording.js';
import { paired, type Change, type Compared } from './change.js';

/** The marks of plates that both plans have: whoever knows the old ones takes a plate for another. Those alike are told together. */
export function changedMarks(before: Compared, after: Compared): Change[] {
    const alike = new Map<string, string[]>();
    for (const { was, is } of paired(platesOf(before), platesOf(after), ({ key }) => key)) {
        if (was && is && was.marker !== is.marker) {
            const what = `for ${is.guests}: ${tellMark(was.marker, is.marker)}`;
            alike.set(what, [...(alike.get(what) ?? []), is.title]);
        }
    }
    return [...alike].map(([what, titles]) => ({
        subject: 'allergens',
        key: `mark ${what}`,
        text: `the ${titles.length === 1 ? 'plate' : 'plates'} ${listed(titles.map(quoted))} ${what}`,
    }));
}

function tellMark(was: string | undefined, is: string | undefined): string {
    if (is === undefined) {
        return `no longer marked ${quoted(was!)}`;
    }
    return `${was === undefined ? 'now ' : ''}marked ${quoted(is)}${was === undefined ? '' : `, not ${quoted(was)}`}`;
}

function platesOf({ plan, service }: Compared) {
    return service.seats.plates.map(({ course, dish, groups, marker }) => {
        const served = course < 0 ? service.bread?.serving.course : plan.menu?.courses[course];
        const title = served?.dishes.find(({ index }) => index === dish)?.title ?? '';
        const guests = listed([...new Set(groups.map((group) => sortOf(service.groups[group]!)))]);
        return { key: `${served?.title ?? ''}: ${title} for ${guests}`, title, guests, marker };
    });
}
