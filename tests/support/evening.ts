import { check, filesInMemory, planJson } from 'underliner-language';

// A small evening for checks against published rows: customs, a menu of a few courses, and the compiled plan read back.

export interface Evening {
    /** Customs of the house, as written inside `laying { … }`. */
    readonly laying?: string;
    readonly menu: string;
    /** Local code of the event. */
    readonly code?: string;
    /** Guests, with their rows. */
    readonly guests?: string;
    /** Other files that the evening reads, by name. */
    readonly files?: Readonly<Record<string, string>>;
}

/** What lies at the one cover of the evening, by names of pieces, and what happens there. */
export interface Place {
    readonly rules: readonly string[];
    readonly messages: readonly string[];
    readonly left: readonly string[];
    readonly right: readonly string[];
    readonly above: readonly string[];
    readonly glasses: readonly string[];
    readonly brought: readonly string[];
    readonly saucer: readonly string[];
    readonly napkin: string;
    readonly breadPlate?: string;
    readonly servicePlate?: string;
    readonly steps: readonly PlaceStep[];
}

export interface PlaceStep {
    readonly sort: string;
    readonly title: string;
    readonly brought: readonly string[];
    readonly used: readonly string[];
    readonly cleared: readonly string[];
    readonly standing: readonly string[];
    readonly bare: boolean;
}

interface Named {
    readonly piece: string;
}

interface CompiledCover {
    readonly left: readonly Named[];
    readonly right: readonly Named[];
    readonly above: readonly Named[];
    readonly glasses: readonly Named[];
    readonly brought: readonly Named[];
    readonly saucer: readonly Named[];
    readonly napkin: string;
    readonly breadPlate?: Named;
    readonly servicePlate?: string;
}

interface Contained {
    readonly name: string;
    readonly called: string;
    readonly requiredByCode: boolean;
}

interface Compiled {
    readonly service: {
        readonly covers: readonly { readonly cover: CompiledCover; readonly steps: readonly PlaceStep[] }[];
    };
    readonly menu: { readonly courses: readonly { readonly dishes: readonly { readonly contains: Contained[] }[] }[] };
}

function compiled({ laying = '', menu, code = 'us-model', guests = '8', files = {} }: Evening) {
    const text = `house "Saltmarsh Hall" { laying { ${laying} } }
event "Lantern supper" { date 2026-10-17  zone America/New_York  seated 19:00  guests ${guests}  local code ${code} }
menu {
${menu}
}
`;
    const checked = check('supper.cover', filesInMemory({ ...files, 'supper.cover': text }));
    const unread = checked.findings.filter(({ rule }) => rule === 'unreadable-text' || rule === 'unknown-name');
    if (checked.broken.length > 0 || unread.length > 0) {
        throw new Error(unread.map(({ message }) => message).join('\n') || 'A rule broke.');
    }
    return { checked, plan: planJson(checked) as unknown as Compiled };
}

/** The one cover of an evening without a choice of dishes. */
export function place(evening: Evening): Place {
    const { checked, plan } = compiled(evening);
    const [variation] = plan.service.covers;
    const { cover, steps } = variation!;
    const names = (pieces: readonly Named[]) => pieces.map(({ piece }) => piece);
    return {
        rules: checked.findings.map(({ rule }) => rule),
        messages: checked.findings.map(({ message, hint = '' }) => `${message} ${hint}`),
        left: names(cover.left),
        right: names(cover.right),
        above: names(cover.above),
        glasses: names(cover.glasses),
        brought: names(cover.brought),
        saucer: names(cover.saucer),
        napkin: cover.napkin,
        breadPlate: cover.breadPlate?.piece,
        servicePlate: cover.servicePlate,
        steps,
    };
}

/** What the first dish contains, in the words of the local code. */
export function contents(evening: Evening): readonly Contained[] {
    return compiled(evening).plan.menu.courses[0]!.dishes[0]!.contains;
}

/** A course of a kind, its title the kind's name, with `clauses` besides what each course needs. */
export function course(kind: string, clauses = '', title = kind): string {
    return `course ${kind} "${title}" { lasts 15 min  contains nothing  ${clauses} }`;
}

/** The step of this title; the test fails where there is none. */
export function stepOf({ steps }: Place, title: string): PlaceStep {
    const step = steps.find((each) => each.title === title);
    if (!step) {
        throw new Error(`No step "${title}" among ${steps.map((each) => each.title).join(', ')}.`);
    }
    return step;
}
