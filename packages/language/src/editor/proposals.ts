import { CompletionItemKind } from 'vscode-languageserver';
import type { Checked } from '../check.js';
import type { Kind, Piece, PieceFamily } from '../plan/cupboard.js';
import { customSpecs } from '../plan/customs.js';
import { dimensionOf } from '../plan/fact-words.js';
import type { MadeUp } from './wanted-name.js';
import { LIKELY_UNITS } from '../plan/read-scribe.js';
import { UNITS, type UnitName } from '../plan/quantity.js';
import type { NameSort, Occurrence, UnitProblem } from '../plan/types.js';
import { namesInReach } from '../rules/names-in-reach.js';
import { otherWordsOf } from '../rules/other-words.js';
import { ruleById, rules } from '../rules/index.js';
import { suitsKind } from '../plan/suiting.js';
import { contentsNamed } from '../service/allergens/food-words.js';
import { kindsOfTitle } from '../service/kinds-of-title.js';
import { warmthHint, type Around } from './around-cursor.js';
import { customRow, kindRow, pieceRow } from './proposal-rows.js';

/** Something that may be written at the cursor. */
export interface Proposal {
    readonly name: string;
    /** Another word for it, under which it is looked for: the name is written all the same. */
    readonly word?: string;
    readonly kind: CompletionItemKind;
    /** Lower ones come first; see `RANK`. */
    readonly rank: number;
    /** A few words beside the name. */
    readonly detail?: string;
    /** What its row says of it, where that is not the detail. */
    readonly row?: string;
    /** One sentence or two, as Markdown. */
    readonly about?: string;
}

/** What suits the dish comes first, then words of the language, then all other names. */
export const RANK = { suits: 0, unit: 1, word: 2, name: 3, odd: 4 } as const;

const FLATWARE: readonly PieceFamily[] = ['fork', 'knife', 'spoon'];
const CHINA: readonly PieceFamily[] = ['plate', 'bowl', 'cup'];

/** Families that make sense at a place of the grammar; others come last. */
const FAMILIES: Readonly<Record<string, readonly PieceFamily[]>> = {
    uses: FLATWARE,
    piece: FLATWARE,
    pieces: FLATWARE,
    vessel: [...CHINA, 'glass'],
    glass: ['glass'],
    plate: ['plate'],
    plates: ['plate'],
    cup: ['cup'],
    gear: ['gear'],
};

const KIND_OF_SORT: Partial<Record<NameSort, CompletionItemKind>> = {
    piece: CompletionItemKind.Class,
    kind: CompletionItemKind.Interface,
    drink: CompletionItemKind.Interface,
    'kind-or-drink': CompletionItemKind.Interface,
    substance: CompletionItemKind.EnumMember,
    diet: CompletionItemKind.EnumMember,
    code: CompletionItemKind.Module,
    custom: CompletionItemKind.Property,
    choice: CompletionItemKind.EnumMember,
    rule: CompletionItemKind.Function,
    course: CompletionItemKind.Field,
    table: CompletionItemKind.Field,
    shape: CompletionItemKind.EnumMember,
    role: CompletionItemKind.Field,
    'dish-title': CompletionItemKind.Field,
    'pour-title': CompletionItemKind.Field,
    'task-title': CompletionItemKind.Field,
};

/** The roles a team usually has; it may have others. */
const ROLES = ['captain', 'servers', 'runners', 'plating-lines', 'wine-servers', 'dish-washers'];

/** The names of a sort that are in reach of a plan. @param properties the places of the grammar the name may take */
export function nameProposals(
    wanted: Occurrence,
    checked: Checked,
    around: Around,
    properties: ReadonlySet<string>,
): Proposal[] {
    const kind = KIND_OF_SORT[wanted.sort] ?? CompletionItemKind.Text;
    const names = namesOf(wanted, checked);
    const otherWords = otherWordsOf(wanted.sort, checked.plan.cupboard, names);
    return [
        ...names.map((name) => {
            const { rank, ...said } = about(name, wanted, checked, around, properties);
            return { name, kind, rank: rank ?? RANK.name, ...said };
        }),
        ...otherWords.map(({ word, name }) => ({ name, word, kind, rank: RANK.odd, detail: `called ${name} here` })),
    ];
}

