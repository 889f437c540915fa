import morphdom from 'morphdom';
import type { FromPage, ToPage } from '../messages.js';

// The script of a panel's page. It shows what it is given, tells what is chosen, and knows nothing of plans.

declare function acquireVsCodeApi(): { postMessage(message: FromPage): void; setState(state: unknown): void };

const editor = acquireVsCodeApi();
const page = document.getElementById('page')!;
const say = (message: FromPage): void => editor.postMessage(message);

// ---------------------------------------------------------------- what is said to the page
window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
    switch (data.sort) {
        case 'content':
            show(data.html);
            page.classList.toggle('is-stale', data.isStale);
            editor.setState(data.state);
            break;
        case 'silence':
            document.getElementById('silence')!.textContent = data.words;
            page.classList.add('is-stale');
            break;
        case 'nothing':
            show('<p class="missing"></p>');
            page.querySelector('.missing')!.textContent = data.words;
            page.classList.remove('is-stale');
            break;
        case 'light':
            light(data.places);
            break;
    }
});

/** Changes what is other than before, so that focus, scrolling and a control in use stay as they are. */
function show(html: string): void {
    const next = new DOMParser().parseFromString(`<main id="page">${html}</main>`, 'text/html').getElementById('page')!;
    next.className = page.className;
    morphdom(page, next, {
        onBeforeElUpdated(from, to) {
            if (from === document.activeElement && from instanceof HTMLInputElement && from.type === 'range') {
                (to as HTMLInputElement).value = from.value;
            }
            return !from.isEqualNode(to);
        },
    });
    document.getElementById('silence')!.textContent = '';
    tellWidth();
}

/** A picture that is to be in sight whole is drawn as wide as there is room, in steps, so that its words are readable. */
function tellWidth(): void {
    const whole = page.querySelector('[data-width]');
    // Beside the page's edges and a bar to scroll it, which comes and goes.
    const room = window.innerWidth - 50;
    const width = String(Math.max(STEP, Math.floor(room / STEP) * STEP));
    if (whole && whole.getAttribute('data-width') !== width) {
        say({ sort: 'choose', name: 'width', value: width });
    }
}
const STEP = 50;
window.addEventListener('resize', tellWidth);

function light(places: readonly number[]): void {
    for (const part of page.querySelectorAll('[data-at]')) {
        part.classList.toggle('lit', places.includes(placeOf(part)));
    }
}

// ---------------------------------------------------------------- what is done in the page
const placeOf = (part: Element): number => Number(part.getAttribute('data-at'));
const within = (event: Event, selector: string): Element | null =>
    event.target instanceof Element ? event.target.closest(selector) : null;

function choose(control: Element, value: string): void {
    say({ sort: 'choose', name: control.getAttribute('data-choice')!, value });
}

page.addEventListener('click', (event) => {
    const part = within(event, 'button[data-choice], [data-copy], [data-at]');
    if (part?.hasAttribute('data-value')) {
        choose(part, part.getAttribute('data-value')!);
    } else if (part?.hasAttribute('data-copy')) {
        say({ sort: 'copy' });
    } else if (part) {
        say({ sort: 'go', place: placeOf(part) });
    }
});

page.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLInputElement) {
        choose(target, target.type === 'checkbox' ? (target.checked ? 'on' : '') : target.value);
    } else if (target instanceof HTMLSelectElement) {
        choose(target, target.value);
    }
});

/** The keys that buttons name. */
document.addEventListener('keydown', (event) => {
    const isPlain = !event.ctrlKey && !event.altKey && !event.metaKey;
    if (isPlain && !within(event, 'select')) {
        const named = [...page.querySelectorAll<HTMLElement>('[aria-keyshortcuts]')];
        const meant = named.find((button) => button.getAttribute('aria-keyshortcuts') === event.key);
        meant?.click();
    }
});

/** What a part shows: of pieces, tables and people that are written at one place, which one. */
function thingOf(part: Element): string {
    const names = [...THINGS, ...(part.hasAttribute('data-course') ? [] : ['data-lane'])];
    return names.map((name) => part.getAttribute(name) ?? '').join(' ');
}
const THINGS = ['data-at', 'data-piece', 'data-table'];

/** Points at every part of a thing, in the picture and in words, and names it. */
function point(event: Event): void {
    const part = within(event, '[data-at]');
    const thing = part && thingOf(part);
    for (const other of page.querySelectorAll('[data-at]')) {
        other.classList.toggle('pointed', thing !== null && thingOf(other) === thing);
    }
    const named = page.querySelector('[data-named]');
    const name = part?.querySelector('title')?.textContent;
    if (named && name) {
        named.textContent = name;
    }
}
page.addEventListener('pointerover', point);
page.addEventListener('focusin', point);

say({ sort: 'ready' });
