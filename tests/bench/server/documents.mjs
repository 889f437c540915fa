// The documents that language servers are measured on: for each language one of about 200, 2,000 and 10,000 lines.
// The same text every time: nothing is random.
import { readFileSync } from 'node:fs';

const banquet = readFileSync(new URL('../banquet/banquet.cover', import.meta.url), 'utf8');

/** What the plans are about; the smallest is the committed banquet as it stands. */
export const sizes = [
    { lines: 200, guests: 84 },
    { lines: 2_000, guests: 240 },
    { lines: 10_000, guests: 1_200 },
];

const FIRST = ['Isolde', 'Tobias', 'Agnes', 'Corin', 'Petra', 'Hal', 'Mina', 'Rufus', 'Oda', 'Jory', 'Wenna', 'Silas'];
const LAST = [
    'Marrow',
    'Fenn',
    'Reedmace',
    'Saltway',
    'Sluice',
    'Samphire',
    'Eelgrass',
    'Dyke',
    'Teal',
    'Wrack',
    'Spit',
];
const WORDS = ['marsh', 'lantern', 'heron', 'reed', 'tide', 'sluice', 'curlew', 'saltern', 'causeway', 'eel', 'sedge'];
const DISHES = ['Smoked beet', 'Roast squash', 'Quince sorbet', 'Grilled sirloin', 'Braised chicken', 'Burnt honey'];
const SUBSTANCES = ['milk', 'wheat', 'mustard', 'celery', 'egg', 'oats', 'sulphites'];
const pick = (list, number) => list[number % list.length];
/** Letters for a number, for names in which no figure may stand. */
const letters = (number) =>
    number < 26 ? String.fromCharCode(97 + number) : letters(Math.floor(number / 26) - 1) + letters(number % 26);

/** Blocks in turn until there are so many lines; a last comment fills up. */
function fill(lines, target, block) {
    for (let number = 0; ; number++) {
        const more = block(number);
        if (lines.length + more.length > target) {
            break;
        }
        lines.push(...more);
    }
    while (lines.length < target) {
        lines.push(`// ${lines.length + 1}: nothing more on this page`);
    }
    return `${lines.join('\n')}\n`;
}

/**
 * One event in one file: the banquet for more guests, each of them named and seated, more to set up, and a house that
 * describes its own pieces, kinds of dish and drinks.
 */
export function plan({ lines: target, guests }) {
    if (guests === 84) {
        return banquet;
    }
    const times = guests / 120;
    const tables = Math.ceil(guests / 10);
    const side = Math.ceil(3.4 * Math.ceil(Math.sqrt(tables))) + 6;
    const room = `room "Long gallery" ${side + 2} m by ${side} m {
    at 20 °C
    table T1 to T${tables}: round 72 inch, 10 seats, 1 accessible
}`;
    const team = `team {
    captain 1
    servers ${Math.round(10 * times ** 1.1)}
    runners ${Math.round(5 * times ** 1.25)}
    plating-lines ${Math.round(4 * times ** 1.1)} at 12 plates per min each
}`;
    const text = banquet
        .replace(
            /guests 84 guaranteed 80 set for 88/,
            `guests ${guests} guaranteed ${guests - 4} set for ${Math.round(guests * 1.04)}`,
        )
        .replace('6 vegetarian\n', `${Math.round(9 * times)} vegetarian\n`)
        .replace('2 without gluten\n', `${Math.round(3 * times)} without gluten\n`)
        .replace('is steak for 40', `is steak for ${Math.round(guests * 0.48)}`)
        .replaceAll(/\bown [^\n]*/g, (line) =>
            line.replaceAll(/\d+(?= [a-z])/g, (count) => `${Math.ceil(count * times * 1.5)}`),
        )
        .replace(/room "Long gallery"[^}]*\}/, room)
        .replace(/team \{[^}]*\}/, team);
    const lines = text.trimEnd().split('\n');
    lines.push('', 'setup {');
    const tasks = Math.round(target / 40);
    for (let number = 0; number < tasks; number++) {
        const after = number < 8 ? '' : `, after "Lay out ${pick(WORDS, number - 8)} ${number - 8}"`;
        lines.push(
            `    task "Lay out ${pick(WORDS, number)} ${number}" takes ${2 + (number % 7)} min${after}, by 2 servers`,
        );
    }
    lines.push('}', '', '// Named guests, with what they need.', 'seating {');
    for (let number = 0; number < guests; number++) {
        const table = Math.floor(number / 10) + 1;
        const need = number % 40 === 7 ? ', is vegetarian' : number % 60 === 11 ? ', without gluten' : '';
        const name = `${pick(FIRST, number)} ${pick(LAST, number * 5 + Math.floor(number / 12))} ${letters(number)}`;
        lines.push(`    "${name}" at T${table} seat ${(number % 10) + 1}${need}`);
    }
    lines.push('}', '');
    return fill(lines, target, (number) => {
        const name = `${pick(WORDS, number)}-${letters(number)}`;
        switch (number % 4) {
            case 0:
                return [
                    `// Bought for the ${pick(WORDS, number + 3)} room.`,
                    `glass ${name}-tumbler {`,
                    `    holds ${220 + (number % 90)} ml`,
                    `    across ${70 + (number % 12)} mm`,
                    `    height ${90 + (number % 20)} mm`,
                    `    glass ${200 + (number % 70)} g`,
                    '    for "water", soft-drink',
                    '}',
                    '',
                ];
            case 1:
                return [
                    `kind ${name}-starter is appetizer {`,
                    `    called "starter of the ${pick(WORDS, number)} ${letters(number)}"`,
                    '    eaten with salad-fork and salad-knife',
                    '    on salad-plate',
                    '    cold',
                    `    at ${5 + (number % 3)} °C to 12 °C`,
                    '}',
                    '',
                ];
            case 2:
                return [
                    `bowl ${name}-bowl is soup-bowl {`,
                    `    holds ${300 + (number % 90)} ml`,
                    `    porcelain ${400 + (number % 60)} g`,
                    '}',
                    '',
                ];
            default:
                return [
                    `drink ${name}-cordial is cordial {`,
                    `    called "cordial of the ${pick(WORDS, number)} ${letters(number)}"`,
                    '    in highball-glass',
                    `    at ${6 + (number % 3)} °C to 10 °C`,
                    '}',
                    '',
                ];
        }
    });
}

