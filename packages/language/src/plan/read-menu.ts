import type * as ast from '../grammar/generated/ast.js';
import type { Contains, Eaten, PieceUse } from './cupboard.js';
import type { Named, Origin } from './origin.js';
import { times } from './read-house.js';
import { ofType, type Scribe } from './read-scribe.js';
import type {
    Accompaniment,
    Bread,
    Coffee,
    Course,
    Dish,
    Lay,
    Menu,
    Need,
    Pour,
    Served,
    Speech,
    VesselUse,
    Waiver,
    Wash,
    Water,
    Who,
} from './types.js';

type Clause = ast.CourseClause;

export function readMenu(scribe: Scribe, node: ast.Menu): Menu {
    scribe.block(node, 'menu');
    const entries = node.entries ?? [];
    const courses = ofType<ast.MenuEntry, ast.Course>(entries, 'Course').map((course, index) =>
        scribe.course(course, (own) => readCourse(own, course, index)),
    );
    const bread = scribe.once(ofType<ast.MenuEntry, ast.Bread>(entries, 'Bread'), 'bread');
    const coffee = scribe.once(ofType<ast.MenuEntry, ast.Coffee>(entries, 'Coffee'), 'coffee');
    const water = scribe.once(ofType<ast.MenuEntry, ast.Water>(entries, 'Water'), 'water');
    const lay = scribe.once(ofType<ast.MenuEntry, ast.Lay>(entries, 'Lay'), 'lay');
    return {
        origin: scribe.origin(node),
        head: scribe.begin(scribe.origin(node), node.misspelt ?? 'menu'),
        courses,
        bread: bread && readBread(scribe, bread),
        coffee: coffee && readCoffee(scribe, coffee),
        water: water && readWater(scribe, water),
        speeches: ofType<ast.MenuEntry, ast.Toast>(entries, 'Toast').map((toast) => readSpeech(scribe, toast)),
        washes: ofType<ast.MenuEntry, ast.Wash>(entries, 'Wash').flatMap((wash) => readWash(scribe, wash)),
        lay: lay && readLay(scribe, lay),
        waivers: readWaivers(scribe, entries, scribe.origin(node)),
    };
}

function readWash(scribe: Scribe, node: ast.Wash): Wash[] {
    const piece = scribe.named(node, 'piece', 'piece');
    const after = scribe.named(node, 'after', 'course');
    const use = scribe.named(node, 'for', 'course');
    return piece && after && use ? [{ piece, after, for: use, origin: scribe.origin(node) }] : [];
}

function readCourse(scribe: Scribe, node: ast.Course, index: number): Course {
    scribe.block(node, 'course');
    const kind = scribe.demanded(node, 'kind', 'kind');
    const title = scribe.textOf(node, 'title');
    scribe.declareAs('course', kind);
    if (title) {
        scribe.declareAs('course', { name: title.text, origin: title.origin });
    }
    const clauses = node.clauses ?? [];
    const lasts = scribe.once(ofType<Clause, ast.Lasts>(clauses, 'Lasts'), 'lasts');
    const time = lasts && scribe.quantity(lasts.time, ['time']);
    const starts = scribe.once(ofType<Clause, ast.StartsAt>(clauses, 'StartsAt'), 'starts at');
    const startTime = starts && scribe.clock(starts);
    const preset = scribe.once(ofType<Clause, ast.Preset>(clauses, 'Preset'), 'preset');
    const lay = scribe.once(ofType<Clause, ast.Lay>(clauses, 'Lay'), 'lay');
    const head = scribe.head(node, 'kind', 'title', 'dishKind');
    // `course dessert "Plum tart" is pie`: what its dishes are, unless they say so themselves.
    const dishKind = scribe.named(node, 'dishKind', 'kind') ?? kind;
    const whole = { title: title?.text ?? kind.name, kind: dishKind, course: index, head, origin: scribe.origin(node) };
    const shared = readDishClauses(scribe, clauses);
    if (title && (node.dishes ?? []).length === 0) {
        scribe.declareAs('dish-title', { name: title.text, origin: title.origin });
    }
    const dishes = (node.dishes ?? []).map((dish, place) => readDish(scribe, dish, whole.kind, index, place, shared));
    return {
        kind,
        title: whole.title,
        index,
        head,
        origin: whole.origin,
        lasts: lasts && time && { time, spread: scribe.quantity(lasts.spread, ['time']), origin: scribe.origin(lasts) },
        startsAt: starts && startTime && { time: startTime, origin: scribe.origin(starts) },
        preset: preset && { before: scribe.quantity(preset.time, ['time']), origin: scribe.origin(preset) },
        dishes: dishes.length > 0 ? dishes : [{ ...shared, ...whole, index: 0, waivers: [] }],
        hasDishes: dishes.length > 0,
        pours: ofType<Clause, ast.Pour>(clauses, 'Pour').map((pour) => readPour(scribe, pour)),
        lay: lay && readLay(scribe, lay),
        waivers: readWaivers(scribe, clauses, whole.origin),
    };
}

