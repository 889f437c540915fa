// docs/pictures: the covers and the evening that the pages show, drawn by the language from the examples themselves.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadSource } from './load-source.mjs';

/** Example, variation, and whether the picture shows it as its first fix leaves it. */
const PICTURES = [
    { name: 'first-plan-cover', file: 'examples/first-plan.cover', isFixed: true },
    { name: 'lantern-supper-cover', file: 'examples/saltmarsh-hall/lantern-supper.cover' },
    { name: 'mess-night-cover', file: 'examples/saltmarsh-hall/mess-night.cover' },
    { name: 'summer-lunch-evening', file: 'examples/saltmarsh-hall/summer-lunch.cover', isEvening: true },
];

export const pictures = {
    name: 'pictures',
    async outputs({ root }) {
        const { check, coverPicture, drawEvening, firstFixOf } = await loadSource(
            'packages/language/tools/pictures-source.ts',
        );
        const read = (path) => {
            try {
                return { state: 'read', text: readFileSync(join(root, path), 'utf8') };
            } catch {
                return { state: 'missing' };
            }
        };
        return PICTURES.map(({ name, file, isFixed, isEvening }) => {
            const written = check(file, { read });
            const checked = isFixed ? check(file, firstFixOf(written, { read })) : written;
            const text = isEvening
                ? drawEvening(checked).drawing
                : coverPicture(checked, checked.service.variations[0]);
            return { path: `docs/pictures/${name}.svg`, text, isCommitted: true };
        });
    },
};