export function bare({ lines }) {
    const dish = (number) => [
        `        dish "${pick(DISHES, number)} ${number}" {`,
        `            served on salad-plate at ${8 + (number % 60)}`,
        `            contains ${pick(SUBSTANCES, number)}, ${pick(SUBSTANCES, number + 2)}`,
        '            // as the house serves it',
        '        }',
    ];
    return fill([], lines, (number) => [
        `event "Banquet of the ${pick(WORDS, number)} ${number}" {`,
        ...[0, 1, 2].flatMap((course) => [
            `    course ${pick(WORDS, course)} "Course ${course}" {`,
            ...dish(number * 6 + course * 2),
            ...dish(number * 6 + course * 2 + 1),
            '    }',
        ]),
        '}',
        '',
    ]);
}

export function yaml({ lines }) {
    const events = fill(['# Banquets of the year.', 'events:'], lines, (number) => [
        `  - title: "Banquet of the ${pick(WORDS, number)} ${number}"`,
        `    guests: ${80 + (number % 40)}`,
        '    courses:',
        ...[0, 1, 2, 3].flatMap((course) => [
            `      - kind: ${pick(WORDS, course)}`,
            `        title: "${pick(DISHES, number + course)}"`,
            `        plate: salad-plate # as the house serves it`,
            `        degrees: ${8 + ((number + course) % 60)}`,
            `        contains: [${pick(SUBSTANCES, number)}, ${pick(SUBSTANCES, number + course)}]`,
        ]),
    ]);
    return events.replaceAll('// ', '# ');
}

export function json({ lines }) {
    const items = [];
    for (let number = 0; items.length + 25 < lines - 3; number++) {
        items.push(
            '    {',
            `      "title": "Banquet of the ${pick(WORDS, number)} ${number}",`,
            `      "guests": ${80 + (number % 40)},`,
            '      "courses": [',
            ...[0, 1, 2].flatMap((course) => [
                '        {',
                `          "kind": "${pick(WORDS, course)}",`,
                `          "title": "${pick(DISHES, number + course)}",`,
                '          "plate": "salad-plate",',
                `          "degrees": ${8 + ((number + course) % 60)},`,
                `          "contains": ["${pick(SUBSTANCES, number)}"]`,
                course < 2 ? '        },' : '        }',
            ]),
            '      ]',
            '    },',
        );
    }
    items[items.length - 1] = '    }';
    return `{\n  "events": [\n${items.join('\n')}\n  ]\n}\n`;
}

/** The schema of the two documents above. */
export const schema = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    type: 'object',
    properties: {
        events: {
            type: 'array',
            items: {
                type: 'object',
                required: ['title', 'guests', 'courses'],
                additionalProperties: false,
                properties: {
                    title: { type: 'string', description: 'What the event is called.' },
                    guests: { type: 'integer', minimum: 1, description: 'How many are expected.' },
                    courses: {
                        type: 'array',
                        items: {
                            type: 'object',
                            required: ['kind', 'title'],
                            additionalProperties: false,
                            properties: {
                                kind: { type: 'string', enum: WORDS },
                                title: { type: 'string', minLength: 2 },
                                plate: { enum: ['salad-plate', 'dinner-plate', 'soup-bowl'] },
                                degrees: { type: 'number', minimum: -20, maximum: 95 },
                                contains: { type: 'array', items: { enum: SUBSTANCES } },
                            },
                        },
                    },
                },
            },
        },
    },
};

export function typescript({ lines }) {
    const head = [
        'interface Dish { readonly title: string; readonly plate: string; readonly degrees: number; readonly contains: readonly string[] }',
        'const dishes: Dish[] = [];',
        // Something to find, so that the server speaks at every change.
        'const found: number = "one";',
        '',
    ];
    return fill(head, lines, (number) => [
        `// ${pick(DISHES, number)}, as the house serves it.`,
        `export function dish${number}(guests: number): Dish {`,
        `    const degrees = ${8 + (number % 60)} + guests * 0;`,
        `    const contains = ["${pick(SUBSTANCES, number)}", "${pick(SUBSTANCES, number + 2)}"];`,
        `    const made: Dish = { title: "${pick(DISHES, number)} ${number}", plate: "salad-plate", degrees, contains };`,
        '    dishes.push(made);',
        `    return ${number > 0 ? `degrees > 40 ? made : dish${number - 1}(guests)` : 'made'};`,
        '}',
        '',
    ]);
}
