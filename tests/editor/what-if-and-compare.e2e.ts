import { spawnSync } from 'node:child_process';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { EditorWindow } from './support/editor-window.js';
import { Workbench } from './support/workbench.js';

// The two questions that come late: what if, and what has changed since the team was told.

let workbench: Workbench;
let folder: string;
let window: EditorWindow;
beforeAll(async () => {
    workbench = await Workbench.start({ 'git.openRepositoryInParentFolders': 'never' });
});
afterAll(() => workbench.stop());
beforeEach(async () => {
    folder = workbench.folder();
    for (const words of [
        ['init', '--quiet'],
        ['add', '.'],
        ['commit', '--quiet', '-m', 'What the team knows'],
    ]) {
        const author = ['-c', 'user.name=Chef', '-c', 'user.email=chef@saltmarsh.example'];
        expect(spawnSync('git', [...author, ...words], { cwd: folder }).status, words.join(' ')).toBe(0);
    }
    window = await EditorWindow.open(workbench.address(folder));
    await window.openFile('supper.cover');
    await window.ready();
});
afterEach(async ({ task }) => {
    await window.picture(`what if, ${task.name}`);
    await window.close();
});

describe('the late questions', () => {
    it('other figures are asked for one by one and answered beside the plan', async () => {
        await window.run('Underliner: What If…');
        await window.fillIn('What comes out otherwise than planned?', 'Guests expected');
        await window.answer('The plan says 24', '31');
        await window.fillIn('What comes out otherwise than planned?', 'Show what changes');
        await expect.poll(() => window.wordsInFrames()).toContain('Guests expected: 31 (planned: 24)');
        expect(await window.wordsInFrames()).toContain('7 more covers, 31 in all.');
        expect(await window.text()).toContain('guests 24');
    });

    it('what changed since the last commit is told for people, saved or not', async () => {
        await window.replace('guests 24', 'guests 31');
        await window.run('Underliner: Compare with the Last Commit');
        await expect.poll(() => window.wordsInFrames()).toContain('what changed since the last commit');
        expect(await window.wordsInFrames()).toContain('7 more covers, 31 in all.');
    });
});
