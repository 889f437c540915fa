import type { Figure, Kind, LocalCode, Piece } from '../../plan/cupboard.js';
import type { Event, Plan, RuleSetting, Waiver } from '../../plan/types.js';
import { quoted } from '../../rules/wording.js';
import { paired, type Change, type Compared } from './change.js';
import { declared } from './declared.js';
import { saidCount, saidEaten } from './dish-facts.js';
import { changedFacts, changedThings, type Facts, type Thing } from './facts.js';
import { isSaid, said, saidList, saidNames, saidWords, type Said } from './said.js';

/** What stands behind the figures: the revision, what is waived and switched off, and the words that the house declares itself. */
export function changedPlanWords({ plan: before }: Compared, { plan: after }: Compared): Change[] {
    const theEvent = ({ event }: Plan): Thing<Event>[] => (event ? [{ key: 'event', called: '', of: event }] : []);
    const words = <T extends { readonly name: string }>(
        facts: Facts<T>,
        of: Parameters<typeof declared<T>>[1],
        sort: Parameters<typeof declared<T>>[2],
    ): Change[] =>
        changedThings(
            'plan',
            facts,
            declared(before, of, sort),
            declared(after, of, sort),
            tellNew,
            'is no longer declared',
        );
    return [
        ...changedThings('plan', EVENT, theEvent(before), theEvent(after), () => undefined, ''),
        ...changedThings(
            'plan',
            SETTING,
            settingsOf(before),
            settingsOf(after),
            ({ level }) => `is ${level} now`,
            'is as usual again',
        ),
        ...changedThings('plan', WAIVER, waiversOf(before), waiversOf(after)),
        ...words(
            KIND,
            ({ kinds }) => kinds,
            ({ sort }) => `the ${sort}`,
        ),
        ...changedPieceWords(before, after),
        ...words(CODE, ({ codes }) => codes, 'the code'),
    ];
}

const tellNew = (): string => 'is declared anew';

const EVENT: Facts<Event> = {
    revision: ({ revision }) => saidCount(revision),
    reference: ({ reference }) => said(reference && quoted(reference.text)),
    'evenings tried out:': ({ replications }) => said(replications?.count, ['with seed', replications?.seed]),
};

const settingsOf = ({ house }: Plan): Thing<RuleSetting>[] =>
    house.settings.map((setting) => ({
        key: `rule ${setting.rule.name}`,
        called: `the rule ${quoted(setting.rule.name)}`,
        of: setting,
    }));

const SETTING: Facts<RuleSetting> = {
    is: ({ level }) => said(level),
    because: ({ reason }) => said(reason && quoted(reason.text)),
};

const waiversOf = ({ waivers }: Plan): Thing<Waiver>[] =>
    waivers.map((waiver) => ({
        key: `waiver ${waiver.rule.name}`,
        called: `the waiver of ${quoted(waiver.rule.name)}`,
        of: waiver,
    }));

const WAIVER: Facts<Waiver> = { because: ({ reason }) => said(reason && quoted(reason.text)) };

// ------------------------------------------------------------------ the house's own cupboard
const KIND: Facts<Kind> = {
    is: ({ parent }) => said(parent?.name),
    'eaten with': ({ eaten }) => saidEaten(eaten),
    served: ({ vessels }) =>
        saidList(
            vessels.map(({ how, names }) => said(how, saidNames(names, 'or'))),
            ' or ',
        ),
    wanted: ({ band }) => said(band),
    at: ({ range }) => range && said(`${range.low} °C`, range.high === range.low ? undefined : `to ${range.high} °C`),
    'made of': ({ of }) => saidNames(of),
    'usually contains': ({ usually }) => usually && (saidNames(usually.what) ?? said('nothing')),
    follows: ({ follows }) => saidNames(follows, 'or'),
    'portion of': ({ portion }) => said(portion?.low, ['to', portion?.high]),
    'cooked to': ({ cookTo }) => said(cookTo),
    'of the strength': ({ strength }) => said(strength),
    'served by its nature': ({ raw }) => said(raw),
    called: ({ called }) => said(called),
    'also called': ({ also }) => saidWords(also),
    'declared from scratch': ({ fresh }) => isSaid(fresh),
};

const PIECE: Facts<Piece> = {
    is: ({ parent }) => said(parent?.name),
    for: ({ suits }) => saidNames(suits),
    tines: ({ tines }) => said(tines?.low, ['to', tines?.high]),
    'on top of': ({ on }) => saidNames(on, 'or'),
    'pairs with': ({ pairs }) => saidNames(pairs),
    'marked as': ({ flags }) => saidNames(flags),
    called: ({ called }) => said(called),
    'also called': ({ also }) => saidWords(also),
    'declared from scratch': ({ fresh }) => isSaid(fresh),
};

/** Which measures a piece has is its own affair: `holds`, `across`, `porcelain`. */
function changedPieceWords(before: Plan, after: Plan): Change[] {
    const pieces = (plan: Plan): Thing<Piece>[] =>
        declared(
            plan,
            (reading) => reading.pieces,
            ({ family }) => `the ${family}`,
        );
    return paired(pieces(before), pieces(after), ({ key }) => key).flatMap(({ key, was, is }) => {
        if (!was || !is) {
            return changedThings('plan', PIECE, was ? [was] : [], is ? [is] : [], tellNew, 'is no longer declared');
        }
        const measures = figureFacts<Piece>((piece) => piece.measures, [was.of, is.of]);
        return changedFacts('plan', { ...PIECE, ...measures }, { ...was, key }, { ...is, key });
    });
}

const CODE: Facts<LocalCode> = {
    called: ({ called }) => said(called),
    'in the zones': ({ zones }) => said(zones.length > 0 ? zones.join(', ') : undefined),
    'with the figures': ({ figures }) =>
        saidList(
            Object.entries(figures).map(([name, figure]) => said(name, saidFigure(figure))),
            ', ',
        ),
};

function figureFacts<T>(figuresOf: (thing: T) => Readonly<Record<string, Figure>>, things: readonly T[]): Facts<T> {
    const names = new Set(things.flatMap((thing) => Object.keys(figuresOf(thing))));
    return Object.fromEntries([...names].map((name) => [name, (thing: T) => saidFigure(figuresOf(thing)[name])]));
}

function saidFigure(figure: Figure | undefined): Said | undefined {
    return (
        figure && {
            text: figure.size.written,
            means: [figure.low, figure.high].map((value) => Number(value.toPrecision(9))).join(' to '),
        }
    );
}
