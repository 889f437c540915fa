import type { Checked } from '../check.js';
import { courseTitle, faces } from '../output/sheets/evening.js';
import type { PieceUse, PullLine } from '../service/stock/types.js';
import { bullets, sentence } from './markdown.js';

/** How many of a piece there are, and what becomes of them over the evening. */
export function pieceInTheEvening(name: string, checked: Checked): (string | undefined)[] {
    const { plan, service } = checked;
    const pull = service.pull.find((line) => line.piece === name);
    const uses = service.counts.find((count) => count.piece === name)?.by ?? [];
    return [
        stock(
            plan.house.stock
                .filter((line) => line.piece.name === name)
                .reduce<number | undefined>((sum, { count }) => (sum ?? 0) + count.count, undefined),
            pull,
        ),
        bullets([...usesInWords(checked, uses), ...washesInWords(checked, name)]),
    ];
}

function stock(owned: number | undefined, pull: PullLine | undefined): string | undefined {
    const has = owned === undefined ? undefined : `the house owns ${owned}`;
    const wants =
        pull === undefined || pull.pull === 0
            ? undefined
            : `the evening needs ${pull.needed}${pull.overset > 0 ? ` and ${pull.overset} for places beyond the guests` : ''}, ${
                  pull.spare > 0 ? `with ${pull.spare} spare ${pull.pull} are pulled` : 'without spares'
              }`;
    const lacks = [
        ...(pull && pull.rented > 0 ? [`${pull.rented} are rented`] : []),
        ...(pull && pull.short > 0 ? [`${pull.short} are short`] : []),
    ];
    const words = [has, wants, ...lacks].filter((part) => part !== undefined);
    return words.length > 0 ? sentence(words.join('; ')) : undefined;
}

function usesInWords({ plan, service }: Checked, uses: readonly PieceUse[]): string[] {
    const face = faces(plan);
    return uses.map(({ course, purpose, count, when, state }) => {
        const run = service.run?.courses.find((each) => each.course === course);
        const isOfCourse = course >= 0;
        const how = [...(state ? [state] : []), when === 'laid' ? 'laid before guests sit' : 'brought'].join(', ');
        const times = run ? `, in use ${face(run.served.first)} to ${face(run.cleared.last)}` : '';
        return `${count} for ${isOfCourse ? courseTitle(plan, course) : purpose}: ${how}${times}`;
    });
}

function washesInWords({ plan, service }: Checked, name: string): string[] {
    const face = faces(plan);
    return service.stock.turnarounds
        .filter((each) => each.piece === name && each.stated !== undefined)
        .map(
            ({ count, after, for: later, times }) =>
                `${count} washed after ${courseTitle(plan, after)} for ${courseTitle(plan, later)}${
                    times ? `, back at ${face(times.back)}, wanted at ${face(times.wanted)}` : ''
                }`,
        );
}
