// docs/language.md: every clause of the language, from the grammar and from what `clause-notes.ts` says of each.
import { loadSource } from './load-source.mjs';

export const languagePage = {
    name: 'the language',
    async outputs() {
        const { CoverGrammar } = await loadSource('packages/language/src/grammar/generated/grammar.ts');
        const { CLAUSE_NOTES } = await loadSource('packages/language/src/grammar/clause-notes.ts');
        const { UNITS } = await loadSource('packages/language/src/plan/quantity.ts');
        const rules = new Map(CoverGrammar().rules.map((rule) => [rule.name, rule]));
        const parts = [
            introduction,
            ...SECTIONS.map((section) => sectionText(section, rules, CLAUSE_NOTES)),
            figuresText(UNITS),
        ];
        return [{ path: 'docs/language.md', text: `${parts.join('\n\n')}\n`, isCommitted: true }];
    },
};

/** Which rules of the grammar make a section: in one list, or in several where they do not stand in the same place. */
const SECTIONS = [
    {
        title: 'A file',
        rules: ['UseFile'],
        before: `A file holds blocks in any order: an event, a menu, a house, a room, a team, tasks, seating, pieces and kinds. What
it uses from other files stands there as if it were written here. \`//\` begins a comment that ends with its line,
\`/*\` one that ends with \`*/\`.`,
    },
    { title: 'The event', rules: ['EventClause'], before: '`event "TITLE" { … }` says when and for how many.' },
    {
        title: 'Guests',
        rules: ['GuestsPhrase', 'GuestRow', 'Need'],
        before: 'The total comes first; the rows in braces speak of disjoint guests inside it.',
    },
    { title: 'Seating', rules: ['Seating', 'NamedGuestPhrase'], before: 'Named guests, for place cards and seats.' },
    {
        title: 'The menu',
        rules: ['MenuEntry'],
        before: '`menu { … }` holds the courses in the order in which they are served, and what stands beside them.',
    },
    {
        title: 'A course and its dishes',
        rules: ['CourseClause', 'Dish', 'Who'],
        before: 'A course with one dish says everything itself; with several, each dish says what is its own.',
    },
    {
        title: 'How it is served',
        rules: ['ServedPhrase', 'PieceUse'],
        before: 'Behind `served`, in any order, with or without commas.',
    },
    {
        title: 'What goes with it',
        lists: [
            { rules: ['AccompanimentPhrase'], before: 'Behind a sauce, a garnish or a butter, before its braces:' },
            { rules: ['AccompanimentClause'], before: 'In its braces:' },
        ],
    },
    {
        title: 'Drinks',
        lists: [
            { rules: ['PourPhrase'], before: 'Behind `pour "TITLE"` and `instead "TITLE"`, before the braces:' },
            { rules: ['PourClause'], before: 'In the braces:' },
        ],
    },
    {
        title: 'Bread, coffee, toasts',
        lists: [
            { rules: ['BreadPhrase'], before: 'Behind `bread`, before its braces:' },
            {
                rules: ['BreadClause'],
                before: 'In the braces of `bread`, beside breads for some guests (`dish "TITLE" for WHO`):',
            },
            { rules: ['CoffeePhrase'], before: 'Behind `coffee after COURSE`, before its braces:' },
            { rules: ['CoffeeClause'], before: 'In the braces of `coffee`:' },
            { rules: ['ToastPhrase'], before: 'Behind `toast` and `speech`:' },
        ],
    },
    {
        title: 'The house',
        rules: ['HouseClause', 'Custom', 'WashLine'],
        before: '`house "TITLE" { … }` says what it owns and how it does things.',
    },
    {
        title: 'The room',
        rules: ['Room', 'RoomClause', 'TablePhrase'],
        before: 'Tables that are not given a place are laid out by the room’s aisles.',
    },
    {
        title: 'The team',
        rules: ['Role'],
        before: '`team { … }` counts people: `captain`, `servers`, `runners`, `plating-lines` and whom else the house has.',
    },
    {
        title: 'Set-up and strike',
        rules: ['Tasks', 'Task', 'TaskPhrase'],
        before: 'Work of the house’s own, beside what follows from the plan.',
    },
    {
        title: 'Kinds of dish and drink',
        rules: ['Kind', 'KindClause'],
        before: 'The standard cupboard has the usual ones; a file may add its own. `fresh` takes nothing over from one of the same name. Each line may end with `source "TEXT"`.',
    },
    {
        title: 'Pieces',
        rules: ['Piece', 'PieceFact'],
        before: 'As with kinds: the standard cupboard has the usual ones.',
    },
    {
        title: 'Allergens and ingredients',
        rules: ['Substance', 'SubstanceClause'],
        before: 'Whether a duty to tell guests of an allergen holds is for the local code and those licensed under it to say.',
    },
    {
        title: 'Diets',
        rules: ['Diet', 'DietClause'],
        before: 'What each excludes is the cupboard’s; a guest’s own word goes before it.',
    },
    {
        title: 'Local codes',
        rules: ['LocalCode', 'LocalCodeClause'],
        before: 'Planning aids: the code in force at the place, and the authority that applies it, always decide.',
    },
];

