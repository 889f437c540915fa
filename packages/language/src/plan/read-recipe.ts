import { parse as parseYaml } from 'yaml';
import { resolvePath, type Files } from './files.js';
import type { Text } from './origin.js';
import type { RecipeFacts } from './types.js';

/**
 * What a linked recipe says of itself: a Markdown file with `yield` or `portions` in its front matter, or a schema.org Recipe
 * in JSON-LD with `recipeYield`.
 * @param link the path as written, relative to the file it stands in
 */
export function readRecipe(link: Text, files: Files): RecipeFacts {
    const { origin } = link;
    const path = resolvePath(origin.file, link.text);
    if (path === undefined) {
        return { path: link.text, origin, state: 'outside' };
    }
    const found = files.read(path);
    if (found.state !== 'read') {
        return { path, origin, state: found.state };
    }
    try {
        const recipe = /\.(json|jsonld)$/i.test(path) ? jsonRecipe(JSON.parse(found.text)) : frontMatter(found.text);
        return {
            path,
            origin,
            state: 'read',
            portions: portionsIn(recipe),
            title: textIn(recipe, 'name') ?? textIn(recipe, 'title'),
        };
    } catch {
        return { path, origin, state: 'unreadable' };
    }
}

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
    typeof value === 'object' && value !== null && !Array.isArray(value);

function frontMatter(text: string): Fields {
    const block = /^\uFEFF?---[ \t]*\r?\n([\s\S]*?)\r?\n---[ \t]*(?:\r?\n|$)/.exec(text);
    const fields: unknown = block ? parseYaml(block[1]!) : {};
    return isFields(fields) ? fields : {};
}

/** The first Recipe of a JSON-LD document: the document itself, a member of its list, or of its `@graph`. */
function jsonRecipe(document: unknown): Fields {
    const nodes = Array.isArray(document)
        ? document
        : isFields(document) && Array.isArray(document['@graph'])
          ? document['@graph']
          : [document];
    const isRecipe = (node: unknown): node is Fields =>
        isFields(node) && [node['@type']].flat().some((type) => /(^|[/:])Recipe$/.test(String(type)));
    return nodes.find(isRecipe) ?? {};
}

/** Words after a number that measure food instead of counting portions: `1.5 kg` is no number of guests fed. */
const MEASURES =
    /^(kg|g|mg|lb|lbs|oz|l|ml|cl|dl|litres?|liters?|quarts?|qt|pints?|pt|gal|gallons?|cups?|pounds?|ounces?|grams?|inch|inches|cm|mm|%)\b/i;

/**
 * `40`, `"40 servings"`, `"2-3"` (the fewer), `["40", "40 bowls"]` or a QuantitativeValue.
 * @returns nothing where the recipe states no number of portions
 */
function portionsIn(recipe: Fields): number | undefined {
    for (const key of ['portions', 'yield', 'recipeYield', 'servings']) {
        const stated = [recipe[key]].flat().map((value) => (isFields(value) ? value.value : value));
        for (const value of stated) {
            const words = typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
            const number = /^(?:about |makes |serves |for )?(\d+(?:\.\d+)?)(?:\s*(?:-|–|to)\s*\d+)?\s*(.*)$/i.exec(
                words,
            );
            if (number && Number(number[1]) > 0 && !MEASURES.test(number[2]!)) {
                return Number(number[1]);
            }
        }
    }
    return undefined;
}

function textIn(recipe: Fields, key: string): string | undefined {
    const value = recipe[key];
    return typeof value === 'string' ? value : undefined;
}
