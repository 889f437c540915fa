import { cpSync, existsSync, mkdirSync, mkdtempSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc, { type GeneratorValue } from 'fast-check';
import { afterEach, expect, it } from 'vitest';
import { Talk } from '../support/talk.js';

// Whatever is done to texts, files and folders, in whatever order: in the end the server says what a new one would say.

const hall = fileURLToPath(new URL('hall', import.meta.url));
const SCRIPTS = process.env.SLOW ? 200 : 8;

/** Workspace folders; the second comes and goes. */
const [FIRST, SECOND] = ['hall', 'inn'];
const CREATED = 1;
const CHANGED = 2;
const DELETED = 3;

const WORDS = [
    'soup',
    'course fish {',
    '}',
    '{',
    '"',
    '12',
    ' 64 °C',
    'milk',
    '\n',
    '\r\n',
    '👩🏽‍🍳',
    'e\u0301',
    '// ',
    '/*',
];

const root = (): string => realpathSync(mkdtempSync(join(tmpdir(), 'underliner-incremental-')));
const cleanUp: (() => void)[] = [];
afterEach(() => cleanUp.splice(0).forEach((clean) => clean()));

/** One editor, its disk and what it has open. */
class Editor {
    private readonly open = new Set<string>();
    private isSecondOpen = false;
    /** What was done, for the message of a script that fails. */
    readonly done: string[] = [];

    private constructor(
        private readonly folder: string,
        private readonly talk: Talk,
    ) {}

    static async start(): Promise<Editor> {
        const folder = root();
        for (const each of [FIRST, SECOND]) {
            cpSync(hall, join(folder, each), { recursive: true });
        }
        const { talk } = await Talk.start(folder, [FIRST]);
        cleanUp.push(() => {
            talk.kill();
            rmSync(folder, { recursive: true });
        });
        return new Editor(folder, talk);
    }

    private files(): string[] {
        return readdirSync(this.folder, { recursive: true, encoding: 'utf8' })
            .filter((path) => path.endsWith('.cover') || path.endsWith('.md'))
            .sort();
    }

    private read(path: string): string {
        return readFileSync(join(this.folder, path), 'utf8');
    }

    private write(path: string, text: string): Promise<void> {
        const isNew = !existsSync(join(this.folder, path));
        mkdirSync(dirname(join(this.folder, path)), { recursive: true });
        writeFileSync(join(this.folder, path), text);
        return this.watched(path, isNew ? CREATED : CHANGED);
    }

    private watched(path: string, type: number): Promise<void> {
        return this.talk.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: this.talk.uri(path), type }] });
    }

    /** Does one thing that may happen in an editor. */
    async step(choose: GeneratorValue): Promise<void> {
        const oneOf = <Item>(items: readonly Item[]): Item | undefined =>
            items[choose(fc.nat, { max: Math.max(0, items.length - 1) })];
        const plans = this.files().filter((path) => path.endsWith('.cover'));
        const closed = plans.filter((path) => !this.open.has(path));
        const plan = oneOf(plans);
        const opened = oneOf([...this.open]);
        const toOpen = oneOf(closed);
        const anyFile = oneOf(this.files());
        const things: Readonly<Record<string, (() => Promise<void>) | false | undefined>> = {
            [`open ${toOpen}`]:
                toOpen !== undefined &&
                (async () => {
                    this.open.add(toOpen);
                    await this.talk.open(toOpen);
                }),
            [`type in ${opened}`]: opened !== undefined && (() => this.type(opened, choose)),
            [`type more in ${opened}`]: opened !== undefined && (() => this.type(opened, choose)),
            [`close ${opened} without saving`]:
                opened !== undefined &&
                (async () => {
                    this.open.delete(opened);
                    await this.talk.close(opened);
                }),
            [`save ${opened}`]: opened !== undefined && (() => this.write(opened, this.talk.text(opened))),
            [`change ${plan} from outside`]:
                plan !== undefined && (() => this.write(plan, edited(this.read(plan), choose).text)),
            [`delete ${anyFile}`]:
                anyFile !== undefined &&
                (async () => {
                    rmSync(join(this.folder, anyFile));
                    await this.watched(anyFile, DELETED);
                }),
            [`rename ${plan}`]:
                plan !== undefined &&
                (async () => {
                    const other = join(dirname(plan), oneOf(['supper.cover', 'house.cover', 'fête.cover'])!);
                    renameSync(join(this.folder, plan), join(this.folder, other));
                    await this.watched(plan, DELETED);
                    await this.watched(other, CREATED);
                }),
            'put the files of the first day back': async () => {
                const folder = oneOf([FIRST, SECOND])!;
                for (const path of ['cupboard.cover', 'house.cover', 'supper.cover', 'recipes/smoked-beet.md']) {
                    await this.write(join(folder, path), readFileSync(join(hall, path), 'utf8'));
                }
            },
            [this.isSecondOpen ? 'remove a folder' : 'add a folder']: async () => {
                this.isSecondOpen = !this.isSecondOpen;
                const second = [{ uri: this.talk.uri(SECOND), name: SECOND }];
                await this.talk.notify('workspace/didChangeWorkspaceFolders', {
                    event: { added: this.isSecondOpen ? second : [], removed: this.isSecondOpen ? [] : second },
                });
            },
        };
        const possible = Object.entries(things).flatMap(([name, run]) => (run ? [{ name, run }] : []));
        const { name, run } = oneOf(possible)!;
        this.done.push(name);
        await run();
    }

    private async type(path: string, choose: GeneratorValue): Promise<void> {
        const { from, to, by } = edited(this.talk.text(path), choose);
        this.done.push(`  ${from} to ${to}: ${JSON.stringify(by)}`);
        await this.talk.change(path, from, to, by);
    }

    /** A new server that is given the same folders and the same open texts. */
    async another(): Promise<Editor> {
        const { talk } = await Talk.start(this.folder, this.isSecondOpen ? [FIRST, SECOND] : [FIRST]);
        cleanUp.push(() => talk.kill());
        const other = new Editor(this.folder, talk);
        for (const path of this.open) {
            other.open.add(path);
            await talk.open(path, this.talk.text(path));
        }
        return other;
    }

    /** All that is said of all texts, by file; versions aside, which count what was done. */
    async said(): Promise<unknown> {
        const files = [...new Set([...this.files().filter((path) => path.endsWith('.cover')), ...this.open])].sort();
        const answers: Record<string, unknown> = {};
        for (const path of files) {
            const uri = this.talk.uri(path);
            answers[path] = {
                symbols: await this.talk.ask('textDocument/documentSymbol', path),
                compiled: await this.talk.request('underliner/compile', { uri }),
            };
        }
        const found = this.talk.everyFinding().sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
        return { found, answers };
    }
}