const introduction = `<!-- Generated by \`npm run generate\`; do not edit. -->

# The language

A plan is text. One clause a line reads aloud as a service note, but line breaks mean nothing: clauses may share a line.
Inside a block their order is free. Pieces, kinds, drinks, diets and codes are names of the
[cupboard](../packages/language/src/cupboard), never words of the language.

Below, CAPITALS stand for what you write, [brackets] for what may be left out, and … for more of the same. The
[tutorial](tutorial.md) begins at the beginning; [the customs](customs.md) and [the rules](rules/README.md) have pages of
their own.`;

function sectionText({ title, lists, ...only }, rules, notes) {
    return [`## ${title}`, ...(lists ?? [only]).map((list) => listText(list, rules, notes))].join('\n\n');
}

function listText({ before, rules: names }, rules, notes) {
    const lines = names
        .flatMap((name) => clausesOf(rules.get(name)))
        .map(({ key, syntax }) => {
            const { says, example } = notes[key] ?? missing(key);
            return `- \`${syntax}\`: ${says}. \`${example}\``;
        });
    return `${before}\n\n${[...new Set(lines)].join('\n')}`;
}

function missing(key) {
    throw new Error(`packages/language/src/grammar/clause-notes.ts says nothing of ${key}.`);
}

function figuresText(units) {
    const lines = Object.entries(groupBy(Object.keys(units), (unit) => units[unit].dimension)).map(
        ([dimension, all]) => `- ${dimension}: ${all.map((unit) => `\`${unit}\``).join(', ')}`,
    );
    return `## Figures, times and names

A figure has its unit behind it: \`74 °C\`, \`165 °F\`, \`1.5 h\`. What is written in one unit is shown in it again.

${lines.join('\n')}

A day is \`2026-10-17\`, a time of the clock \`19:30\`. Other ways to write them are read too, and a fix keeps the plain form.
Text stands in straight or curly quotes. A name is one word, with hyphens: \`dinner-fork\`; any other name stands in quotes,
and so does one that is a word of the language where it could be read as a clause: \`"table"\`.`;
}

function groupBy(items, keyOf) {
    const groups = {};
    items.forEach((item) => (groups[keyOf(item)] ??= []).push(item));
    return groups;
}

// ---------------------------------------------------------------- reading the grammar
/** Every clause that a rule reads, with the key of its note and how it is written. */
export function clausesOf(rule) {
    return alternativesOf(rule.definition).flatMap((way) => {
        const action = elementsOf(way).find(({ $type }) => $type === 'Action');
        if (action) {
            return [{ key: action.inferredType.name, syntax: written(way) }];
        }
        if (way.$type === 'RuleCall') {
            return clausesOf(way.rule.ref);
        }
        return [{ key: rule.name, syntax: written(rule.definition) }];
    });
}

/** The clauses of a rule are alternatives; the words of a choice inside one clause are not. */
function alternativesOf(definition) {
    const isClause = (way) => way.$type === 'RuleCall' || elementsOf(way).some(({ $type }) => $type === 'Action');
    return definition.$type === 'Alternatives' && definition.elements.some(isClause)
        ? definition.elements
        : [definition];
}

function elementsOf(element) {
    return element.$type === 'Group' ? element.elements : [element];
}

