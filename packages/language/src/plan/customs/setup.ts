import type { CustomSpec } from './custom-spec.js';

const noSource = ['common practice, no source'] as const;
const SECOND = 1 / 60;
const HOUR = 60;

/**
 * How long setting up and striking take, in min. Nothing of it is published (quantities §6.2: no vendor-neutral figure found),
 * so a house does well to measure its own once and to write it down. How fast pieces are polished stands in `washing`.
 */
export const setupCustoms = [
    {
        name: 'laying-cloth',
        title: 'How long two people take to lay one cloth.',
        figure: { dimension: 'time', low: 10 * SECOND, high: 30, sources: noSource },
        default: 3,
        because: 'Unfolded, hung evenly and its folds smoothed.',
        disagreements: [],
    },
    {
        name: 'laying-piece',
        title: 'How long it takes to lay one piece of a cover: a fork, a glass, a plate, a napkin.',
        figure: { dimension: 'time', low: SECOND, high: 1, sources: noSource },
        default: 4 * SECOND,
        because: 'From the tray to its place, in line with its neighbours.',
        disagreements: [],
    },
    {
        name: 'folding-napkin',
        title: 'How long it takes to fold one napkin.',
        figure: { dimension: 'time', low: 2 * SECOND, high: 5, sources: noSource },
        default: 20 * SECOND,
        because: 'A plain fold; a bishop’s mitre takes its time.',
        disagreements: [],
    },
    {
        name: 'placing-card',
        title: 'How long it takes to set one place card.',
        figure: { dimension: 'time', low: SECOND, high: 2, sources: noSource },
        default: 10 * SECOND,
        because: 'Found in the list, read, set.',
        disagreements: [],
    },
    {
        name: 'briefing',
        title: 'How long the briefing of the whole team takes; none is `0 min`.',
        figure: { dimension: 'time', low: 0, high: 60, sources: noSource },
        default: 15,
        because: 'Menu, diets, stations and signals, once through.',
        disagreements: [],
    },
    {
        name: 'line-up',
        title: 'How long before the doors everybody stands at their place.',
        figure: { dimension: 'time', low: 0, high: 30, sources: noSource },
        default: 5,
        because: 'Long enough to look everybody and every table over.',
        disagreements: [],
    },
    {
        name: 'staff-meal',
        title: 'How long the crew’s meal takes.',
        figure: { dimension: 'time', low: 0, high: 90, sources: noSource },
        default: 30,
        because: 'The local labour law may ask for more.',
        disagreements: [],
    },
    {
        name: 'call-ahead',
        title: 'How long before their first task people are called, to change and sign in.',
        figure: { dimension: 'time', low: 0, high: 60, sources: noSource },
        default: 10,
        because: 'Changed, washed and signed in.',
        disagreements: [],
    },
    {
        name: 'get-in',
        title: 'How long before the doors the team can get into the room.',
        figure: { dimension: 'time', low: 10, high: 48 * HOUR, sources: noSource },
        choices: [{ value: 'any-time', means: 'as early as it has to', sources: noSource }],
        default: 'any-time',
        because: 'In a house of one’s own nobody has to wait; a hired room has its hours.',
        disagreements: [],
    },
    {
        name: 'ready-chance',
        title: 'The chance with which set-up is to be ready, where tasks may take longer than expected.',
        figure: { dimension: 'share', low: 0.5, high: 0.99, sources: noSource },
        default: 0.9,
        because: 'Even odds are what the expected times alone give; nine evenings of ten is what a team can live with.',
        disagreements: [],
    },
    {
        name: 'lingering',
        title: 'How long guests stay when the service is over, where the plan does not say when the evening ends.',
        figure: { dimension: 'time', low: 0, high: 180, sources: noSource },
        default: 20,
        because: 'Coats and goodbyes.',
        disagreements: [],
    },
    {
        name: 'get-out',
        title: 'How long after the last guest is to have gone (`ends`) the room must be clear.',
        figure: { dimension: 'time', low: 0, high: 12 * HOUR, sources: noSource },
        choices: [{ value: 'any-time', means: 'nobody waits for the room', sources: noSource }],
        default: HOUR,
        because:
            'A team that is on its feet since the afternoon should not strike for longer; a hired room has its hours.',
        disagreements: [],
    },
    {
        name: 'striking-piece',
        title: 'How long it takes to take one piece off a table when guests have gone.',
        figure: { dimension: 'time', low: 0.5 * SECOND, high: 1, sources: noSource },
        default: 2 * SECOND,
        because: 'Onto a tray or into a rack, sorted.',
        disagreements: [],
    },
    {
        name: 'stripping-table',
        title: 'How long it takes to take the linen off one table.',
        figure: { dimension: 'time', low: 10 * SECOND, high: 15, sources: noSource },
        default: 1.5,
        because: 'Napkins shaken out and counted into tens, cloths after them.',
        disagreements: [],
    },
    {
        name: 'breaking-down-table',
        title: 'How long two people take to put one table and its chairs away; none is `0 min`.',
        figure: { dimension: 'time', low: 0, high: 30, sources: noSource },
        default: 3,
        because: 'A folding table and eight chairs to the cart.',
        disagreements: [],
    },
    {
        name: 'counting-piece',
        title: 'How long it takes to count one piece back into the store.',
        figure: { dimension: 'time', low: 0.2 * SECOND, high: 10 * SECOND, sources: noSource },
        default: SECOND,
        because: 'By tens, against the pull list.',
        disagreements: [],
    },
] as const satisfies readonly CustomSpec[];