/** A text with one place changed. */
function edited(text: string, choose: GeneratorValue) {
    // As an editor edits: never within a character of two halves, or between the two parts of a line end.
    const places = [...new Intl.Segmenter('en').segment(text)].map(({ index }) => index).concat(text.length);
    const at = choose(fc.nat, { max: places.length - 1 });
    const from = places[at]!;
    const to = places[Math.min(places.length - 1, at + choose(fc.nat, { max: 12 }))]!;
    const by = [...WORDS, '', text.slice(from, to).repeat(2)][choose(fc.nat, { max: WORDS.length + 1 })]!;
    return { from, to, by, text: text.slice(0, from) + by + text.slice(to) };
}

/** Findings come by themselves: they are awaited, and must then stay. */
async function expectSame(editor: Editor, fresh: Editor): Promise<void> {
    const end = performance.now() + 30_000;
    let quiet = 0;
    let last = ['', ''];
    while (quiet < 3) {
        const [said, wanted] = [JSON.stringify(await editor.said()), JSON.stringify(await fresh.said())];
        const isSame = said === wanted;
        quiet = isSame && last[0] === said && last[1] === wanted ? quiet + 1 : isSame ? 1 : 0;
        last = [said, wanted];
        if (!isSame && performance.now() > end) {
            expect(JSON.parse(said), editor.done.join('\n')).toEqual(JSON.parse(wanted));
        }
        await new Promise((resolve) => setTimeout(resolve, 30));
    }
}

it('says after any script of edits what a new server says of the texts it left', async () => {
    await fc.assert(
        fc.asyncProperty(fc.gen(), async (choose) => {
            const editor = await Editor.start();
            try {
                const steps = choose(fc.integer, { min: 5, max: 25 });
                for (let step = 0; step < steps; step++) {
                    await editor.step(choose);
                }
                await expectSame(editor, await editor.another());
            } finally {
                cleanUp.splice(0).forEach((clean) => clean());
            }
        }),
        // Shrinking would start two servers for each of very many scripts; what was done is told instead.
        { numRuns: SCRIPTS, seed: 20261017, endOnFailure: true },
    );
}, 600_000);