function namesOf(wanted: Occurrence, { plan }: Checked): readonly string[] {
    switch (wanted.sort) {
        case 'role':
            return ROLES;
        case 'rule':
            return rules.map(({ id }) => id);
        case 'dish-title':
        case 'pour-title':
        case 'task-title': {
            const declared = plan.readings.flatMap(({ occurrences }) =>
                occurrences.filter(({ role, sort }) => role === 'declares' && sort === wanted.sort),
            );
            return [...new Set(declared.map(({ name }) => name))];
        }
        default:
            return [...new Set(namesInReach(wanted, { plan }) ?? [])];
    }
}

/** What is counted in a wash or on a plating line. */
const COUNTED = ['racks', 'pieces', 'plates', 'glasses'];

/** Words that nothing declares: those that the plan's pieces and codes are described with, and what a custom is per. */
export function wordProposals(madeUp: MadeUp, { plan: { cupboard } }: Checked): Proposal[] {
    const words = (): readonly string[] => {
        switch (madeUp.sort) {
            case 'measure':
                return [...cupboard.pieces.values()].flatMap(({ measures, flags }) => [
                    ...Object.keys(measures),
                    ...flags.map(({ name }) => name),
                ]);
            case 'figure':
                return [...cupboard.codes.values()].flatMap(({ figures }) => Object.keys(figures));
            case 'per':
                return customSpecs.flatMap(({ name, figure }) =>
                    name === madeUp.custom && figure?.per !== undefined ? [figure.per] : [],
                );
            case 'counted':
                return COUNTED;
        }
    };
    return [...new Set(words())].map((name) => ({ name, kind: CompletionItemKind.Property, rank: RANK.name }));
}

type Said = Partial<Pick<Proposal, 'rank' | 'detail' | 'row' | 'about'>>;

function about(
    name: string,
    wanted: Occurrence,
    checked: Checked,
    around: Around,
    properties: ReadonlySet<string>,
): Said {
    const { cupboard } = checked.plan;
    switch (wanted.sort) {
        case 'piece': {
            const piece = cupboard.pieces.get(name);
            return piece ? aboutPiece(piece, checked, around, properties) : {};
        }
        case 'kind':
        case 'drink':
        case 'kind-or-drink':
            return aboutKind(cupboard.kinds.get(name) ?? cupboard.drinks.get(name), checked, around);
        case 'substance':
            return aboutSubstance(name, checked, around);
        case 'diet':
            return {
                detail: cupboard.diets.get(name)?.called,
                ...(isKeptBySomebody(name, checked) ? { rank: RANK.suits } : {}),
            };
        case 'code':
            return { detail: cupboard.codes.get(name)?.called };
        case 'custom':
            return { row: customRow(name, checked), about: customSpecs.find((spec) => spec.name === name)?.title };
        case 'choice':
            return {
                about: customSpecs.find((spec) => spec.name === wanted.of)?.choices?.find(({ value }) => value === name)
                    ?.means,
            };
        case 'rule':
            return { row: ruleById(name)?.title, about: ruleById(name)?.title };
        default:
            return {};
    }
}

function aboutPiece(piece: Piece, checked: Checked, around: Around, properties: ReadonlySet<string>): Said {
    const owned = checked.plan.house.stock.find((stock) => stock.piece.name === piece.name)?.count.count;
    // Of the drink where a glass is wanted.
    const kind = properties.has('glass') ? (around.drink ?? around.kind) : around.kind;
    const families = [...properties].flatMap((property) => FAMILIES[property] ?? []);
    const isOdd = families.length > 0 && !families.includes(piece.family);
    const doesSuit = kind !== undefined && suitsKind(checked.plan.cupboard, piece.name, kind);
    const hint = properties.has('vessel') && CHINA.includes(piece.family) ? warmthHint(kind, checked) : undefined;
    const stock = owned === undefined ? [] : [`${owned} owned`];
    return {
        rank: isOdd ? RANK.odd : doesSuit ? RANK.suits : RANK.name,
        row: pieceRow(piece, [...(doesSuit ? [`for ${kind.name}`] : []), ...stock]),
        detail: [
            piece.family,
            ...(doesSuit ? [`for ${kind.name}`] : []),
            ...(hint === undefined ? [] : [hint]),
            ...stock,
        ].join(', '),
    };
}

