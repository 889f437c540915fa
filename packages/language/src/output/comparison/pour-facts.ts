import type { Pour, Water } from '../../plan/types.js';
import { listed, quoted } from '../../rules/wording.js';
import type { Change, Compared } from './change.js';
import { saidCount, saidWho } from './dish-facts.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { isSaid, said, saidList, type Said } from './said.js';
import { poursOf, type Poured } from './things.js';

/** How drinks and water are poured; how many bottles that makes is told beside it. */
export function changedPours({ plan: before }: Compared, { plan: after }: Compared): Change[] {
    const waterOf = (water: Water | undefined): Thing<Water>[] =>
        water ? [{ key: 'water', called: 'the water', of: water }] : [];
    return [
        ...changedThings(
            'drinks',
            POURED,
            poursOf(before),
            poursOf(after),
            (poured) => `is new: poured ${saidPlace(poured).text}`,
            'is no longer poured',
        ),
        ...changedThings('drinks', WATER, waterOf(before.menu?.water), waterOf(after.menu?.water)),
    ];
}

const POUR = {
    'a glass of': ({ amount }) => said(amount),
    into: ({ glass }) => said(glass?.name),
    at: ({ temperature }) => said(temperature),
    for: ({ who }) => saidWho(who),
    'refilled so often:': ({ refills }) => saidCount(refills),
    'topped up until': ({ toppedUpUntil }) => said(toppedUpUntil?.name),
    'its glass brought with the course': ({ brought }) => isSaid(brought),
    'tasted by the host': ({ tasted }) => isSaid(tasted),
    'of the kind': ({ kind }) => said(kind?.name),
    'of the strength': ({ strength }) => said(strength),
    'from bottles of': ({ bottles }) => saidList(bottles, ' or '),
    'chilled in': ({ chilledIn }) => said(chilledIn?.name),
} satisfies Facts<Pour>;

const ofPour = <T>(pourOf: (thing: T) => Pour): Facts<T> =>
    Object.fromEntries(Object.entries(POUR).map(([name, read]) => [name, (thing: T) => read(pourOf(thing))]));

const POURED: Facts<Poured> = { poured: (poured) => saidPlace(poured), ...ofPour(({ pour }: Poured) => pour) };

function saidPlace({ course, dish, insteadOf }: Poured): Said {
    return said(
        'with',
        dish === undefined || dish === course ? quoted(course) : `${quoted(dish)} of ${quoted(course)}`,
        ['in place of', insteadOf && quoted(insteadOf)],
    )!;
}

const WATER: Facts<Water> = { '': ({ choices }) => said(listed(choices)), ...ofPour(({ pour }: Water) => pour) };
