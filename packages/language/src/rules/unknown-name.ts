import { isFromCupboard, type Origin } from '../plan/origin.js';
import type { NameSort, Occurrence } from '../plan/types.js';
import { saidOfAdults } from './adults.js';
import type { Fix } from './fixes.js';
import { namesInReach, REACH } from './names-in-reach.js';
import { nearest } from './nearest.js';
import { calledHere, nearlyCalledHere, otherWordsOf } from './other-words.js';
import { defineRule, type Report, type RuleInput } from './rule.js';
import { kindsMadeOf } from '../plan/suiting.js';
import { substancesCalled } from '../service/allergens/food-words.js';
import { isZone, nearestZones } from './time-zones.js';
import { asName, didYouMean, listed, quoted } from './wording.js';

const NOUN: Record<NameSort, string> = {
    piece: 'piece',
    kind: 'kind of dish or course',
    drink: 'kind of drink',
    'kind-or-drink': 'kind of dish or drink',
    substance: 'allergen or ingredient',
    diet: 'diet',
    code: 'local code',
    custom: 'custom',
    choice: 'answer',
    rule: 'rule',
    course: 'course of this menu',
    table: 'table of the room',
    shape: 'table shape',
    role: 'role of a team',
    'dish-title': 'dish of this menu',
    'pour-title': 'drink of this menu',
    'task-title': 'task of the setup or strike',
};

/** How a name of each sort comes to be known, for the sorts a house can declare. */
const DECLARE: Partial<Record<NameSort, (name: string) => readonly string[]>> = {
    piece: (name) => ['plate', 'glass', 'fork'].map((family) => `${family} ${name} { … }`),
    kind: (name) => [`kind ${name} is … { … }`],
    drink: (name) => [`drink ${name} is … { … }`],
    'kind-or-drink': (name) => [`kind ${name} is … { … }`, `drink ${name} is … { … }`],
    substance: (name) => [`allergen ${name}`, `ingredient ${name}`],
    diet: (name) => [`diet ${name} { excludes … }`],
    code: (name) => [`code ${name} { … }`],
};

export default defineRule({
    id: 'unknown-name',
    group: 'text',
    since: '0.1.0',
    title: 'A name that nothing in reach declares',
    why: 'A mistyped piece is never pulled from the store, and a mistyped allergen protects nobody. Every name is looked up in the plan, the files it uses and the standard cupboard.',
    source: ['common practice, no source'],
    fix: 'sometimes',
    scope: 'file',
    examples: {
        wrong: [
            {
                title: 'A letter too few',
                text: 'house "Saltmarsh Hall" {\n    own 110 dinner-fork, 96 <|soup-spon|>\n}\n',
            },
            {
                title: 'Another word for a piece',
                text: 'house "Saltmarsh Hall" {\n    own 110 dinner-fork, 96 <|charger|>\n}\n',
            },
            {
                title: 'A custom that is not one',
                text: 'house "Saltmarsh Hall" {\n    laying { <|overflw|>: brought }\n}\n',
            },
            {
                title: 'An answer the custom does not take',
                text: 'house "Saltmarsh Hall" {\n    laying { overflow: <|hidden|> }\n}\n',
            },
        ],
        right: [
            {
                text: 'house "Saltmarsh Hall" {\n    own 110 dinner-fork, 96 soup-spoon\n    laying { overflow: brought }\n}\n',
            },
        ],
    },
    check(input) {
        // Thousands of names stand in a long plan, of few sorts.
        const inReach = new Map<string, ReadonlySet<string> | undefined>();
        for (const reading of input.plan.readings) {
            for (const occurrence of reading.occurrences) {
                if (occurrence.role === 'uses' && occurrence.name !== '' && !isFromCupboard(occurrence.origin)) {
                    const key = `${occurrence.sort} ${occurrence.of ?? ''}`;
                    if (!inReach.has(key)) {
                        const names = namesInReach(occurrence, input);
                        inReach.set(key, names && new Set(names));
                    }
                    const names = inReach.get(key);
                    if (names && !names.has(occurrence.name) && !isSaidElsewhere(occurrence, input)) {
                        judge(occurrence, [...names], input);
                    }
                }
            }
        }
        judgeZone(input);
    },
});

/** @param names those that may stand here */
function judge(occurrence: Occurrence, names: readonly string[], input: RuleInput): void {
    const { sort, name, origin } = occurrence;
    const words = otherWordsOf(sort, input.plan.cupboard, names);
    const called = calledHere(name, words);
    if (called.length > 0) {
        input.report({ at: origin, ...saidOtherwise(occurrence, called) });
        return;
    }
    const ofAdults = saidOfAdults(occurrence, input.plan);
    if (ofAdults) {
        input.report({ at: origin, ...ofAdults });
        return;
    }
    const elsewhere = otherSort(occurrence, input);
    const near = elsewhere
        ? []
        : ([nearest(name, names), nearlyCalledHere(name, words)].find((some) => some.length > 0) ?? []);
    const reach = REACH[sort];
    // What a house or menu edited alone does not know may be declared by the event that uses it.
    if (near.length === 0 && !elsewhere && (reach === 'open' || (reach !== 'closed' && !input.plan.event))) {
        return;
    }
    const message =
        sort === 'choice'
            ? `The custom ${quoted(occurrence.of ?? '')} takes ${listed(names.map(quoted), 'or')}, not ${quoted(name)}.`
            : elsewhere
              ? `${quoted(name)} is ${elsewhere.is}; ${withArticle(NOUN[sort])} is wanted here.`
              : `No ${NOUN[sort]} is called ${quoted(name)}.`;
    const write = isTitle(sort) ? (each: string) => `"${each}"` : asName;
    input.report({
        at: origin,
        severity: reach === 'open' ? 'warning' : undefined,
        message,
        hint: hintFor(sort, name, near, names, elsewhere),
        fixes: elsewhere
            ? elsewhere.words.map((each) => ({
                  ...replace(origin, each, sort !== 'kind'),
                  // What is made of it is for the chef to say.
                  ...(sort === 'kind' && { safety: 'show' as const }),
              }))
            : near.map((each) => replace(origin, write(each), near.length === 1)),
    });
}

