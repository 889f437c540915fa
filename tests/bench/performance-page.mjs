import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';

const path = fileURLToPath(new URL('../../docs/performance.md', import.meta.url));

/** Puts a section in the place of the one with the same title in docs/performance.md, or behind all others. */
export async function writeSection(title, text) {
    const [head, ...sections] = readFileSync(path, 'utf8').split(/^(?=## )/m);
    const section = `## ${title}\n\n${text.trim()}\n`;
    const known = sections.findIndex((each) => each.startsWith(`## ${title}\n`));
    sections.splice(known < 0 ? sections.length : known, 1, section);
    const page = [head, ...sections].map((each) => each.trim()).join('\n\n');
    writeFileSync(path, await format(page, { ...(await resolveConfig(path)), filepath: path }));
}
