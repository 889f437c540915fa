import { counted } from '../../rules/wording.js';
import type { PourNeed } from '../../service/types.js';
import { paired, type Change, type Compared } from './change.js';

/** Bottles, by drink. */
export function changedDrinks(before: Compared, after: Compared): Change[] {
    return paired(before.service.drinks, after.service.drinks, ({ facts }) => facts.pour.title).flatMap(
        ({ key, was, is }): Change[] => {
            const [old, now] = [said(was), said(is)];
            return old === now
                ? []
                : [
                      {
                          subject: 'drinks',
                          key,
                          before: bottles(was),
                          after: bottles(is),
                          unit: 'bottles',
                          text: `\`${key}\`: ${is ? now : 'no longer poured'}${was && is ? ` instead of ${old}` : ''}`,
                      },
                  ];
        },
    );
}

const bottles = (need: PourNeed | undefined): number =>
    (need?.bottles ?? []).reduce((sum, { count }) => sum + count, 0);

function said(need: PourNeed | undefined): string {
    return (need?.bottles ?? [])
        .map(({ size, count }) => `${counted(count, 'bottle')} of ${Number(size.toFixed(0))} ml`)
        .join(' and ');
}
