import { defineRule, type Report } from './rule.js';
import { quoted } from './wording.js';

export default defineRule({
    id: 'file-leaves-workspace',
    group: 'text',
    since: '0.1.0',
    title: 'A path that leads out of the workspace',
    why: 'A plan travels with its folder: by mail, on a stick, to next year’s chef. What lies outside is not there when it arrives.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'The file has to be copied into the workspace, which is for the writer to do.',
    scope: 'file',
    examples: {
        wrong: [{ text: 'use <|"../../elsewhere/house.cover"|>\n\nroom "Long gallery" { at 21 °C }\n' }],
        right: [
            {
                text: '//- house.cover\nhouse "Saltmarsh Hall" { spare 5 % }\n//- room.cover\nuse "house.cover"\n\nroom "Long gallery" { at 21 °C }\n',
            },
        ],
    },
    check({ plan, report }) {
        const finding = (path: string): Omit<Report, 'at'> => ({
            message: `${quoted(path)} leads out of the folder you work in, and is not read.`,
            hint: 'Copy the file into that folder and write its path from this file. Of several folders that are open, each stands for itself.',
        });
        for (const { sort, path, origin } of plan.useProblems) {
            if (sort === 'outside') {
                report({ at: origin, ...finding(path) });
            }
        }
        for (const { state, path, origin } of plan.recipes) {
            if (state === 'outside') {
                report({ at: origin, ...finding(path) });
            }
        }
    },
});
