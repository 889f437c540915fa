// @ts-check
// Checks a plan with the files it uses, and leaves the compiled plan and a picture of its first cover in a folder.
//   node check-and-draw.mjs PLAN FOLDER
import { mkdirSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { compile, draw, parse, Places } from 'underliner-language';
import { DiskFiles, pathInside, workspaceOf } from 'underliner-language/node';

const [plan = '', folder = '.'] = process.argv.slice(2);

// Nothing outside the workspace is read, whatever a plan asks for.
const root = workspaceOf(plan, process.cwd());
const files = new DiskFiles(root);
const file = pathInside(root, resolve(plan)) ?? '';

const found = files.read(file);
if (found.state !== 'read') {
    console.error(`${plan} can’t be read.`);
    process.exit(2);
}
// A text alone, without the files it uses: what it says, as plain data.
const { events, menus } = parse(file, found.text);
console.log(`${events[0]?.title ?? 'No event'}, ${menus[0]?.courses.length ?? 0} courses.`);

// The whole plan; `text` is absent where findings of error severity stand in the way.
const { checked, text } = compile(file, files);
const places = new Places(checked.texts);
for (const { at, severity, message, hint } of checked.findings) {
    console.log(`${places.at(at)}: ${severity}: ${message}${hint ? ` ${hint}` : ''}`);
}
if (text === undefined) {
    process.exit(1);
}
const name = basename(plan, '.cover');
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, `${name}.plan.json`), text);
writeFileSync(join(folder, `${name}.svg`), draw(checked, { of: 'cover' }) ?? '');
