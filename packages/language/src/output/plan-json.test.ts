import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { check } from '../check.js';
import { compile } from '../compile.js';
import { filesInMemory } from '../plan/files.js';
import { rules } from '../rules/index.js';
import { PLAN_SCHEMA, planJson, planText } from './plan-json.js';

const schema = JSON.parse(readFileSync(new URL('../../schema/plan.schema.json', import.meta.url), 'utf8')) as {
    readonly $id: string;
};
const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(schema);

function errorsOf(plan: unknown): unknown[] {
    validate(plan);
    return (validate.errors ?? []).map(
        (error) => `${error.instancePath} ${error.message} ${JSON.stringify(error.params)}`,
    );
}

const folder = new URL('../../../../examples/saltmarsh-hall/', import.meta.url);
const texts: Record<string, string> = {};
for (const path of ['', 'recipes/']) {
    for (const entry of readdirSync(new URL(path, folder), { withFileTypes: true })) {
        if (entry.isFile()) {
            texts[path + entry.name] = readFileSync(new URL(path + entry.name, folder), 'utf8');
        }
    }
}
const files = filesInMemory(texts);
const events = ['lantern-supper.cover', 'summer-lunch.cover', 'mess-night.cover', 'table-of-eight.cover'];

describe('the compiled plan', () => {
    it('names the schema that ships with the package', () => {
        expect(PLAN_SCHEMA).toBe(schema.$id);
    });

    it.each(events)('of %s validates against it', (file) => {
        expect(errorsOf(planJson(check(file, files)))).toEqual([]);
    });

    it('of every example of every rule validates against it', () => {
        for (const rule of rules) {
            for (const { text } of [...rule.examples.wrong, ...rule.examples.right]) {
                const parts = `//- example.cover\n${text}`.split(/^\/\/- (.+)\n/m).slice(1);
                const found = Object.fromEntries(
                    parts.flatMap((name, index) =>
                        index % 2 === 0 ? [[name.trim(), parts[index + 1]!.replaceAll(/<\||\|>/g, '')]] : [],
                    ),
                );
                const last = parts.at(-2)!.trim();
                expect(errorsOf(planJson(check(last, filesInMemory(found)), true)), `${rule.id}: ${text}`).toEqual([]);
            }
        }
    });

    it('is refused by the schema when a member is missing, unknown or of another sort', () => {
        const plan = () => planJson(check('lantern-supper.cover', files)) as Record<string, unknown>;
        expect(errorsOf({ ...plan(), service: undefined })).not.toEqual([]);
        expect(errorsOf({ ...plan(), surprise: 1 })).not.toEqual([]);
        expect(errorsOf({ ...plan(), cautions: 'none' })).not.toEqual([]);
    });

    it('has the same bytes each time', () => {
        const once = planText(check('lantern-supper.cover', files));
        expect(planText(check('lantern-supper.cover', files))).toBe(once);
        expect(once.endsWith('}\n')).toBe(true);
    });

    it('keeps what was written beside the computing value', () => {
        const plan = planJson(check('lantern-supper.cover', files)) as unknown as {
            menu: { courses: { dishes: { servedAt: unknown }[]; pours: { amount: unknown }[] }[] };
        };
        expect(plan.menu.courses[0]!.pours[0]!.amount).toEqual({ written: '4 fl oz', millilitres: 118.29411825 });
        expect(plan.menu.courses[1]!.dishes[0]!.servedAt).toEqual({ written: '62 °C', celsius: 62 });
    });

    it('tells guests of the list by initials only', () => {
        const text = planText(check('table-of-eight.cover', files));
        expect(text).toContain('"I. M."');
        expect(text).not.toContain('Isolde');
    });

    it('is not made of a plan with errors, unless asked for and then marked', () => {
        const wrong = filesInMemory({ 'a.cover': 'menu { course soup "Leek" { served in soup-bowll } }' });
        expect(compile('a.cover', wrong).text).toBeUndefined();
        expect(compile('a.cover', wrong, { despiteErrors: true }).text).toContain('"despiteErrors": true');
    });
});