type DishClauses = Omit<
    Dish,
    'title' | 'kind' | 'course' | 'index' | 'head' | 'origin' | 'who' | 'lay' | 'waivers' | 'pours'
> & { readonly pours: readonly Pour[] };

/** A dish has what its course says for all dishes, unless it says so itself. */
export function readDish(
    scribe: Scribe,
    node: ast.Dish,
    courseKind: Named,
    course: number,
    index: number,
    shared?: DishClauses,
): Dish {
    scribe.block(node, 'dish');
    const title = scribe.textOf(node, 'title');
    if (title) {
        scribe.declareAs('dish-title', { name: title.text, origin: title.origin });
    }
    const clauses = node.clauses ?? [];
    const own = readDishClauses(scribe, clauses);
    const lay = scribe.once(ofType<Clause, ast.Lay>(clauses, 'Lay'), 'lay');
    const stated = Object.fromEntries(Object.entries(own).filter(([, value]) => value !== undefined)) as DishClauses;
    return {
        ...shared,
        ...stated,
        served: {
            ...shared?.served,
            ...Object.fromEntries(Object.entries(own.served).filter(([, value]) => value !== undefined)),
        },
        suits: [...(shared?.suits ?? []), ...own.suits],
        accompaniments: [...(shared?.accompaniments ?? []), ...own.accompaniments],
        pours: ofType<Clause, ast.Pour>(clauses, 'Pour').map((pour) => readPour(scribe, pour)),
        title: title?.text ?? '',
        kind: scribe.named(node, 'kind', 'kind') ?? courseKind,
        course,
        index,
        head: scribe.head(node, 'title', 'kind', 'who'),
        origin: scribe.origin(node),
        who: node.who && readWho(scribe, node.who),
        lay: lay && readLay(scribe, lay),
        waivers: readWaivers(scribe, clauses, scribe.origin(node)),
    };
}

function readDishClauses(scribe: Scribe, clauses: readonly Clause[]): DishClauses {
    const one = <U extends Clause>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<Clause, U>(clauses, type), clause);
    const served = one<ast.Served>('Served', 'served');
    const eaten = one<ast.Eaten>('Eaten', 'eaten with');
    const contains = clauses.filter((clause) => clause.$type === 'Contains');
    const recipe = one<ast.Recipe>('Recipe', 'recipe');
    const held = one<ast.HeldAt>('HeldAt', 'held at');
    const leaves = one<ast.LeavesPass>('LeavesPass', 'leaves the pass at');
    const cook = one<ast.CookTo>('CookTo', 'cook to');
    const extra = one<ast.CookExtra>('CookExtra', 'cook … extra');
    const reheat = one<ast.ReheatTo>('ReheatTo', 'reheat to');
    const cooled = one<ast.Cooled>('Cooled', 'cooled to');
    const measured = one<ast.Measured>('Measured', 'measured');
    const carried = one<ast.Carried>('Carried', 'carried');
    const plated = one<ast.Plated>('Plated', 'plated in');
    const ahead = one<ast.PlatedAhead>('PlatedAhead', 'plated ahead into');
    return {
        served: served ? readServed(scribe, served) : {},
        eaten: eaten && readEaten(scribe, eaten),
        eatenOrigin: eaten && scribe.origin(eaten),
        contains: readAllContains(scribe, contains),
        suits: ofType<Clause, ast.Suits>(clauses, 'Suits').flatMap((suits) => scribe.names(suits, 'diets', 'diet')),
        recipe: recipe && scribe.pathOf(recipe),
        heldAt: atTemperature(scribe, held),
        leavesPass: atTemperature(scribe, leaves),
        cookTo: atTemperature(scribe, cook),
        reheat: atTemperature(scribe, reheat),
        cooled: cooled && readCooled(scribe, cooled),
        measured: atTemperature(scribe, measured),
        extra: extra && scribe.count(extra, 'extra'),
        carried: carried?.how && { how: carried.how, origin: scribe.origin(carried) },
        platedIn: plated && { times: times(scribe, plated.times), origin: scribe.origin(plated) },
        platedAhead: ahead && { gear: scribe.named(ahead, 'gear', 'piece'), origin: scribe.origin(ahead) },
        accompaniments: ofType<Clause, ast.Accompaniment>(clauses, 'Accompaniment').map((node) =>
            readAccompaniment(scribe, node),
        ),
        pours: [],
    };
}

