// A page that checks a plan while it is typed, and draws its first cover. Bundle it with
//   esbuild page.ts --bundle --format=iife --outfile=page.js
import { check, draw, filesInMemory, parse, Places, planText } from 'underliner-language';

const editor = document.querySelector<HTMLTextAreaElement>('#plan')!;
const event = document.querySelector<HTMLElement>('#event')!;
const findings = document.querySelector<HTMLElement>('#findings')!;
const picture = document.querySelector<HTMLElement>('#picture')!;
const compiled = document.querySelector<HTMLElement>('#compiled')!;

/** A file the plan uses is one more text in memory. */
const HOUSE = 'house "Saltmarsh Hall" { laying { limit: 3 per side   dessert: above } }';

function show(): void {
    const files = filesInMemory({ 'plan.cover': editor.value, 'house.cover': HOUSE });
    event.textContent = parse('plan.cover', editor.value).events[0]?.title ?? 'No event yet';

    const checked = check('plan.cover', files);
    const places = new Places(checked.texts);
    findings.replaceChildren(
        ...checked.findings.map(({ at, severity, message }) => {
            const line = document.createElement('li');
            line.textContent = `${places.at(at)}: ${severity}: ${message}`;
            return line;
        }),
    );
    // The words in the picture are escaped where it is made.
    picture.innerHTML = draw(checked, { of: 'cover' }) ?? '';
    compiled.textContent = planText(checked);
}

editor.addEventListener('input', show);
show();
