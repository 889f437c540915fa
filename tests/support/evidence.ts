import { existsSync, readFileSync } from 'node:fs';
import { ruleById } from 'underliner-language';

const root = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };

/** Whether a test file has a test, or a group of tests, of this title, as it is written there. */
function hasTest(text: string, title: string): boolean {
    return ["'", '"', '`'].some((quote) => text.includes(`${quote}${title}${quote}`));
}

/** What is wrong with one piece of evidence as the pages of docs name it, if anything: a test, a command, a rule or a file. */
export function lacking(evidence: string): string | undefined {
    const [, path, title] = /^`([^`]+)`(?:: (.+))?$/.exec(evidence) ?? [];
    const [, rule] = /^rule `([a-z-]+)`$/.exec(evidence) ?? [];
    if (rule !== undefined) {
        return ruleById(rule) ? undefined : `there is no rule ${rule}`;
    }
    if (path === undefined) {
        return `"${evidence}" is no test, command, rule or file`;
    }
    const [program, ...words] = path.split(' ');
    if (program === 'npm') {
        const script = words.at(-1)!;
        return script in scripts ? undefined : `there is no script ${script}`;
    }
    if (program === 'underliner') {
        const [verb, ...options] = words;
        const file = `packages/cli/src/${verb}.ts`;
        if (!existsSync(new URL(file, root))) {
            return `there is no command ${verb}`;
        }
        const source = read(file) + read('packages/cli/src/main.ts') + read('packages/cli/src/arguments.ts');
        const unknown = options.filter((option) => !source.includes(option));
        return unknown.length === 0 ? undefined : `${verb} has no ${unknown.join(', ')}`;
    }
    if (!existsSync(new URL(path, root))) {
        return `there is no file ${path}`;
    }
    if (/\.(test|e2e)\.ts$/.test(path) && title === undefined) {
        return `which test of ${path}?`;
    }
    return title === undefined || hasTest(read(path), title) ? undefined : `${path} has no test "${title}"`;
}
