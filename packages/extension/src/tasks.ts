import type { Disposable } from 'vscode';
import { ShellExecution, Task, tasks, TaskGroup, TaskScope, workspace, type WorkspaceFolder } from 'vscode';

const TYPE = 'underliner';

/** What the definition in the manifest lets a task say. */
interface Definition {
    readonly type: string;
    readonly verb: string;
    readonly path?: string;
}

const WORDS: Readonly<Record<string, readonly string[]>> = { check: ['check'], format: ['format', '--check'] };

/** `underliner check` and `underliner format --check` as tasks, where the command is on the machine's path. */
export function provideTasks(): Disposable {
    return tasks.registerTaskProvider(TYPE, {
        provideTasks: () =>
            (workspace.workspaceFolders ?? []).flatMap((folder) =>
                Object.keys(WORDS).flatMap((verb) => taskOf({ type: TYPE, verb }, folder) ?? []),
            ),
        resolveTask: ({ definition, scope }) =>
            taskOf(definition as Definition, typeof scope === 'object' ? scope : undefined),
    });
}

function taskOf(definition: Definition, folder: WorkspaceFolder | undefined): Task | undefined {
    const words = WORDS[definition.verb];
    if (!words) {
        return undefined;
    }
    const run = new ShellExecution('underliner', [...words, definition.path ?? '.']);
    const name = [definition.verb, definition.path].filter((part) => part !== undefined).join(' ');
    const task = new Task(definition, folder ?? TaskScope.Workspace, name, TYPE, run, '$underliner');
    task.group = TaskGroup.Test;
    return task;
}