/** The clauses that are a temperature with, for some, a time: held, leaves, cook, reheat, measured. */
function atTemperature(
    scribe: Scribe,
    node: ast.HeldAt | ast.LeavesPass | ast.CookTo | ast.ReheatTo | ast.Measured | undefined,
) {
    const temperature = scribe.quantity(node?.temp, ['temperature']);
    if (!node || !temperature) {
        return undefined;
    }
    const time = 'time' in node ? scribe.quantity(node.time, ['time']) : undefined;
    return { temperature, time, after: time, origin: scribe.origin(node) };
}

function readCooled(scribe: Scribe, node: ast.Cooled): Dish['cooled'] {
    const steps = (node.temps ?? []).flatMap((temp, index) => {
        const temperature = scribe.quantity(temp, ['temperature']);
        const time = scribe.quantity(node.times?.[index], ['time']);
        return temperature && time ? [{ temperature, time }] : [];
    });
    return { steps, origin: scribe.origin(node) };
}

function readServed(scribe: Scribe, node: ast.Served): Served {
    const phrases = node.phrases ?? [];
    const one = <U extends ast.ServedPhrase>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.ServedPhrase, U>(phrases, type), clause);
    const vessels = ofType<ast.ServedPhrase, ast.InVessel>(phrases, 'InVessel').map((vessel) =>
        readVessel(scribe, vessel),
    );
    // `in` holds the food and `on` lies under it; a single `on` is the plate itself.
    const first = vessels.find((vessel) => vessel.how === 'in') ?? vessels[0];
    const under = vessels.find((vessel) => vessel !== first);
    const temperature = one<ast.AtTemperature>('AtTemperature', 'at');
    const portion = one<ast.Portion>('Portion', 'portion');
    const side = one<ast.FromSide>('FromSide', 'from the');
    const poured = one<ast.PouredAtTable>('PouredAtTable', 'poured at table');
    const raw = one<ast.Rawness>('Rawness', 'raw');
    const within = one<ast.Within>('Within', 'within');
    const longest = scribe.quantity(within?.time, ['time']);
    return {
        vessel: first,
        under,
        temperature: scribe.quantity(temperature?.temp, ['temperature']),
        portion: scribe.quantity(portion?.size, ['volume', 'mass']),
        side: side?.side && { side: side.side, origin: scribe.origin(side) },
        pouredAtTable: poured && { gear: scribe.named(poured, 'gear', 'piece'), origin: scribe.origin(poured) },
        raw: raw?.how && { how: raw.how, origin: scribe.origin(raw) },
        within: within && longest && { time: longest, origin: scribe.origin(within) },
        origin: scribe.origin(node),
    };
}

function readVessel(scribe: Scribe, node: ast.InVessel): VesselUse {
    return {
        piece: scribe.demanded(node, 'vessel', 'piece'),
        how: node.how,
        state: node.state,
        to: scribe.quantity(node.temp, ['temperature']),
        origin: scribe.origin(node),
    };
}

export function readEaten(scribe: Scribe, node: { uses: ast.PieceUse[]; joins: ('and' | 'or')[] }): Eaten {
    const groups: PieceUse[][] = [];
    (node.uses ?? []).forEach((use, index) => {
        const read: PieceUse = {
            piece: scribe.demanded(use, 'piece', 'piece'),
            state: use.state,
            to: scribe.quantity(use.temp, ['temperature']),
            brought: use.brought,
            laid: use.laid,
            origin: scribe.origin(use),
        };
        if (index > 0 && node.joins?.[index - 1] === 'or') {
            groups.at(-1)!.push(read);
        } else {
            groups.push([read]);
        }
    });
    return groups;
}

