import { existsSync, readFileSync } from 'node:fs';
import { check, filesInMemory, planJson } from 'underliner-language';
import { expect, it } from 'vitest';
import { filesBelow } from './support/samples.js';

const page = readFileSync(new URL('../docs/recipes.md', import.meta.url), 'utf8');
const texts = filesBelow('examples');

it('shows a part of the recipes of the example event as it is compiled', () => {
    const shown = JSON.parse(/```json\n([\s\S]*?)```/.exec(page)![1]!) as { readonly path: string };
    const plan = planJson(check('examples/saltmarsh-hall/lantern-supper.cover', filesInMemory(texts)));
    const [recipe] = plan.recipes as readonly [{ readonly path: string }];
    expect({ ...recipe, path: recipe.path.replace('examples/saltmarsh-hall/', '') }).toMatchObject({
        ...shown,
        // The page shows the first of them.
        scaled: { ...(shown as { scaled?: object }).scaled, ingredients: expect.any(Array) as unknown },
    });
    const ingredients = (each: unknown) => (each as { scaled: { ingredients: readonly unknown[] } }).scaled.ingredients;
    expect(ingredients(recipe)[0]).toEqual(ingredients(shown)[0]);
});

it('shows the front matter and lines of the recipe itself', () => {
    const shown = /```markdown\n([\s\S]*?)```/.exec(page)![1]!;
    const written = texts['examples/saltmarsh-hall/recipes/smoked-beet.md']!.split('\n');
    expect(
        shown.split('\n').filter((line) => !written.includes(line.replace(' …', '')) && !line.endsWith('…')),
    ).toEqual([]);
});

it('links to files that exist', () => {
    const links = [...page.matchAll(/\]\(([^)#]+)\)/g)].map(([, path]) => path!);
    expect(links.filter((path) => !existsSync(new URL(path, new URL('../docs/', import.meta.url))))).toEqual([]);
});
