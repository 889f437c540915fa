import { customSpecs, type CustomName } from '../../plan/customs.js';
import { DISPLAY_UNIT, show } from '../../plan/quantity.js';
import type { House, Plan, Stock, WashLine } from '../../plan/types.js';
import type { Change, Compared } from './change.js';
import { changedThings, type Facts, type Thing } from './facts.js';
import { said, saidList, type Said } from './said.js';

/** What the house owns, what is rented for the event, what is washed, and the customs by which it lays and serves. */
export function changedHouse({ plan: before }: Compared, { plan: after }: Compared): Change[] {
    const theHouse = ({ house }: Plan): Thing<House>[] => [{ key: 'house', called: '', of: house }];
    return [
        ...changedThings('house', HOUSE, theHouse(before), theHouse(after)),
        ...changedThings('house', CUSTOM, customsOf(before), customsOf(after)),
        ...changedThings('house', STOCK, owned(before), owned(after), tellNewStock, 'no longer'),
        ...changedThings('house', STOCK, rented(before), rented(after), tellNewStock, 'no longer'),
        ...changedThings('house', SPARE, sparesOf(before), sparesOf(after), ({ share }) => `: ${share.written}`),
        ...changedThings(
            'house',
            WASHING,
            washingOf(before),
            washingOf(after),
            (line) => `: ${WASHING['']!(line)!.text}`,
        ),
    ];
}

const HOUSE: Facts<House> = { 'the house is called': ({ title }) => (title === '' ? undefined : said(`\`${title}\``)) };

// ------------------------------------------------------------------ customs
interface Custom {
    readonly name: CustomName;
    readonly plan: Plan;
}

const customsOf = (plan: Plan): Thing<Custom>[] =>
    customSpecs.map(({ name }) => ({ key: `custom ${name}`, called: `custom \`${name}\``, of: { name, plan } }));

const CUSTOM: Facts<Custom> = {
    '': ({ name, plan }) => {
        const { value } = plan.customs[name];
        const means = String(typeof value === 'number' ? Number(value.toPrecision(9)) : value);
        return { text: saidCustom(name, value, plan), means };
    },
};

function saidCustom(name: CustomName, value: string | number, { house, customs }: Plan): string {
    const written = customs[name].origin && house.customs.findLast((custom) => custom.name.name === name)?.figure;
    const dimension = customSpecs.find((spec) => spec.name === name)?.figure?.dimension;
    if (written || typeof value === 'string' || dimension === undefined || dimension === 'count') {
        return written?.written ?? String(value);
    }
    return show(value, DISPLAY_UNIT[dimension], 1);
}

// ------------------------------------------------------------------ stock
const stockThings = (how: string, all: readonly Stock[]): Thing<Stock>[] =>
    all.map((stock) => ({ key: `${how} ${stock.piece.name}`, called: `\`${stock.piece.name}\` ${how}`, of: stock }));

const owned = ({ house }: Plan): Thing<Stock>[] => stockThings('owned', house.stock);
const rented = ({ event }: Plan): Thing<Stock>[] => stockThings('rented', event?.rents ?? []);

const STOCK: Facts<Stock> = {
    '': ({ count }) => said(count.count),
    'each holding': ({ holds }) =>
        saidList(
            holds.map(({ count, what }) => `${count} ${what}`),
            ' and ',
        ),
};

const tellNewStock = ({ count, holds }: Stock): string =>
    [`: ${count.count}`, ...holds.map((each) => `holding ${each.count} ${each.what} each`)].join(', ');

type Spare = House['spares'][number];

const sparesOf = ({ house }: Plan): Thing<Spare>[] =>
    house.spares.map((spare) => {
        const called = `spare of ${spare.piece ? `\`${spare.piece.name}\`` : 'everything'}`;
        return { key: called, called, of: spare };
    });

const SPARE: Facts<Spare> = { '': ({ share }) => said(share) };

const washingOf = ({ house }: Plan): Thing<WashLine>[] =>
    house.washing.map((line) => {
        const called = line.sort === 'figure' ? line.what.name : line.rate.what;
        return { key: `washing ${called}`, called: `washing, ${called}`, of: line };
    });

const WASHING: Facts<WashLine> = {
    '': (line): Said | undefined =>
        line.sort === 'figure'
            ? said(line.size)
            : {
                  text: `${line.polish ? 'polish ' : ''}${line.rate.written}`,
                  means: `${line.polish} ${line.rate.amount / line.rate.perMinutes}`,
              },
};
