import { explain, ruleById, rules } from 'underliner-language';
import { didYouMean } from './arguments.js';
import { CannotRun } from './cannot-run.js';
import { writeResult } from './output.js';

/** `underliner explain`: why a rule is there, where it comes from, and a wrong and a right example. */
export function runExplain(ids: readonly string[]): number {
    const texts = ids.map((id) => {
        const rule = ruleById(id);
        if (rule === undefined) {
            const meant = didYouMean(
                id,
                rules.map((rule) => rule.id),
            );
            throw new CannotRun(`There is no rule \`${id}\`.${meant || ' `underliner rules` lists them.'}`);
        }
        return explain(rule);
    });
    writeResult(texts.map((text) => `${text.trimEnd()}\n`).join('\n'));
    return 0;
}
