import { defineRule } from './rule.js';

export default defineRule({
    id: 'two-menus',
    group: 'text',
    since: '0.1.0',
    title: 'Two menus in reach of one plan',
    why: 'Guests of one event sit down to one menu; dishes for some of them stand inside its courses. Courses of a second menu would be neither laid nor cooked.',
    source: ['common practice, no source'],
    fix: 'never',
    noFix: 'Only the chef knows which of the two is served; the other belongs in a file of its own.',
    scope: 'file',
    examples: {
        wrong: [
            {
                text: `menu {
    speech "Welcome", lasts 5 min
}

<|menu {
    speech "Thanks", lasts 5 min
}|>
`,
            },
        ],
        right: [
            {
                text: `menu {
    speech "Welcome", lasts 5 min
    speech "Thanks", lasts 5 min
}
`,
            },
        ],
    },
    check({ plan, report }) {
        const menus = plan.readings.flatMap((reading) => reading.menus);
        const [first, ...others] = menus;
        for (const other of others) {
            const isElsewhere = other.origin.file !== first!.origin.file;
            const files = isElsewhere ? `: one in \`${first!.origin.file}\`, one in \`${other.origin.file}\`` : '';
            report({
                at: other.origin,
                message: `This plan reaches ${menus.length} menus${files}; only the first counts.`,
                hint: 'Keep one menu, and put the other in a file of its own.',
                related: [{ at: first!.origin, message: 'This is the menu that counts.' }],
            });
        }
    },
});
