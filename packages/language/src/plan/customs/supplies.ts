import type { CustomSpec } from './custom-spec.js';

/** Ice, water, bread, butter and coffee: what is reckoned for a guest. */
export const supplyCustoms = [
    {
        name: 'ice-per-guest',
        title: 'How much ice is ordered for a guest.',
        figure: { dimension: 'mass', low: 200, high: 1500, sources: ['quantities §2.6'] },
        default: 450,
        because:
            '1 lb for catering; a hire guide and restaurants say 1.5 lb, and a tenth to a fifth more goes in heat.',
        disagreements: [],
    },
    {
        name: 'ice-for-bottles',
        title: 'How much more ice is ordered for a guest where bottles are chilled in ice water.',
        figure: { dimension: 'mass', low: 0, high: 1500, sources: ['quantities §2.6'] },
        default: 450,
        because: 'The hire guide goes from 1.5 lb to 2.5 lb.',
        disagreements: [],
    },
    {
        name: 'ice-bag',
        title: 'How much ice one bag holds.',
        figure: { dimension: 'mass', low: 1000, high: 25_000, sources: ['quantities §2.6'] },
        default: 10_000,
        because: '22 lb, as one supplier sells it, is 10 kg.',
        disagreements: [],
    },
    {
        name: 'table-water',
        title: 'How much water is reckoned for a guest where the menu does not say what is poured.',
        figure: { dimension: 'volume', low: 100, high: 1500, sources: ['quantities §2.5'] },
        default: 375,
        because: 'Half a bottle is the one figure published.',
        disagreements: [],
    },
    {
        name: 'bread-each',
        title: 'How many rolls or slices are reckoned for a guest.',
        figure: { dimension: 'count', low: 1, high: 4, sources: ['quantities §3.1'] },
        default: 2,
        because: 'Two sources say two; a third comes to 1.44.',
        disagreements: [],
    },
    {
        name: 'butter-each',
        title: 'How much butter is reckoned for a guest.',
        figure: { dimension: 'mass', low: 5, high: 50, sources: ['quantities §3.1'] },
        default: 14,
        because: '3 lb for a hundred: two sources agree.',
        disagreements: [],
    },
    {
        name: 'coffee-cups-each',
        title: 'How many cups a guest who takes coffee drinks.',
        figure: { dimension: 'count', low: 0.5, high: 4, sources: ['quantities §2.6'] },
        default: 1,
        because:
            'Published for meals are half a cup in the afternoon and two in the morning; after dinner it is common practice to reckon one.',
        disagreements: [],
    },
    {
        name: 'coffee-cup-pour',
        title: 'How much is brewed for one cup, what stays in the pot included.',
        figure: { dimension: 'volume', low: 60, high: 300, sources: ['quantities §2.6'] },
        default: 190,
        because: 'A gallon for twenty cups of 6 fl oz; a smaller cup takes only what it holds.',
        disagreements: [],
    },
    {
        name: 'coffee-batch',
        title: 'The least amount that coffee is brewed by: what is needed is rounded up to whole batches.',
        figure: { dimension: 'volume', low: 100, high: 20_000, sources: ['quantities §2.6'] },
        default: 2000,
        because: 'The published rule rounds up to half a gallon, which is near two litres.',
        disagreements: [],
    },
    {
        name: 'ground-coffee',
        title: 'How much ground coffee goes into a litre.',
        figure: { dimension: 'mass', per: 'litre', low: 30, high: 80, sources: ['quantities §2.6'] },
        default: 40,
        because: '2 lb for 6 gallons; the military card comes to 36 g, the church supper to 60 g.',
        disagreements: [],
    },
] as const satisfies readonly CustomSpec[];
