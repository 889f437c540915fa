import { CompletionItemKind } from 'vscode-languageserver';
import type { Checked } from '../check.js';
import type { Kind } from '../plan/cupboard.js';
import { customSpecs } from '../plan/customs.js';
import { DISPLAY_UNIT, fromComputing, show, type Dimension, type UnitName } from '../plan/quantity.js';
import type { Answer } from '../service/heat/inverse.js';
import { bothScales } from './about-figure.js';
import type { Around } from './around-cursor.js';
import { RANK, type Proposal } from './proposals.js';
import type { WantedFigure } from './wanted-figure.js';

interface Likely {
    /** In the unit that the language computes in. */
    readonly value: number;
    readonly because: string;
    /** Written so in the cupboard. */
    readonly written?: string;
    /** Never less, or never more, than what it stands for. */
    readonly limit?: 'least' | 'most';
}

/** The figures that most likely stand at the cursor, each with its unit and why. @param measure the word before it */
export function figureProposals(
    wanted: WantedFigure,
    measure: string,
    around: Around,
    checked: Checked,
    text: string,
): Proposal[] {
    const unit = unitFor(wanted.dimension, text);
    const all = likely(wanted, measure, around, checked).map((figure) => ({
        name: inUnit(figure, unit),
        kind: CompletionItemKind.Value,
        rank: RANK.suits,
        // Where it comes from, without the figures.
        row: figure.because.replace(/[:;].*/, ''),
        detail: figure.because,
    }));
    return [...new Map(all.toReversed().map((each) => [each.name, each])).values()].toReversed();
}

/** The last members of the path say what the figure is of. */
function likely(
    { path, drink: drinkName }: WantedFigure,
    measure: string,
    around: Around,
    { plan, service }: Checked,
): Likely[] {
    const { dish, kind } = around;
    const drink = plan.cupboard.drinks.get(drinkName ?? '') ?? around.drink;
    const heat = service.heat.dishes.find((each) => each.course === dish?.course && each.dish === dish.index);
    const isHot = kind?.band === 'hot' || kind?.band === 'warm';
    const { figures, name: code } = plan.code;
    const ofCode = (figure: string, limit: 'least' | 'most'): Likely[] => {
        const stated = figures[figure];
        return stated
            ? [{ value: stated.low, because: `the ${limit} under ${code}`, written: stated.size.written, limit }]
            : [];
    };
    const custom = (name: keyof typeof plan.customs): Likely[] => {
        const { value } = plan.customs[name];
        return typeof value === 'number' ? [{ value, because: `the house’s custom \`${name}\`` }] : [];
    };
    const ends = (end: string): boolean => path.endsWith(end);
    if (ends('pours.temperature') || ends('instead.temperature') || ends('water.pour.temperature')) {
        return rangeOf(drink);
    }
    if (ends('pours.amount') || ends('instead.amount')) {
        return portionOf(drink);
    }
    if (ends('strength')) {
        return drink?.strength ? [quantity(drink.strength, `usual for ${drink.name}`)] : [];
    }
    if (ends('served.temperature')) {
        return rangeOf(kind);
    }
    if (ends('served.portion')) {
        return portionOf(kind);
    }
    if (ends('.to') && (path.includes('vessel') || path.includes('under') || path.includes('eaten'))) {
        const state = measure === 'to' ? undefined : measure;
        const computed = path.includes('eaten')
            ? []
            : answered(heat?.answers?.vessel, 'as warm as the last guest needs it');
        return [
            ...computed,
            ...custom((state ?? (isHot ? 'warmed' : 'chilled')) === 'warmed' ? 'warmed-to' : 'chilled-to'),
        ];
    }
    if (ends('leavesPass.temperature')) {
        return [
            ...answered(heat?.answers?.pass, 'as hot as the last guest needs it'),
            ...(isHot ? ofCode('hot-holding', 'least') : []),
        ];
    }
    if (ends('heldAt.temperature')) {
        return isHot ? ofCode('hot-holding', 'least') : ofCode('cold-holding', 'most');
    }
    if (ends('cookTo.temperature')) {
        return kind?.cookTo
            ? [
                  {
                      ...quantity(kind.cookTo, `usual for ${kind.name}; a thermometer and the local code decide`),
                      limit: 'least',
                  },
              ]
            : [];
    }
    if (ends('reheat.temperature')) {
        return ofCode('reheating', 'least');
    }
    if (ends('lasts.time')) {
        return custom('eating-time');
    }
    const spec = customSpecs.find(({ name }) => name === measure);
    return path.includes('customs') && typeof spec?.default === 'number'
        ? [{ value: spec.default, because: 'the default' }]
        : [];
}

/** The middle of what the kind is wanted at, then its ends. */
function rangeOf(kind: Kind | undefined): Likely[] {
    if (!kind?.range) {
        return [];
    }
    const { low, high } = kind.range;
    const because =
        low === high ? `usual for ${kind.name}` : `usual for ${kind.name}: ${bothScales(low)} to ${bothScales(high)}`;
    return [Math.round((low + high) / 2), low, high].map((value) => ({ value, because }));
}

function portionOf(kind: Kind | undefined): Likely[] {
    return kind?.portion
        ? [kind.portion.low, kind.portion.high].map((size) => quantity(size, `usual for ${kind.name}`))
        : [];
}

const quantity = (
    { value, written }: { readonly value: number; readonly written: string },
    because: string,
): Likely => ({
    value,
    because,
    written,
});

/** What the heat model answers; never what it refuses. Rounded up for what is to be hot enough. */
function answered(answer: Answer | undefined, because: string): Likely[] {
    return answer && 'celsius' in answer ? [{ value: Math.ceil(answer.celsius), because: `computed: ${because}` }] : [];
}

/** Fahrenheit where the plan is written in it. */
function unitFor(dimension: Exclude<Dimension, 'count'>, text: string): UnitName {
    const isFahrenheit = dimension === 'temperature' && text.split('°F').length > text.split('°C').length;
    return isFahrenheit ? '°F' : DISPLAY_UNIT[dimension];
}

/** As the cupboard writes it where that is the plan's own unit; whole degrees, and never past a limit. */
function inUnit({ value, written, limit }: Likely, unit: UnitName): string {
    const isTemperature = unit === '°C' || unit === '°F';
    if (written !== undefined && (!isTemperature || written.endsWith(unit))) {
        return written;
    }
    if (!isTemperature) {
        return show(value, unit, unit === '%' ? 0 : 1);
    }
    const exact = Number(fromComputing(value, unit).toFixed(6));
    const whole = limit === 'least' ? Math.ceil(exact) : limit === 'most' ? Math.floor(exact) : Math.round(exact);
    return `${Object.is(whole, -0) ? 0 : whole} ${unit}`;
}