/** @param called the names that it is another word for */
function saidOtherwise(
    { sort, name, origin }: Occurrence,
    called: readonly string[],
): Pick<Report, 'message' | 'hint' | 'fixes'> {
    const all = listed(called.map(quoted), 'or');
    const isOne = called.length === 1;
    return {
        message: `${quoted(name)} ${isOne ? 'is called' : 'can be'} ${all} here.`,
        hint: isOne
            ? `Write ${all}.`
            : sort === 'diet'
              ? 'Ask the guest, and write what is meant.'
              : 'Write what is meant.',
        fixes: called.map((each) => replace(origin, asName(each), isOne)),
    };
}

function isTitle(sort: NameSort): boolean {
    return sort === 'dish-title' || sort === 'pour-title' || sort === 'task-title';
}

/** True where another finding already says it: a guest's choice, or the mistyped kind of the very course that is named here. */
function isSaidElsewhere({ sort, name, origin }: Occurrence, { plan }: RuleInput): boolean {
    const kinds = plan.menu?.courses.map((course) => course.kind.name) ?? [];
    const isChoice = plan.seating.some((guest) => guest.chooses.some((choice) => choice.origin === origin));
    return sort === 'course'
        ? kinds.some((kind) => !plan.cupboard.kinds.has(kind) && nearest(kind, [name]).length > 0)
        : sort === 'dish-title' && isChoice;
}

function replace(at: Origin, words: string, preferred: boolean): Fix {
    return { title: `Write ${quoted(words)}`, safety: 'unsafe', preferred, changes: [{ do: 'replace', at, words }] };
}

/** So many names a hint tells: all diets and local codes of the cupboard, and not its pieces. */
const SHORT_LIST = 24;

function hintFor(
    sort: NameSort,
    name: string,
    near: readonly string[],
    names: readonly string[],
    elsewhere: Elsewhere | undefined,
): string | undefined {
    if (elsewhere) {
        const isDiet = sort === 'substance' && elsewhere.is === 'a diet';
        const words = elsewhere.words.map(quoted);
        if (sort === 'kind' && words.length > 0) {
            return `Write what is made of it: ${listed(words, 'or')}.`;
        }
        return words.length > 0
            ? `Write ${listed(words, 'or')}.`
            : isDiet
              ? 'A guest’s diet stands without the word `without`.'
              : undefined;
    }
    if (near.length > 0) {
        return didYouMean(near);
    }
    const all = [...new Set(names)].map(quoted);
    const isShort = all.length > 0 && all.length <= SHORT_LIST;
    const declare = DECLARE[sort];
    if (declare) {
        const use = isShort ? listed(all, 'or') : 'a name of the cupboard';
        const ways = declare(asName(name)).map(quoted);
        return `Use ${use}, or declare it${ways.length > 1 ? ' as what it is' : ''}: ${listed(ways, 'or')}.`;
    }
    if (sort === 'choice') {
        return 'Choose one of them.';
    }
    if (sort === 'rule') {
        return 'The list of rules is printed by `underliner rules`.';
    }
    if (sort === 'pour-title' && all.length === 0) {
        return `Pour it in a course: ${quoted(`pour "${name}" … into …`)}.`;
    }
    return isShort ? `There ${all.length === 1 ? 'is' : 'are'} ${listed(all)}.` : undefined;
}

interface Elsewhere {
    readonly is: string;
    /** What to write instead, where one can tell. */
    readonly words: readonly string[];
}

/** A name that is known, as something else: `2 gluten` for `2 without gluten`, a glass where a drink is wanted. */
function otherSort({ sort, name }: Occurrence, { plan: { cupboard } }: RuleInput): Elsewhere | undefined {
    if (sort === 'diet' && cupboard.substances.has(name)) {
        return { is: 'an allergen or ingredient', words: [`without ${asName(name)}`] };
    }
    const others: readonly (readonly [NameSort, string, ReadonlyMap<string, unknown>])[] = [
        ['diet', 'a diet', cupboard.diets],
        ['piece', 'a piece', cupboard.pieces],
        ['kind', 'a kind of dish or course', cupboard.kinds],
        ['drink', 'a kind of drink', cupboard.drinks],
        ['substance', 'an allergen or ingredient', cupboard.substances],
    ];
    const foods = sort === 'kind' && !cupboard.drinks.has(name) ? substancesCalled(name, cupboard) : [];
    if (foods.length > 0) {
        return { is: 'an allergen or ingredient', words: kindsMadeOf(foods, cupboard).map(asName) };
    }
    const isDeclarable = others.some(([other]) => other === sort);
    const found = isDeclarable ? others.find(([other, , names]) => other !== sort && names.has(name)) : undefined;
    return found && { is: found[1], words: [] };
}

function withArticle(noun: string): string {
    return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}

function judgeZone({ plan, report }: RuleInput): void {
    const zone = plan.event?.zone;
    if (!zone || zone.text === '' || isZone(zone.text)) {
        return;
    }
    const near = nearestZones(zone.text);
    report({
        at: zone.origin,
        message: `No time zone is called ${quoted(zone.text)}.`,
        hint: near.length > 0 ? didYouMean(near) : 'Write its region and city, such as `America/Halifax`.',
        fixes: near.map((each) => replace(zone.origin, each, near.length === 1)),
    });
}
