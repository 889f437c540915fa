import { parse as parseYaml } from 'yaml';
import { resolvePath, type Files } from './files.js';
import type { Amount } from './kitchen-measures.js';
import type { Text } from './origin.js';
import { plainAmounts, readAmount, readWholeAmount } from './read-amount.js';
import { readIngredient } from './read-ingredient.js';
import { readIngredientList } from './read-ingredient-list.js';
import type { Ingredient, RecipeFacts } from './recipe.js';

/**
 * What a linked recipe says of itself: a Markdown file with `yield` or `portions`, `contains` and `suits` in its front matter and
 * a list of ingredients; or a schema.org Recipe in JSON-LD with `recipeYield`, `recipeIngredient` and `suitableForDiet`.
 * Never throws: what can't be read is told by `state`.
 * @param link the path as written, relative to the file it stands in
 */
export function readRecipe(link: Text, files: Files): RecipeFacts {
    const { origin } = link;
    const nothing = { origin, suits: [], ingredients: [] };
    const path = resolvePath(origin.file, link.text);
    if (path === undefined) {
        return { ...nothing, path: link.text, state: 'outside' };
    }
    const found = files.read(path);
    if (found.state !== 'read') {
        return { ...nothing, path, state: found.state };
    }
    const facts = factsIn(/\.(json|jsonld)$/i.test(path) ? 'json' : 'markdown', found.text);
    return facts ? { path, origin, state: 'read', ...facts } : { ...nothing, path, state: 'unreadable' };
}

/** The recipes read last, by sort and text: a plan is looked at again at every key, its recipes seldom change. */
const known = new Map<string, Facts | undefined>();
const MOST_KNOWN = 64;

function factsIn(sort: 'json' | 'markdown', text: string): Facts | undefined {
    const key = `${sort} ${text}`;
    if (!known.has(key)) {
        if (known.size === MOST_KNOWN) {
            known.clear();
        }
        known.set(key, readFacts(sort, text));
    }
    return known.get(key);
}

function readFacts(sort: 'json' | 'markdown', text: string): Facts | undefined {
    try {
        return sort === 'json' ? readJson(text) : readMarkdown(text);
    } catch {
        return undefined;
    }
}

type Fields = Readonly<Record<string, unknown>>;
type Facts = Omit<RecipeFacts, 'path' | 'origin' | 'state'>;

const isFields = (value: unknown): value is Fields =>
    typeof value === 'object' && value !== null && !Array.isArray(value);

// ---------------------------------------------------------------- the two sorts of file
function readMarkdown(text: string): Facts {
    const block = /^\uFEFF?---[ \t]*\r?\n([\s\S]*?)\r?\n---[ \t]*(?:\r?\n|$)/.exec(text);
    const fields: unknown = block ? parseYaml(block[1]!) : {};
    const body = text.slice(block?.[0].length ?? 0);
    return factsOf(isFields(fields) ? fields : {}, readIngredientList(body));
}

/** The first Recipe of a JSON-LD document: the document itself, a member of its list, or of its `@graph`. */
function readJson(text: string): Facts {
    const document: unknown = JSON.parse(text);
    const nodes = Array.isArray(document)
        ? document
        : isFields(document) && Array.isArray(document['@graph'])
          ? document['@graph']
          : [document];
    const isRecipe = (node: unknown): node is Fields =>
        isFields(node) && [node['@type']].flat().some((type) => /(^|[/:])Recipe$/.test(String(type)));
    const recipe = nodes.find(isRecipe) ?? {};
    return factsOf(
        recipe,
        wordsIn(recipe.recipeIngredient).map((line) => readIngredient(line)),
    );
}

