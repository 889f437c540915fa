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

/** `40`, `"40 servings"`, `["40", "40 bowls"]` or a QuantitativeValue; the first whole or decimal number in it. */
function portionsIn(recipe: Fields): number | undefined {
    for (const key of ['portions', 'yield', 'recipeYield', 'servings']) {
        const stated = [recipe[key]].flat().map((value) => (isFields(value) ? value.value : value));
        for (const value of stated) {
            const number = /\d+(\.\d+)?/.exec(
                typeof value === 'string' || typeof value === 'number' ? String(value) : '',
            );
            if (number && Number(number[0]) > 0) {
                return Number(number[0]);
            }
        }
    }
    return undefined;
}

function textIn(recipe: Fields, key: string): string | undefined {
    const value = recipe[key];
    return typeof value === 'string' ? value : undefined;
}