/** What the kind usually holds, and what the title names, comes first. */
function aboutSubstance(name: string, { plan }: Checked, { kind, drink, title }: Around): Said {
    const substance = plan.cupboard.substances.get(name);
    const isInTitle = title !== undefined && contentsNamed(title, plan.cupboard).includes(name);
    const isUsual = [kind, drink].some((each) => each?.usually?.what.some((usual) => usual.name === name));
    const isRequired = substance?.requiredIn.some((code) => code.name === plan.code.name);
    return {
        ...(isUsual || isInTitle ? { rank: RANK.suits } : {}),
        detail: [
            substance?.sort,
            ...(isInTitle ? ['in the title'] : []),
            ...(isUsual ? [`usual in ${(drink ?? kind)!.name}`] : []),
            ...(isRequired ? [`to be declared under ${plan.code.name}`] : []),
        ].join(', '),
    };
}

/** Diets that guests of the event keep come first. */
function isKeptBySomebody(name: string, { service }: Checked): boolean {
    return service.groups.some(({ needs }) => needs.some((need) => need.sort === 'diet' && need.diet.name === name));
}

/** What the title of the dish tells comes first. */
function aboutKind(kind: Kind | undefined, { plan }: Checked, around: Around): Said {
    const isTold =
        kind !== undefined &&
        around.dish !== undefined &&
        around.kind !== undefined &&
        kindsOfTitle(around.dish.title, around.kind, plan.cupboard).includes(kind);
    return {
        ...(isTold ? { rank: RANK.suits } : {}),
        row: kindRow(kind),
        detail: kind?.called ?? kind?.lineage.slice(1).join(', '),
    };
}

// ------------------------------------------------------------------ seats
/** The seats of a table, the free ones first. */
export function seatProposals(table: string, { plan, service }: Checked): Proposal[] {
    const seats = service.tables.find(({ name }) => name === table.replaceAll('"', ''))?.seats ?? [];
    const taken = new Map(
        plan.seating.flatMap(({ name, seat: at }) =>
            at?.table.name === table && at.seat ? [[at.seat.count, name.text] as const] : [],
        ),
    );
    return seats.map(({ number, accessible }) => ({
        name: String(number),
        kind: CompletionItemKind.Value,
        rank: taken.has(number) ? RANK.odd : RANK.suits,
        detail: [
            taken.has(number) ? `${taken.get(number)!} sits there` : 'free',
            ...(accessible ? ['accessible'] : []),
        ].join(', '),
    }));
}

// ------------------------------------------------------------------ units
/** The units that a figure may take, the likeliest first. @param measure the word before the figure, where nothing else tells @param next what the grammar lets stand next */
export function unitProposals(
    problem: UnitProblem | undefined,
    measure: string,
    next: ReadonlySet<string>,
): Proposal[] {
    // After `4 fl`.
    if (next.size === 1) {
        return [...next].map((name) => ({ name, kind: CompletionItemKind.Unit, rank: RANK.unit }));
    }
    const custom = customSpecs.find((spec) => spec.name === measure)?.figure?.dimension;
    const dimensions = problem?.wanted ?? [
        custom ?? dimensionOf('piece', measure) ?? dimensionOf('code', measure) ?? 'mass',
    ];
    const likely = dimensions.flatMap((dimension) => (dimension === 'count' ? [] : LIKELY_UNITS[dimension]));
    const fitting = (Object.keys(UNITS) as UnitName[]).filter((unit) => dimensions.includes(UNITS[unit].dimension));
    return [...new Set([...likely, ...fitting])].map((name) => ({
        name,
        kind: CompletionItemKind.Unit,
        rank: RANK.unit,
        detail: UNITS[name].dimension,
    }));
}