function factsOf(fields: Fields, ingredients: readonly Ingredient[]): Facts {
    const { size, ...yielded } = yieldOf(fields);
    return {
        title: wordsIn(fields.name)[0] ?? wordsIn(fields.title)[0],
        ...yielded,
        portionSize: wordsIn(fields.portion).map(readWholeAmount).find(isMeasured) ?? size,
        contains: containsOf(fields),
        suits: [...listIn(fields.suits), ...listIn(fields.suitableForDiet).map((diet) => diet.replace(/^.*[/#:]/, ''))],
        ingredients,
    };
}

// ---------------------------------------------------------------- portions
interface Yield {
    readonly portions?: number;
    readonly makes?: Amount;
    /** Of one portion. */
    readonly size?: Amount;
}

/** Words after a number that measure food instead of counting portions: `1.5 kg` is no number of guests fed. */
const NO_PORTIONS = /^(mg|inch|inches|cm|mm|%)(?![a-z])/i;

/**
 * `40`, `"40 servings"`, `"2-3"` (the fewer), `["40", "40 bowls"]`, `"100 portions of 250 ml"`, `"12 l"` or a QuantitativeValue.
 * @returns nothing where the recipe states neither portions nor an amount
 */
function yieldOf(fields: Fields): Yield {
    const stated = ['portions', 'yield', 'recipeYield', 'servings'].flatMap((key) =>
        wordsIn(fields[key]).map(oneYield),
    );
    const portions = stated.find((each) => each.portions !== undefined);
    return portions ?? stated.find((each) => each.makes) ?? {};
}

function oneYield(words: string): Yield {
    const text = plainAmounts(words.replace(/^((about|makes|serves|yields|for) )+/i, ''));
    const read = readAmount(text);
    if (!read) {
        return {};
    }
    const { amount, rest } = read;
    if (amount.system !== 'count') {
        return { makes: amount };
    }
    const after = rest.trimStart();
    const size = /^[a-z ]*?(?:\bof |, ?|\()(?=\d)/i.exec(after);
    const portion = size && readAmount(after.slice(size[0].length))?.amount;
    return NO_PORTIONS.test(after) ? {} : { portions: amount.low, size: isMeasured(portion) ? portion : undefined };
}

function isMeasured(amount: Amount | null | undefined): amount is Amount {
    return amount !== undefined && amount !== null && amount.system !== 'count';
}

// ---------------------------------------------------------------- allergens
/** `contains: milk, egg`, a list, or `contains: nothing`. */
function containsOf(fields: Fields): readonly string[] | undefined {
    if (wordsIn(fields.contains).length === 0) {
        return Array.isArray(fields.contains) ? [] : undefined;
    }
    return listIn(fields.contains).filter((word) => !/^(nothing|none)$/i.test(word));
}

/** The words of a value, each text or number by itself; of a thing, its `value` with its unit, or its address. */
function wordsIn(value: unknown): string[] {
    return [value].flat(2).flatMap((each) => {
        if (isFields(each)) {
            return 'value' in each ? quantitativeValue(each) : wordsIn(each['@id']);
        }
        const words = typeof each === 'string' || typeof each === 'number' ? String(each).trim() : '';
        return words === '' ? [] : words;
    });
}

/** Units of a schema.org QuantitativeValue by their UN/CEFACT codes; `C62` is a bare number. */
const UNIT_CODES: Readonly<Record<string, string>> = {
    C62: '',
    GRM: 'g',
    KGM: 'kg',
    MLT: 'ml',
    LTR: 'l',
    LBR: 'lb',
    ONZ: 'oz',
};

/** `24 portions`; nothing where the unit is given by a code that is not known here. */
function quantitativeValue({ value, unitText, unitCode }: Fields): string[] {
    const [figure] = wordsIn(value);
    const [code] = wordsIn(unitCode);
    const unit = wordsIn(unitText)[0] ?? (code === undefined ? '' : UNIT_CODES[code]);
    return figure === undefined || unit === undefined ? [] : [`${figure} ${unit}`.trim()];
}

/** As `wordsIn`, with lists written in one text taken apart. */
function listIn(value: unknown): string[] {
    return wordsIn(value).flatMap((words) =>
        words
            .split(/[,;]| and /)
            .map((word) => word.trim())
            .filter((word) => word !== ''),
    );
}
