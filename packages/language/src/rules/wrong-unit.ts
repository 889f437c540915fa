import { UNITS, type Dimension, type UnitName } from '../plan/quantity.js';
import type { Fix } from './fixes.js';
import { defineRule } from './rule.js';
import { listed, quoted } from './wording.js';

const MEASURE: Record<Dimension, string> = {
    temperature: 'a temperature',
    length: 'a length',
    area: 'an area',
    volume: 'an amount of liquid',
    mass: 'a weight',
    time: 'a length of time',
    share: 'a share',
    count: 'a plain number',
};

/** Units that are said short for one of another measure. */
const SHORT_FOR: Partial<Record<UnitName, UnitName>> = { oz: 'fl oz', m: 'min' };

export default defineRule({
    id: 'wrong-unit',
    group: 'text',
    since: '0.1.0',
    title: 'A unit that measures something else',
    why: 'An ounce of wine is a fluid ounce and an ounce of butter a weight. A figure in the wrong measure can’t be computed with.',
    source: ['temperature §9', 'common practice, no source'],
    fix: 'always',
    scope: 'file',
    examples: {
        wrong: [
            { title: 'A temperature in minutes', text: 'room "Long gallery" {\n    at <|21 min|>\n}\n' },
            { title: 'Metres for minutes', text: 'menu {\n    speech "Welcome", lasts <|5 m|>\n}\n' },
        ],
        right: [{ text: 'room "Long gallery" {\n    at 21 °C\n}\n\nmenu {\n    speech "Welcome", lasts 5 min\n}\n' }],
    },
    check({ plan, report }) {
        for (const { unit, value, written, wanted, likely, origin } of plan.readings.flatMap(
            (reading) => reading.unitProblems,
        )) {
            if (unit === undefined) {
                continue;
            }
            const meant = SHORT_FOR[unit];
            const isMeant = meant !== undefined && wanted.includes(UNITS[meant].dimension);
            const write = (words: string, preferred: boolean): Fix => ({
                title: `Write ${quoted(words)}`,
                safety: preferred ? 'unsafe' : 'show',
                preferred,
                changes: [{ do: 'replace', at: origin, words }],
            });
            const fixes = [
                ...(isMeant ? [write(`${value} ${meant}`, true)] : []),
                ...likely.filter((each) => !isMeant || each !== meant).map((each) => write(`${value} ${each}`, false)),
                ...(wanted.includes('count') ? [write(String(value), false)] : []),
            ];
            const units = [...new Set([...(isMeant ? [meant] : []), ...likely])];
            report({
                at: origin,
                message: `${quoted(written)} is ${MEASURE[UNITS[unit].dimension]}; ${listed(
                    wanted.map((dimension) => MEASURE[dimension]),
                    'or',
                )} is wanted here.`,
                hint: units.length > 0 ? `Write it in ${listed(units, 'or')}.` : 'Write the number alone.',
                fixes,
            });
        }
    },
});
