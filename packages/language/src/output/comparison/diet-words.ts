import type { Diet, Substance } from '../../plan/cupboard.js';
import type { Plan } from '../../plan/types.js';
import type { Change } from './change.js';
import { changedThings, type Facts } from './facts.js';
import { isSaid, said, saidList, saidNames, saidWords } from './said.js';
import { declared } from './declared.js';

/** What allergens, ingredients and diets mean where a file of the house declares them. */
export function changedDietWords(before: Plan, after: Plan): Change[] {
    return [
        ...changedThings(
            'allergens',
            DIET,
            declared(before, ({ diets }) => diets, 'the diet'),
            declared(after, ({ diets }) => diets, 'the diet'),
            () => 'is declared anew',
            'is no longer declared',
        ),
        ...changedThings(
            'allergens',
            SUBSTANCE,
            declared(
                before,
                ({ substances }) => substances,
                ({ sort }) => `the ${sort}`,
            ),
            declared(
                after,
                ({ substances }) => substances,
                ({ sort }) => `the ${sort}`,
            ),
            () => 'is declared anew',
            'is no longer declared',
        ),
    ];
}

const DIET: Facts<Diet> = {
    excludes: ({ excludes }) => saidNames(excludes),
    'fed only by what says that it suits it': ({ statedOnly }) => isSaid(statedOnly),
    'marked on plates': ({ mark }) => said(mark),
    called: ({ called }) => said(called),
    'also called': ({ also }) => saidWords(also),
    'known elsewhere as': ({ term }) => said(term),
    'declared from scratch': ({ fresh }) => isSaid(fresh),
};

const SUBSTANCE: Facts<Substance> = {
    is: ({ parents }) => saidNames(parents),
    'told because of the code': ({ requiredIn }) => saidNames(requiredIn),
    'told each by its name': ({ eachByName }) => isSaid(eachByName),
    called: ({ called }) =>
        saidList(
            called.map(({ words, code }) => said(words, ['in', code])),
            ', ',
        ),
    'also called': ({ also }) => saidWords(also),
    'declared from scratch': ({ fresh }) => isSaid(fresh),
};
