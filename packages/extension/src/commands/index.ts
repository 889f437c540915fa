import { commands, Disposable, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { restart } from '../crashes.js';
import { rulePage } from '../virtual-texts.js';
import { giveReason } from './because.js';
import { compareWithLastCommit } from './compare.js';
import { compilePlan } from './compile.js';
import { formatFolder } from './format-folder.js';
import { beginEvent } from './new-event.js';
import { planInSight } from './plan-in-sight.js';
import { askWhatIf } from './what-if.js';

/** The commands of the manifest. An address comes from the explorer or an editor's title; else the editor in sight counts. */
export function registerCommands(client: BaseLanguageClient): Disposable {
    const register = (name: string, run: (argument: unknown) => unknown): Disposable =>
        commands.registerCommand(`underliner.${name}`, run);
    const ofPlan =
        (run: (client: BaseLanguageClient, plan: Uri) => Promise<void>) =>
        async (at: unknown): Promise<void> => {
            const plan = asUri(at) ?? planInSight();
            await (plan ? run(client, plan) : window.showInformationMessage('Open the file of an event first.'));
        };
    return Disposable.from(
        register('newEvent', (at) => beginEvent(client, asUri(at))),
        register('compile', ofPlan(compilePlan)),
        register('whatIf', ofPlan(askWhatIf)),
        register('compareWithLastCommit', ofPlan(compareWithLastCommit)),
        register('formatFolder', (at) => formatFolder(client, asUri(at))),
        register('explainRule', (id) =>
            typeof id === 'string' ? commands.executeCommand('markdown.showPreview', rulePage(id)) : undefined,
        ),
        register('because', (silencing) => giveReason(client, silencing)),
        register('restart', () => restart(client)),
        register('showLog', () => client.outputChannel.show()),
    );
}

function asUri(argument: unknown): Uri | undefined {
    return argument instanceof Uri ? argument : undefined;
}
