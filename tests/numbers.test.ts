import { check, filesInMemory, planJson } from 'underliner-language';
import { describe, expect, it } from 'vitest';
import { NUMBER_USES, type NumberUse } from '../packages/language/src/service/numbers.js';

// The four numbers of guests: every figure moves with the numbers that the plan says it uses, and with no other.

interface Numbers {
    readonly expected: number;
    readonly guaranteed: number;
    readonly 'set for': number;
    readonly 'extra portions': number;
    readonly "the crew's meal": number;
    readonly "the house's spare share": number;
}

const EVENING: Numbers = {
    expected: 40,
    guaranteed: 38,
    'set for': 44,
    'extra portions': 2,
    "the crew's meal": 6,
    "the house's spare share": 5,
};

function written(numbers: Numbers): string {
    return `house "Saltmarsh Hall" {
    own 200 dinner-plate, 200 soup-bowl, 200 dinner-fork, 20 tablecloth, 2 plate-warmer { holds 60 plates }
    spare ${numbers["the house's spare share"]} %
}
event "Harbour supper" {
    date 2026-10-17
    zone America/Halifax
    seated 19:00
    guests ${numbers.expected} guaranteed ${numbers.guaranteed} set for ${numbers['set for']} { 4 vegetarian }
    crew ${numbers["the crew's meal"]} eat "Chicken" at 17:00
}
room "Long gallery" { table T1 to T10: round 60 inch, 8 seats }
team { captain 1  servers 5  runners 2  plating-lines 1 at 12 plates per min }
menu {
    water still 180 ml into water-glass
    course soup "Leek" {
        served in soup-bowl warmed to 55 °C at 64 °C  lasts 15 min  contains nothing  suits vegetarian  cook 1 extra
        pour "Marsh white" 120 ml into white-wine-glass at 9 °C, is white-wine { contains sulphites }
    }
    course main { lasts 30 min
        dish "Chicken" is poultry for the rest {
            served on dinner-plate warmed at 63 °C, portion 300 g  contains nothing  cook ${numbers['extra portions']} extra
        }
        dish "Squash" is vegetable-main for vegetarian { served on dinner-plate warmed at 63 °C  contains gluten }
    }
}
`;
}

function compiled(numbers: Numbers): unknown {
    const checked = check('supper.cover', filesInMemory({ 'supper.cover': written(numbers) }));
    expect(checked.broken).toEqual([]);
    return planJson(checked, true);
}

/** Every number at a path such as `service.pull[].pull`. */
function at(plan: unknown, path: string): number[] {
    return path.split('.').reduce<unknown[]>(
        (found, step) => {
            const isList = step.endsWith('[]');
            const members = found.map((each) => (each as Record<string, unknown>)[isList ? step.slice(0, -2) : step]);
            return isList ? members.flat() : members;
        },
        [plan],
    ) as number[];
}

const NAMES = Object.keys(EVENING) as (keyof Numbers)[];
const plain = compiled(EVENING);
/** Each number changed alone, a little and a lot, up and down. */
const varied = NAMES.map((name) => ({
    name,
    plans: [-2, 1, 3, 20].map((more) => compiled({ ...EVENING, [name]: Math.max(0, EVENING[name] + more) })),
}));
const movedBy = ({ in: path }: NumberUse): string[] =>
    varied
        .filter(({ plans }) => plans.some((plan) => at(plan, path).join() !== at(plain, path).join()))
        .map(({ name }) => name);

describe('the numbers of guests', () => {
    it.each(NUMBER_USES)('$figure: of what the plan says, and of nothing else', (use) => {
        const figures = at(plain, use.in);
        expect(figures.length, use.in).toBeGreaterThan(0);
        expect(figures.every((figure) => typeof figure === 'number')).toBe(true);
        expect(movedBy(use).toSorted()).toEqual([...use.of, ...(use.beside ? [use.beside] : [])].toSorted());
    });

    it('are told in the plan with where they are written and what they are for', () => {
        expect(plain).toMatchObject({
            service: {
                numbers: {
                    expected: { count: 40, at: 'supper.cover:9:12' },
                    guaranteed: { count: 38, at: 'supper.cover:9:26' },
                    setFor: { count: 44, because: 'stated', at: 'supper.cover:9:37' },
                    extraPortions: [
                        { course: 'Leek', dish: 'Leek', count: 1 },
                        { course: 'main', dish: 'Chicken', count: 2 },
                    ],
                    paidFor: 40,
                    uses: NUMBER_USES.map(({ figure }) => ({ figure })),
                },
            },
        });
    });

    it('add up by hand', () => {
        const plates = (
            plain as {
                service: { pull: { piece: string; needed: number; overset: number; spare: number; pull: number }[] };
            }
        ).service.pull;
        // 40 mains on dinner plates; an overset cover has none; 5 % of 40 is 2.
        expect(plates.find(({ piece }) => piece === 'dinner-plate')).toMatchObject({
            needed: 40,
            overset: 0,
            spare: 2,
            pull: 42,
        });
        // 44 napkins laid; 5 % of 44 is 2.2, rounded up.
        expect(plates.find(({ piece }) => piece === 'napkin')).toMatchObject({
            needed: 40,
            overset: 4,
            spare: 3,
            pull: 47,
        });
        // 36 guests, 2 extra and the crew of 6 eat chicken; 4 squash.
        expect(at(plain, 'service.courses[].portions[].cook')).toEqual([41, 36 + 2 + 6, 4]);
        // 40 glasses of 120 ml, 6 a bottle.
        expect(at(plain, 'service.drinks[].bottles[].count')).toEqual([7]);
        // 44 covers on ten tables.
        expect(at(plain, 'service.seats.tables[].covers').reduce((sum, covers) => sum + covers, 0)).toBe(44);
        expect(at(plain, 'service.seats.tables[].guests').reduce((sum, guests) => sum + guests, 0)).toBe(40);
    });
});