/** What the user writes for a rule that reads one value. */
const PLACEHOLDERS = {
    STRING: '"TEXT"',
    NUMBER: 'NUMBER',
    Temperature: 'TEMPERATURE',
    Duration: 'TIME',
    Amount: 'AMOUNT',
    Share: 'SHARE',
    Length: 'LENGTH',
    AnyQuantity: 'FIGURE',
    ClockTime: 'CLOCK',
    DateText: 'DATE',
    ZoneName: 'ZONE',
    TableName: 'TABLE',
    Rate: 'NUMBER NAME per hour',
    Who: 'WHO',
    Need: 'NEED',
    PieceUse: 'PIECE',
    Stock: 'NUMBER PIECE',
    Holds: 'holds NUMBER NAME',
    LaySection: '[left | right | above | on the saucer | on the bread-plate] PIECE, …',
    CustomWord: 'CHOICE',
    CustomValue: 'VALUE',
    Unit: 'UNIT',
};

function written(element) {
    return print(element)
        .replaceAll(/\s+/g, ' ')
        .replaceAll(' ,', ',')
        .replaceAll(/\{ ?(… ?)+\}/g, '{ … }')
        .replaceAll(/(…,? ?)+…/g, '…')
        .trim();
}

function print(element) {
    const text = printOnce(element);
    if (text === '' || text === ',') {
        // A comma that may be left out is not worth a word.
        return element.cardinality === '?' ? '' : text;
    }
    switch (element.cardinality) {
        case '?':
            return `[${text.trim()}]`;
        case '*':
        case '+':
            return '…';
        default:
            return text;
    }
}

function printOnce(element) {
    switch (element.$type) {
        case 'Keyword':
            return element.value;
        case 'Assignment':
            return assigned(element);
        case 'RuleCall':
            return called(element.rule.ref);
        case 'Alternatives': {
            const ways = element.elements.filter((way) => !isMisspelling(way)).map(print);
            return ways.length === 1 ? ways[0] : `(${ways.join(' | ')})`;
        }
        case 'Group':
            return printGroup(element.elements);
        default:
            return '';
    }
}

/** What the grammar reads only to say what was meant. */
function isMisspelling(way) {
    return elementsOf(way)[0].feature === 'misspelt';
}

/** `A (',' A)*` is written `A, …`. */
function printGroup(elements) {
    const words = [];
    for (let index = 0; index < elements.length; index++) {
        const [element, next] = [elements[index], elements[index + 1]];
        const last = next?.$type === 'Group' && next.cardinality === '*' ? next.elements.at(-1) : undefined;
        if (last?.$type === 'Assignment' && last.feature === element.feature) {
            const between = print(next.elements[0]).replace('(and | or)', 'and').replace('[,]', ',') || ',';
            words.push(`${print(element)}${between === ',' ? '' : ' '}${between} …`);
            index++;
        } else {
            words.push(print(element));
        }
    }
    return words.filter((word) => word !== '').join(' ');
}

/** Names are called after what they are names of, where the grammar says. */
const NAMED_FEATURES = new Set([
    ...['piece', 'glass', 'plate', 'cup', 'vessel', 'gear', 'course', 'diet', 'role', 'code', 'rule', 'kind', 'parent'],
    'shape',
]);

function assigned({ feature, operator, terminal }) {
    if (terminal.$type === 'RuleCall') {
        const { name } = terminal.rule.ref;
        if (/^(Any|Plain)?Name$|^ID$/.test(name)) {
            return NAMED_FEATURES.has(feature) ? feature.toUpperCase() : 'NAME';
        }
        return name === 'STRING' && feature === 'title' ? '"TITLE"' : called(terminal.rule.ref);
    }
    return operator === '?=' ? print(terminal) : printOnce(terminal);
}

function called(rule) {
    if (rule.name in PLACEHOLDERS) {
        return PLACEHOLDERS[rule.name];
    }
    if (rule.name === 'Source') {
        return '';
    }
    if (/^(Any|Plain)?Name$|^ID$|^FactName$|^PieceFamily$/.test(rule.name)) {
        return rule.name === 'PieceFamily'
            ? '(fork | knife | spoon | glass | bowl | plate | cup | linen | gear)'
            : 'NAME';
    }
    // What has a section of its own is not written out again.
    return /(Phrase|Clause|Line|Row|Fact|Custom|Task|Role|Entry|Dish|NamedGuest)s?$/.test(rule.name)
        ? '…'
        : print(rule.definition);
}
