import { describe, expect, it } from 'vitest';
import { CancellationTokenSource, type Connection } from 'vscode-languageserver';
import type { Disk } from './disk.js';
import { FEW_FILES, readFolders } from './first-reading.js';
import { Workspace } from './workspace.js';

const HALL = 'file:///hall';

/** A folder of so many plans, a client that shows progress, and what it is told. */
function reading(files: number, stopAt?: number) {
    const told: string[] = [];
    const source = new CancellationTokenSource();
    const progress = {
        token: source.token,
        begin: (title: string) => told.push(title),
        report: (percent: number, message: string) => {
            told.push(`${percent} %, ${message}`);
            if (stopAt !== undefined && percent >= stopAt) {
                setImmediate(() => source.cancel());
            }
        },
        done: () => told.push('done'),
    };
    const connection = {
        window: {
            createWorkDoneProgress: () => Promise.resolve(progress),
            showWarningMessage: (message: string) => told.push(message),
        },
        console: { error: (message: string) => told.push(`error: ${message}`) },
    } as unknown as Connection;
    const paths = Array.from({ length: files }, (_, index) => `plan-${index}.cover`);
    const disk: Disk = {
        list: () => Promise.resolve(paths),
        read: () => Promise.resolve({ state: 'read', text: 'menu { }\n' }),
    };
    const workspace = new Workspace(disk);
    return { told, workspace, read: readFolders([HALL], workspace, connection) };
}

describe('the first reading of a folder', () => {
    it('tells how far it is where there are many plans', async () => {
        const { told, workspace, read } = reading(200);
        await read;
        expect(workspace.all[0]!.plans).toHaveLength(200);
        expect(told).toEqual([
            'Reading the plans',
            '25 %, 50 of 200',
            '50 %, 100 of 200',
            '75 %, 150 of 200',
            '100 %, 200 of 200',
            'done',
        ]);
    });

    it('tells nothing where there are few', async () => {
        const { told, workspace, read } = reading(FEW_FILES);
        await read;
        expect(workspace.all[0]!.plans).toHaveLength(FEW_FILES);
        expect(told).toEqual([]);
    });

    it('can be stopped, and says what that leaves out', async () => {
        const { told, workspace, read } = reading(200, 50);
        await read;
        expect(told.slice(-2)).toEqual(['done', expect.stringMatching(/^1[05]0 of 200 plans were read\. /)]);
        expect(workspace.all[0]!.plans.length).toBeLessThan(200);
    });

    it('goes no further in a folder that has left', async () => {
        const { workspace, read } = reading(200);
        const [folder] = workspace.all;
        await new Promise(setImmediate);
        workspace.removeFolder(HALL);
        await read;
        expect(folder!.plans.length).toBeLessThan(200);
        expect(workspace.all).toEqual([]);
    });
});