/** The contents of every `contains` of a block: a second list is a finding, and its allergens still count. */
function readAllContains(scribe: Scribe, nodes: readonly ast.Contains[]): Contains | undefined {
    const first = scribe.once(nodes, 'contains');
    return first && { what: nodes.flatMap((node) => readContains(scribe, node).what), origin: scribe.origin(first) };
}

export function readContains(scribe: Scribe, node: { what: string[] } & ast.Contains): Contains {
    return { what: scribe.names(node, 'what', 'substance'), origin: scribe.origin(node) };
}

export function readNeed(scribe: Scribe, node: ast.Need): Need {
    const origin = scribe.origin(node);
    switch (node.$type) {
        case 'Children':
            return { sort: 'children', origin };
        case 'Without':
            return { sort: 'without', what: scribe.names(node, 'what', 'substance'), origin };
        default:
            return { sort: 'diet', diet: scribe.demanded(node, 'diet', 'diet'), origin };
    }
}

function readWho(scribe: Scribe, node: ast.Who): Who {
    const origin = scribe.origin(node);
    if (node.$type === 'ForRest') {
        return { sort: 'rest', origin };
    }
    if (node.$type === 'ForEveryone') {
        return { sort: 'everyone', origin };
    }
    const needs = (node.needs ?? []).map((need) => readNeed(scribe, need));
    if (node.percent) {
        const value = scribe.number(node, 'count');
        const at = scribe.at(node, 'count');
        const share =
            value === undefined
                ? undefined
                : ({ value: value / 100, dimension: 'share', written: `${value} %`, unit: '%', origin: at } as const);
        return { sort: 'some', share, needs, origin };
    }
    return { sort: 'some', count: scribe.count(node), needs, origin };
}

function readAccompaniment(scribe: Scribe, node: ast.Accompaniment): Accompaniment {
    const phrases = node.phrases ?? [];
    const poured = scribe.once(
        ofType<ast.AccompanimentPhrase, ast.AccompanimentPoured>(phrases, 'AccompanimentPoured'),
        'poured at table',
    );
    const contains = ofType<ast.AccompanimentClause, ast.Contains>(node.clauses, 'Contains');
    const origin = scribe.origin(node);
    return {
        sort: node.sort,
        title: node.title,
        pouredAtTable: poured && { gear: scribe.named(poured, 'gear', 'piece'), origin: scribe.origin(poured) },
        passed: phrases.some((phrase) => phrase.$type === 'AccompanimentPassed'),
        leftOffFor: readLeftOff(scribe, phrases),
        contains: readAllContains(scribe, contains),
        waivers: readWaivers(scribe, node.clauses ?? [], origin),
        head: scribe.head(node, 'sort', 'title', 'phrases'),
        origin,
    };
}

function readLeftOff(scribe: Scribe, phrases: readonly { readonly $type: string }[]): Need[] {
    return (phrases as readonly (ast.LeftOff | ast.AccompanimentPassed)[]).flatMap((phrase) =>
        phrase.$type === 'LeftOff' ? (phrase.needs ?? []).map((need) => readNeed(scribe, need)) : [],
    );
}

