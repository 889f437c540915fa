import { counted } from '../../rules/wording.js';
import type { Supply } from '../../service/supplies/types.js';
import { paired, type Change, type Compared } from './change.js';

/** What is ordered by the guest: ice, water, bread, butter, coffee. */
export function changedSupplies(before: Compared, after: Compared): Change[] {
    const named = (supply: Supply): string => supply.title ?? supply.what.replaceAll('-', ' ');
    return paired(before.service.supplies, after.service.supplies, named).flatMap(({ key, was, is }): Change[] => {
        const [old, now] = [was && said(was), is && said(is)];
        return old === now
            ? []
            : [
                  {
                      subject: 'supplies',
                      key,
                      text: now ? `${key}: ${now}${old ? ` instead of ${old}` : ''}` : `${key}: none`,
                  },
              ];
    });
}

function said({ dimension, amount, packs }: Supply): string {
    if (packs) {
        return counted(packs.count, packs.called === 'bags' ? 'bag' : 'batch', packs.called);
    }
    const large = amount >= 1000;
    switch (dimension) {
        case 'count':
            return `${Math.ceil(amount)}`;
        case 'mass':
            return large ? `${(amount / 1000).toFixed(1)} kg` : `${Math.ceil(amount)} g`;
        case 'volume':
            return large ? `${(amount / 1000).toFixed(1)} l` : `${Math.ceil(amount)} ml`;
    }
}
