import { several } from '../../rules/wording.js';
import type { PullLine } from '../../service/types.js';
import { more, paired, type Change, type Compared } from './change.js';

/** What is pulled from the store, and where that leaves nothing over or falls short. */
export function changedPieces(before: Compared, after: Compared): Change[] {
    const called = (piece: string): string =>
        after.plan.cupboard.pieces.get(piece)?.called ?? piece.replaceAll('-', ' ');
    return paired(before.service.pull, after.service.pull, ({ piece }) => piece).flatMap(
        ({ key, was, is }): Change[] => {
            const [old, now] = [was?.pull ?? 0, is?.pull ?? 0];
            if (old === now && (was?.short ?? 0) === (is?.short ?? 0)) {
                return [];
            }
            const noun = Math.abs(now - old) === 1 ? called(key) : several(called(key));
            const first =
                now === 0
                    ? `no ${several(called(key))} to pull any more`
                    : old === now
                      ? `${now} ${several(called(key))} to pull as before`
                      : `${more(old, now)} ${noun} to pull, ${now} in all`;
            return [
                {
                    subject: 'pieces',
                    key,
                    before: old,
                    after: now,
                    unit: 'pieces',
                    text: `${first}${whatIsLeft(was, is)}`,
                },
            ];
        },
    );
}

/** A piece that the house does not list is nobody's to count. */
function whatIsLeft(was: PullLine | undefined, is: PullLine | undefined): string {
    if (!is?.owned) {
        return '';
    }
    if (is.short > 0) {
        return `, ${is.short} more than there are`;
    }
    if (was && was.short > 0) {
        return ', and there are enough now';
    }
    return is.owned === is.pull ? ', none left over' : '';
}