export function readPour(scribe: Scribe, node: ast.Pour | ast.Instead): Pour {
    const title = scribe.textOf(node, 'title') ?? { text: '', origin: scribe.origin(node) };
    if (title.text !== '') {
        scribe.declareAs('pour-title', { name: title.text, origin: title.origin });
    }
    const clauses = node.clauses ?? [];
    const one = <U extends ast.PourClause>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.PourClause, U>(clauses, type), clause);
    const contains = clauses.filter((clause) => clause.$type === 'Contains');
    const strength = one<ast.Strength>('Strength', 'strength');
    const bottles = one<ast.BottleSize>('BottleSize', 'from bottles of');
    const chilled = one<ast.ChilledBy>('ChilledBy', 'chilled in');
    const origin = scribe.origin(node);
    return {
        ...readPourPhrases(scribe, node.phrases ?? []),
        title: title.text,
        titleOrigin: title.origin,
        contains: readAllContains(scribe, contains),
        suits: ofType<ast.PourClause, ast.Suits>(clauses, 'Suits').flatMap((suits) =>
            scribe.names(suits, 'diets', 'diet'),
        ),
        strength: scribe.quantity(strength?.share, ['share']),
        bottles: (bottles?.sizes ?? []).flatMap((size) => scribe.quantity(size, ['volume']) ?? []),
        chilledIn: chilled && scribe.named(chilled, 'how', 'choice', undefined, 'chilled-in'),
        instead: ofType<ast.PourClause, ast.Instead>(clauses, 'Instead').map((instead) => readPour(scribe, instead)),
        head: scribe.head(node, 'title', 'phrases'),
        waivers: readWaivers(scribe, clauses, origin),
        origin,
    };
}

function readPourPhrases(scribe: Scribe, phrases: readonly ast.PourPhrase[]) {
    const one = <U extends ast.PourPhrase>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.PourPhrase, U>(phrases, type), clause);
    const amount = one<ast.PourAmount>('PourAmount', 'amount');
    const glass = one<ast.IntoGlass>('IntoGlass', 'into');
    const at = one<ast.PourAt>('PourAt', 'at');
    const kind = one<ast.PourKind>('PourKind', 'is');
    const who = one<ast.PourFor>('PourFor', 'for');
    const refill = one<ast.Refill>('Refill', 'refill');
    const topped = one<ast.ToppedUp>('ToppedUp', 'topped up until');
    return {
        amount: scribe.quantity(amount?.amount, ['volume']),
        glass: glass && scribe.named(glass, 'glass', 'piece'),
        temperature: scribe.quantity(at?.temp, ['temperature']),
        kind: kind && scribe.named(kind, 'kind', 'drink'),
        who: who?.who && readWho(scribe, who.who),
        refills: refill && scribe.count(refill),
        toppedUpUntil: topped && scribe.named(topped, 'course', 'course'),
        brought: phrases.some((phrase) => phrase.$type === 'GlassBrought'),
        tasted: phrases.some((phrase) => phrase.$type === 'Tasted'),
        leftOffFor: readLeftOff(scribe, phrases),
    };
}

function readWater(scribe: Scribe, node: ast.Water): Water {
    const origin = scribe.origin(node);
    return {
        choices: node.choices ?? [],
        pour: {
            ...readPourPhrases(scribe, node.phrases ?? []),
            title: 'Water',
            titleOrigin: scribe.begin(origin, 'water'),
            suits: [],
            bottles: [],
            instead: [],
            waivers: [],
            head: scribe.head(node, 'choices', 'phrases'),
            origin,
        },
        origin,
    };
}

function readBread(scribe: Scribe, node: ast.Bread): Bread {
    const phrases = node.phrases ?? [];
    const clauses = node.clauses ?? [];
    const one = <U extends ast.BreadPhrase>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.BreadPhrase, U>(phrases, type), clause);
    const from = one<ast.BreadFrom>('BreadFrom', 'from');
    const until = one<ast.BreadUntil>('BreadUntil', 'until');
    const plate = one<ast.BreadPlate>('BreadPlate', 'on');
    const piece = one<ast.BreadPiece>('BreadPiece', 'with');
    const contains = ofType<ast.BreadClause, ast.Contains>(clauses, 'Contains');
    const recipe = scribe.once(ofType<ast.BreadClause, ast.Recipe>(clauses, 'Recipe'), 'recipe');
    const origin = scribe.origin(node);
    const head = scribe.head(node, 'phrases');
    return {
        from: from && scribe.named(from, 'course', 'course'),
        until: until && scribe.named(until, 'course', 'course'),
        plate: plate && scribe.named(plate, 'plate', 'piece'),
        piece: piece && scribe.named(piece, 'piece', 'piece'),
        contains: readAllContains(scribe, contains),
        suits: ofType<ast.BreadClause, ast.Suits>(clauses, 'Suits').flatMap((suits) =>
            scribe.names(suits, 'diets', 'diet'),
        ),
        recipe: recipe && scribe.pathOf(recipe),
        accompaniments: ofType<ast.BreadClause, ast.Accompaniment>(clauses, 'Accompaniment').map((each) =>
            readAccompaniment(scribe, each),
        ),
        dishes: (node.dishes ?? []).map((dish, index) =>
            readDish(scribe, dish, { name: 'bread', origin: head }, -1, index),
        ),
        waivers: readWaivers(scribe, clauses, origin),
        head: phrases.length > 0 ? head : scribe.begin(origin, 'bread'),
        origin,
    };
}

