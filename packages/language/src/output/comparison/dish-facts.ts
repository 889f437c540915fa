import type { Eaten, PieceUse } from '../../plan/cupboard.js';
import type { Count, Named } from '../../plan/origin.js';
import type { Quantity } from '../../plan/quantity.js';
import type { Accompaniment, Dish, Lay, Served, VesselUse, Who } from '../../plan/types.js';
import { quoted } from '../../rules/wording.js';
import type { Facts } from './facts.js';
import { isSaid, said, saidList, saidNames, type Said } from './said.js';
import { sayGuests } from './things.js';

// How a dish is cooked, kept, carried, served and eaten. What is in it is told with the allergens.

export const DISH: Facts<Dish> = {
    'cooked to': ({ cookTo }) => said(cookTo?.temperature, ['for', cookTo?.time]),
    served: ({ served: { raw } }) => said(raw?.how),
    'held at': ({ heldAt }) => said(heldAt?.temperature, ['for', heldAt?.time]),
    'reheated to': ({ reheat }) => said(reheat?.temperature, ['in', reheat?.time]),
    cooled: ({ cooled }) =>
        saidList(
            (cooled?.steps ?? []).map(({ temperature, time }) => said('to', temperature, 'in', time)),
            ', ',
        ),
    'leaves the pass at': ({ leavesPass }) => said(leavesPass?.temperature),
    measured: ({ measured }) => said(measured?.temperature, ['after', measured?.after]),
    'wanted at the guest at': ({ served: { temperature } }) => said(temperature),
    'at the guest within': ({ served: { within } }) => said(within?.time),
    for: ({ who }) => saidWho(who),
    'served on': ({ served }) => saidVessels(served, 'on'),
    'served in': ({ served }) => saidVessels(served, 'in'),
    'portion of': ({ served: { portion } }) => said(portion),
    'portions beyond the guests:': ({ extra }) => saidCount(extra),
    'eaten with': ({ eaten }) => saidEaten(eaten),
    carried: ({ carried }) => said(carried?.how),
    'served from the': ({ served: { side } }) => said(side?.side),
    'poured at table': ({ served: { pouredAtTable } }) => saidAtTable(pouredAtTable),
    'plated in': ({ platedIn }) => saidList(platedIn?.times ?? [], ', '),
    'plated ahead': ({ platedAhead }) => platedAhead && (said(['into', platedAhead.gear?.name]) ?? isSaid(true)),
    'made by the recipe': ({ recipe }) => said(recipe && quoted(recipe.text)),
    'of the kind': ({ kind }) => said(kind.name),
    'laid by its own clause:': ({ lay }) => saidLay(lay),
};

export const ACCOMPANIMENT: Facts<Accompaniment> = {
    'poured at table': ({ pouredAtTable }) => saidAtTable(pouredAtTable),
    passed: ({ passed }) => isSaid(passed),
};

export function saidWho(who: Who | undefined): Said | undefined {
    if (!who) {
        return undefined;
    }
    switch (who.sort) {
        case 'rest':
            return said('the rest');
        case 'everyone':
            return said('everyone');
        case 'some':
            return said(who.count?.count, who.share, who.needs.length > 0 ? sayGuests(who.needs) : undefined);
    }
}

const saidAtTable = (from: { readonly gear?: Named } | undefined): Said | undefined =>
    from && (said(['from', from.gear?.name]) ?? isSaid(true));

export const saidCount = (count: Count | undefined): Said | undefined => said(count?.count);

/** `on dinner-plate warmed to 62 °C`, and what it stands on. */
function saidVessels({ vessel, under }: Served, how: VesselUse['how']): Said | undefined {
    return vessel?.how === how ? said(saidVessel(vessel), under?.how, under && saidVessel(under)) : undefined;
}

const saidVessel = ({ piece, state, to }: VesselUse): Said | undefined => said(piece.name, saidState(state, to));

const saidState = (state: string | undefined, to: Quantity | undefined): Said | undefined =>
    state === undefined ? undefined : said(state, ['to', to]);

export function saidEaten(eaten: Eaten | undefined): Said | undefined {
    return (
        eaten &&
        saidList(
            eaten.map((either) => saidList(either.map(saidUse), ' or ')),
            ' and ',
        )
    );
}

const saidUse = ({ piece, state, to, brought, laid }: PieceUse): Said | undefined =>
    said(piece.name, saidState(state, to), brought ? 'brought with the course' : undefined, laid ? 'laid' : undefined);

/** The sides of a `lay` clause. */
export function saidLay(lay: Lay | undefined): Said | undefined {
    if (!lay) {
        return undefined;
    }
    const sides = {
        left: lay.left,
        right: lay.right,
        above: lay.above,
        saucer: lay.saucer,
        'bread plate': lay.breadPlate,
    };
    return saidList(
        Object.entries(sides).map(([side, pieces]) => pieces && said(side, saidNames(pieces) ?? 'nothing')),
        ', ',
    );
}
