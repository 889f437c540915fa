import { describe, expect, it } from 'vitest';
import { CodeActionKind, type CodeAction, type CodeActionContext, type Diagnostic } from 'vscode-languageserver';
import { CLIENT, openPlan, type OpenPlan } from '../../../../tests/support/open-plan.js';
import { codeActions } from './code-actions.js';
import { difference } from '../plan/text-difference.js';
import { diagnosticsOf } from './diagnostics.js';

const findings = (plan: OpenPlan): Diagnostic[] => diagnosticsOf(plan.folder, plan.path, CLIENT);
const FROK = 'house "Hall" {\n    own 4 dinner-frok\n    spare 5 percent\n}\n';

describe('diagnostics', () => {
    it('carry the rule, its page, its severity, what to do and the places that matter', () => {
        const plan = openPlan('house "Hall" { own 4 fork }\nhouse "Inn" { }\n');
        const twice = findings(plan).find(({ code }) => code === 'declared-twice')!;
        expect(twice).toMatchObject({
            severity: 1,
            source: 'underliner',
            codeDescription: { href: 'underliner-rule:/declared-twice.md' },
        });
        expect(twice.relatedInformation?.[0]?.location.uri).toBe('file:///saltmarsh/plan.cover');
        const withCommand = { ...CLIENT, ruleCommand: 'chef.rule' };
        expect(diagnosticsOf(plan.folder, plan.path, withCommand)[0]!.codeDescription!.href).toMatch(
            /^command:chef\.rule\?%5B%22[a-z-]+%22%5D$/,
        );
        const [frok] = findings(openPlan(FROK));
        expect(frok!.message).toBe('No piece is called `dinner-frok`.\nDid you mean `dinner-fork`?');
        expect(frok!.data).toEqual({ plan: 'plan.cover', rule: 'unknown-name' });
    });

    it('tell what the parser could not read', () => {
        expect(findings(openPlan('menu {\n course soup {\n served in\n }\n}\n')).map(({ code }) => code)).toContain(
            'unreadable-text',
        );
    });

    it('of a used file are told there by the plan that uses it, and once', () => {
        const plan = openPlan(
            '//- supper.cover\nuse "house.cover"\nevent "S" { }\n//- house.cover\nhouse "Hall" { own 4 dinner-fr<|>ok, 4 no-such-piece-at-all }\n',
        );
        expect(findings(plan)).toHaveLength(1);
        plan.folder.checked('supper.cover');
        expect(findings(plan).map(({ code, range }) => [code, plan.words(range)])).toEqual([
            ['unknown-name', 'dinner-frok'],
            ['unknown-name', 'no-such-piece-at-all'],
        ]);
    });
});

describe('code actions', () => {
    const actions = (plan: OpenPlan, words: string, context: Partial<CodeActionContext> = {}) =>
        codeActions(
            plan,
            {
                textDocument: { uri: '' },
                range: plan.rangeOf(words),
                context: { diagnostics: findings(plan), ...context },
            },
            CLIENT,
        );
    const editOf = ({ edit }: CodeAction) =>
        edit!.documentChanges![0] as { textDocument: { version: number }; edits: { newText: string }[] };

    it('offer the fixes of a finding with the version they are for', () => {
        const plan = openPlan(FROK);
        const [fix, ...more] = actions(plan, 'dinner-frok', { only: [CodeActionKind.QuickFix] });
        expect(more).toEqual([]);
        expect(fix).toMatchObject({ title: 'Write `dinner-fork`', kind: 'quickfix', isPreferred: true });
        expect(fix!.diagnostics).toEqual([findings(plan)[0]]);
        expect(editOf(fix!).textDocument.version).toBe(7);
        expect(editOf(fix!).edits.map(({ newText }) => newText)).toEqual(['dinner-fork']);
    });

    it('lead to what can not be read where that keeps fixes back, and say why', () => {
        const soup = 'course soup { served in soup-bowl at 64 °C\n contains nothing }';
        const plan = openPlan(`menu {\n ${soup}\n}\nroom "Long gallery" {\n aisel 1.2 m\n}\n`);
        const cold = findings(plan).find(({ code }) => code === 'hot-soup-cold-bowl')!;
        const quick = { only: [CodeActionKind.QuickFix] };
        const [mend, go, why, ...more] = actions(plan, 'soup-bowl', quick);
        expect(mend!.title).toBe('Write `aisle` in line 6, which can’t be read');
        expect(mend!.isPreferred).toBeUndefined();
        expect(editOf(mend!).edits.map(({ newText }) => newText)).toEqual(['aisle']);
        expect(go!.command).toMatchObject({
            title: 'Go to line 6, which can’t be read',
            arguments: [{ uri: 'file:///saltmarsh/plan.cover', selection: plan.rangeOf('aisel') }],
        });
        expect(why!.disabled).toEqual({ reason: 'First mend line 6: `aisel` starts nothing inside a room.' });
        expect(why!.diagnostics).toContainEqual(cold);
        // What can be silenced can be silenced all the same.
        expect(more.map(({ title }) => title).every((title) => title.startsWith('Waive'))).toBe(true);
        expect(actions(plan, 'aisel', quick).map(({ title }) => title)).toEqual(['Write `aisle`']);
        // Once it can be read, the fixes are there.
        const read = openPlan(plan.text.replace('aisel', 'aisle'));
        expect(actions(read, 'soup-bowl', quick)[0]!.title).toMatch(/^Warm the `soup-bowl`/);
    });

    it('say nothing of it to a client that takes no disabled actions and can not be led', () => {
        const plan = openPlan('menu {\n course soup { served in soup-bowl at 64 °C }\n of\n}\n');
        const client = { ...CLIENT, takesDisabled: false, goesToPlaces: false };
        const asked = { textDocument: { uri: '' }, range: plan.rangeOf('soup-bowl'), context: { diagnostics: [] } };
        const offered = codeActions(plan, asked, client);
        expect(offered.filter(({ disabled, command }) => disabled ?? command)).toEqual([]);
    });

    it('offer nothing where nothing is found', () => {
        expect(actions(openPlan(FROK), 'house')).toEqual([]);
    });

    it('apply every fix that is surely meant, and no other', () => {
        const plan = openPlan(FROK);
        const [all, ...more] = actions(plan, 'house', { only: [CodeActionKind.SourceFixAll] });
        expect(more).toEqual([]);
        expect(all!.kind).toBe('source.fixAll.underliner');
        expect(editOf(all!).edits.map(({ newText }) => newText)).toEqual(['%']);
        expect(
            actions(openPlan('house "Hall" { own 4 dinner-frok }\n'), 'house', { only: [CodeActionKind.SourceFixAll] }),
        ).toEqual([]);
    });

    it('touch only what differs', () => {
        expect(difference('a b c', 'a x c')).toEqual({ start: 2, end: 3, text: 'x' });
        expect(difference('aa', 'aaa')).toEqual({ start: 2, end: 2, text: 'a' });
        expect(difference('aaa', 'aa')).toEqual({ start: 2, end: 3, text: '' });
    });
});