function readCoffee(scribe: Scribe, node: ast.Coffee): Coffee {
    const phrases = node.phrases ?? [];
    const clauses = node.clauses ?? [];
    const one = <U extends ast.CoffeePhrase>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.CoffeePhrase, U>(phrases, type), clause);
    const cup = one<ast.CoffeeCup>('CoffeeCup', 'in');
    const piece = one<ast.CoffeePiece>('CoffeePiece', 'with');
    const contains = ofType<ast.CoffeeClause, ast.Contains>(clauses, 'Contains');
    const origin = scribe.origin(node);
    return {
        after: scribe.demanded(node, 'course', 'course'),
        onRequest: phrases.some((phrase) => phrase.$type === 'OnRequest'),
        cup: cup && scribe.named(cup, 'cup', 'piece'),
        piece: piece && scribe.named(piece, 'piece', 'piece'),
        temperature: scribe.quantity(one<ast.CoffeeAt>('CoffeeAt', 'at')?.temp, ['temperature']),
        contains: readAllContains(scribe, contains),
        accompaniments: ofType<ast.CoffeeClause, ast.Accompaniment>(clauses, 'Accompaniment').map((each) =>
            readAccompaniment(scribe, each),
        ),
        waivers: readWaivers(scribe, clauses, origin),
        head: scribe.head(node, 'course', 'phrases'),
        origin,
    };
}

function readSpeech(scribe: Scribe, node: ast.Toast): Speech {
    const phrases = node.phrases ?? [];
    const one = <U extends ast.ToastPhrase>(type: U['$type'], clause: string): U | undefined =>
        scribe.once(ofType<ast.ToastPhrase, U>(phrases, type), clause);
    const when = one<ast.ToastWhen>('ToastWhen', 'after');
    const course = when && scribe.named(when, 'course', 'course');
    const clock = one<ast.ToastAt>('ToastAt', 'at');
    const pour = one<ast.ToastWith>('ToastWith', 'with');
    const pourText = pour && scribe.textOf(pour, 'pour');
    if (pourText) {
        scribe.occurrences.push({ sort: 'pour-title', name: pourText.text, role: 'uses', origin: pourText.origin });
    }
    return {
        sort: node.sort,
        title: node.title,
        when: when && course && { when: when.when, course },
        at: clock && scribe.clock(clock),
        lasts: scribe.quantity(one<ast.ToastLasts>('ToastLasts', 'lasts')?.time, ['time']),
        pour: pourText,
        origin: scribe.origin(node),
    };
}

function readLay(scribe: Scribe, node: ast.Lay): Lay {
    const lay: { -readonly [K in keyof Lay]: Lay[K] } = { origin: scribe.origin(node) };
    const PLACES = {
        left: 'left',
        right: 'right',
        above: 'above',
        onthesaucer: 'saucer',
        'onthebread-plate': 'breadPlate',
    } as const;
    const seen = new Map<string, Origin>();
    for (const section of node.sections ?? []) {
        const place = PLACES[section.place?.replaceAll(' ', '') as keyof typeof PLACES];
        const first = seen.get(place);
        if (first) {
            scribe.repeats.push({ clause: section.place, first, again: scribe.origin(section) });
        } else if (place) {
            seen.set(place, scribe.origin(section));
            lay[place] = scribe.names(section, 'pieces', 'piece');
        }
    }
    return lay;
}

export function readWaivers(scribe: Scribe, clauses: readonly { readonly $type: string }[], scope: Origin): Waiver[] {
    return (clauses as readonly ast.Waiver[])
        .filter((clause) => clause.$type === 'Waiver')
        .map((waiver) => ({
            rule: scribe.demanded(waiver, 'rule', 'rule'),
            reason: scribe.textOf(waiver, 'reason'),
            origin: scribe.origin(waiver),
            scope,
        }));
}
