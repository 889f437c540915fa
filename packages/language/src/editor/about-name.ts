import type { Checked } from '../check.js';
import type { Eaten, Kind, Piece } from '../plan/cupboard.js';
import { customSpecs, type CustomSpec } from '../plan/customs.js';
import { findCourse } from '../plan/names.js';
import type { Named } from '../plan/origin.js';
import type { Occurrence } from '../plan/types.js';
import { explainInMarkdown } from '../explain.js';
import { ruleById } from '../rules/index.js';
import { counted, listed } from '../rules/wording.js';
import { aboutCourse } from './about-course.js';
import { bothScales, figureText, valueText } from './about-figure.js';
import { pieceInTheEvening } from './about-piece-use.js';
import { code, escaped, image, page, sentence } from './markdown.js';
import { drawPiece } from '../output/drawing/draw-piece.js';

/** What a name stands for in a plan, as Markdown; nothing for a name that nobody declares. @param isDrawn with a drawing of a piece */
export function aboutName({ sort, name, of }: Occurrence, checked: Checked, isDrawn = false): string | undefined {
    const { plan } = checked;
    const { cupboard } = plan;
    switch (sort) {
        case 'piece':
            return aboutPiece(cupboard.pieces.get(name), checked, isDrawn);
        case 'kind':
            return aboutKind(cupboard.kinds.get(name));
        case 'drink':
            return aboutKind(cupboard.drinks.get(name));
        case 'kind-or-drink':
            return aboutKind(cupboard.kinds.get(name) ?? cupboard.drinks.get(name));
        case 'substance':
            return aboutSubstance(name, checked);
        case 'diet': {
            const diet = cupboard.diets.get(name);
            return (
                diet &&
                page(`diet ${name}`, diet.called, [
                    diet.excludes.length > 0 ? `Excludes ${names(diet.excludes)}.` : undefined,
                    alsoCalled(diet.also),
                    diet.statedOnly ? 'Fed only by dishes that say so with `suits`.' : undefined,
                    diet.term === undefined ? undefined : `schema.org: ${code(diet.term)}.`,
                    sourced(diet.sources),
                ])
            );
        }
        case 'code': {
            const local = cupboard.codes.get(name);
            return (
                local &&
                page(`code ${name}`, local.called, [
                    ...Object.entries(local.figures).map(
                        ([what, figure]) => `${escaped(what)}: ${figureText(figure)}.`,
                    ),
                    'The local code and its officers decide.',
                    sourced(local.sources),
                ])
            );
        }
        case 'custom':
            return aboutCustom(
                customSpecs.find((spec) => spec.name === name),
                checked,
            );
        case 'choice': {
            const spec = customSpecs.find((each) => each.name === of);
            const choice = spec?.choices?.find(({ value }) => value === name);
            return (
                choice && page(`${spec!.name}: ${name}`, undefined, [sentence(choice.means), sourced(choice.sources)])
            );
        }
        case 'rule': {
            const rule = ruleById(name);
            return (
                rule &&
                explainInMarkdown(rule)
                    .replace(/^# .*\n\n/, `**${escaped(rule.id)}**: ${escaped(rule.title)}\n\n`)
                    .replace(/\n## (Wrong|Right)[\s\S]*?(?=\n## (?!Wrong|Right))/g, '')
            );
        }
        case 'course': {
            const course = findCourse(plan.menu, name);
            return course && aboutCourse(course, checked);
        }
        case 'table': {
            const tables = plan.room?.tables.find((each) => each.names.includes(name));
            return (
                tables &&
                page(`table ${name}`, undefined, [
                    `${tables.shape.name}, ${tables.size.written}${tables.depth ? ` by ${tables.depth.written}` : ''}${tables.seats ? `, ${counted(tables.seats.count, 'seat')}` : ''}.`,
                    tables.names.length > 1
                        ? `One of ${tables.names.length}, ${code(tables.names[0]!)} to ${code(tables.names.at(-1)!)}.`
                        : undefined,
                ])
            );
        }
        default:
            return undefined;
    }
}

const names = (all: readonly Named[], joint: 'and' | 'or' = 'and'): string =>
    listed(
        all.map(({ name }) => code(name)),
        joint,
    );
const alsoCalled = (words: readonly string[]): string | undefined =>
    words.length > 0 ? `Other words for it: ${escaped(words.join(', '))}.` : undefined;
const sourced = (sources: readonly string[]): string | undefined =>
    sources.length > 0 ? `*Source: ${escaped([...new Set(sources)].join('; '))}*` : undefined;

// ------------------------------------------------------------------ pieces
function aboutPiece(piece: Piece | undefined, checked: Checked, isDrawn: boolean): string | undefined {
    if (!piece) {
        return undefined;
    }
    const measures = [
        ...Object.entries(piece.measures).map(([what, figure]) => `${what} ${figureText(figure)}`),
        ...(piece.tines
            ? [`tines ${piece.tines.low}${piece.tines.high > piece.tines.low ? ` to ${piece.tines.high}` : ''}`]
            : []),
        ...piece.flags.map(({ name }) => name),
    ];
    const svg = isDrawn ? drawPiece(piece) : undefined;
    return page(`${piece.family} ${piece.name}`, piece.called, [
        svg && image(svg, `${piece.name} from above`),
        measures.length > 0 ? sentence(measures.join(', ')) : undefined,
        alsoCalled(piece.also),
        piece.suits.length > 0 ? `For ${names(piece.suits)}.` : undefined,
        piece.pairs.length > 0 ? `Lies with ${names(piece.pairs)}.` : undefined,
        piece.on.length > 0 ? `Stands on ${names(piece.on, 'or')}.` : undefined,
        ...pieceInTheEvening(piece.name, checked),
        sourced(piece.sources),
    ]);
}

// ------------------------------------------------------------------ kinds, drinks and what is in them
function aboutKind(kind: Kind | undefined): string | undefined {
    if (!kind) {
        return undefined;
    }
    const parents = kind.lineage.slice(1);
    return page(`${kind.sort} ${kind.name}`, kind.called, [
        parents.length > 0 ? `A sort of ${listed(parents.map(code))}.` : undefined,
        alsoCalled(kind.also),
        kind.eaten ? `Eaten with ${eatenText(kind.eaten)}.` : undefined,
        kind.vessels.length > 0
            ? `${sentence(kind.vessels.map(({ how, names: all }) => `served ${how} ${names(all, 'or')}`).join(', '))}`
            : undefined,
        kind.range
            ? `Wanted ${kind.band === undefined ? '' : `${kind.band}, `}at ${kind.range.low === kind.range.high ? bothScales(kind.range.low) : `${bothScales(kind.range.low)} to ${bothScales(kind.range.high)}`} in front of the guest.`
            : kind.band && `Wanted ${kind.band}.`,
        kind.portion
            ? `Portion ${kind.portion.low.written}${kind.portion.high === kind.portion.low ? '' : ` to ${kind.portion.high.written}`}.`
            : undefined,
        kind.cookTo
            ? `Cooked to ${bothScales(kind.cookTo.value)}; a thermometer and the local code decide.`
            : undefined,
        kind.usually && kind.usually.what.length > 0 ? `Usually contains ${names(kind.usually.what)}.` : undefined,
        kind.strength ? `${kind.strength.written} alcohol by volume.` : undefined,
        kind.follows.length > 0 ? `Follows ${names(kind.follows, 'or')}.` : undefined,
        sourced(kind.sources),
    ]);
}

function eatenText(eaten: Eaten): string {
    return listed(
        eaten.map((alternatives) =>
            names(
                alternatives.map(({ piece }) => piece),
                'or',
            ),
        ),
    );
}

function aboutSubstance(name: string, { plan: { cupboard, code: local } }: Checked): string | undefined {
    const substance = cupboard.substances.get(name);
    if (!substance) {
        return undefined;
    }
    const called =
        substance.called.find(({ code: where }) => where === local.name) ??
        substance.called.find(({ code: where }) => where === undefined);
    const sorts = [...cupboard.substances.values()].filter(({ parents }) =>
        parents.some((parent) => parent.name === name),
    );
    const isRequired = substance.requiredIn.some((where) => where.name === local.name);
    return page(`${substance.sort} ${name}`, called?.words, [
        substance.parents.length > 0 ? `A sort of ${names(substance.parents)}.` : undefined,
        alsoCalled(substance.also),
        sorts.length > 0 ? `Covers ${listed(sorts.map((each) => code(each.name)))}.` : undefined,
        isRequired ? `Must be declared under ${code(local.name)}.` : undefined,
        'The supplier’s label decides what a product contains.',
        sourced(substance.sources),
    ]);
}

// ------------------------------------------------------------------ customs
function aboutCustom(
    spec: (CustomSpec & { readonly name: string }) | undefined,
    { plan }: Checked,
): string | undefined {
    if (!spec) {
        return undefined;
    }
    const inForce = plan.customs[spec.name as keyof typeof plan.customs];
    const choices = spec.choices?.map(({ value, means }) => `- ${code(value)}: ${escaped(means)}`).join('\n');
    const isDefault = inForce.origin === undefined;
    return page(`laying { ${spec.name}: … }`, undefined, [
        escaped(spec.title),
        choices,
        isDefault
            ? `The default is in force, ${code(valueText(spec, spec.default))}: ${escaped(spec.because)}`
            : `This house lays ${code(valueText(spec, inForce.value))}; the default is ${code(valueText(spec, spec.default))}.`,
    ]);
}
