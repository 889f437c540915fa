import { customSpecs, type CustomFigure, type CustomSpec } from '../plan/customs.js';
import { DISPLAY_UNIT, show, type Quantity, type UnitName } from '../plan/quantity.js';
import type { Custom } from '../plan/types.js';
import { defineRule, type Report } from './rule.js';
import { listed, quoted } from './wording.js';

export default defineRule({
    id: 'custom-out-of-range',
    group: 'text',
    since: '0.1.0',
    title: 'A custom answered with something it does not take',
    why: 'Customs are where published books differ, and each takes what some book says. A figure beyond all of them is a slip of the finger more often than a custom.',
    source: ['table-service §1', 'table-service §3', 'table-service §4'],
    fix: 'always',
    scope: 'file',
    examples: {
        wrong: [
            {
                title: 'A figure no book gives',
                text: 'house "Saltmarsh Hall" {\n    laying { limit: <|30 per side|> }\n}\n',
            },
            {
                title: 'A figure where words are asked for',
                text: 'house "Saltmarsh Hall" {\n    laying { overflow: <|2|> }\n}\n',
            },
        ],
        right: [{ text: 'house "Saltmarsh Hall" {\n    laying { limit: 3 per side   overflow: brought }\n}\n' }],
    },
    check({ plan, report }) {
        for (const custom of plan.readings.flatMap((reading) => reading.houses).flatMap((house) => house.customs)) {
            const spec: CustomSpec | undefined = customSpecs.find((each) => each.name === custom.name.name);
            const finding = spec && judge(custom, spec);
            if (finding) {
                report({ ...finding, at: custom.valueOrigin });
            }
        }
    },
});

function judge(custom: Custom, spec: CustomSpec): Omit<Report, 'at'> | undefined {
    const { choice, figure, per } = custom;
    const choices = spec.choices?.map(({ value }) => value) ?? [];
    const takes = listed([...(spec.figure ? [rangeOf(spec.figure, figure)] : []), ...choices.map(quoted)], 'or');
    const say = (given: string, instead: readonly string[]): Omit<Report, 'at'> => ({
        message: `The custom ${quoted(spec.name)} takes ${takes}, not ${quoted(given)}.`,
        hint: `It decides ${spec.title.charAt(0).toLowerCase()}${spec.title.slice(1)}`,
        fixes: instead.map((words, index) => ({
            title: `Write ${quoted(`${spec.name}: ${words}`)}`,
            safety: 'unsafe',
            preferred: index === 0,
            changes: [{ do: 'replace', at: custom.valueOrigin, words }],
        })),
    });
    if (choice) {
        // A word where the custom knows words is a name that is unknown; where it takes a figure alone, it is this.
        return choices.length > 0 || !spec.figure ? undefined : say(choice.name, [defaultOf(spec)]);
    }
    if (!figure) {
        return undefined;
    }
    if (!spec.figure) {
        return say(figure.written, [defaultOf(spec)]);
    }
    if (figure.dimension !== spec.figure.dimension) {
        return undefined;
    }
    const given = per ? `${figure.written} per ${per.name}` : figure.written;
    const { low, high } = spec.figure;
    // A hair beyond the range is what rounding in another unit leaves: 2 inch is 50.8 mm.
    const hair = 1e-6 * Math.max(Math.abs(low), Math.abs(high));
    if (figure.value < low - hair || figure.value > high + hair) {
        const nearest = figure.value < low ? low : high;
        return say(given, [inUnitOf(figure, nearest, figure.value < low ? 'up' : 'down') + perWord(spec.figure)]);
    }
    return per && per.name !== spec.figure.per ? say(given, [figure.written + perWord(spec.figure)]) : undefined;
}

function rangeOf({ low, high, dimension, per }: CustomFigure, like: Quantity | undefined): string {
    const unit =
        dimension === 'count'
            ? undefined
            : like?.dimension === dimension && like.unit
              ? like.unit
              : DISPLAY_UNIT[dimension];
    const range = unit ? `${Number.parseFloat(show(low, unit, 1))} to ${show(high, unit, 1)}` : `${low} to ${high}`;
    return per ? `${range} per ${per}` : range;
}

function perWord({ per }: CustomFigure): string {
    return per ? ` per ${per}` : '';
}

function defaultOf({ default: value, figure }: CustomSpec): string {
    if (typeof value === 'string') {
        return value;
    }
    const words =
        !figure || figure.dimension === 'count' ? String(value) : show(value, DISPLAY_UNIT[figure.dimension], 1);
    return figure ? words + perWord(figure) : words;
}

/** The end of the range in the user's unit, rounded into it. */
function inUnitOf({ unit, dimension }: Quantity, value: number, round: 'up' | 'down'): string {
    if (unit === undefined || dimension === 'count') {
        return String(value);
    }
    const exact = Number.parseFloat(show(value, unit, 6));
    const tenths = exact * 10;
    const rounded =
        (round === 'up' ? Math.ceil(Number(tenths.toFixed(4))) : Math.floor(Number(tenths.toFixed(4)))) / 10;
    return `${rounded} ${unit satisfies UnitName}`;
}
