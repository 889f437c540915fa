import type { Plan, Waiver } from '../plan/types.js';
import type { Finding } from '../rules/rule.js';
import type { Service } from '../service/types.js';
import { Places } from './places.js';
import { eventJson, houseJson, roomJson, tasksJson, teamJson } from './plan-house.js';
import { menuJson, type Telling } from './plan-menu.js';
import { recipesJson } from './plan-recipes.js';
import { serviceJson } from './plan-service.js';
import { at, type Json } from './plan-values.js';

/** Names the schema that ships with the package, `schema/plan.schema.json`. Not as `$schema`, which editors would fetch: the domain is reserved. */
export const PLAN_SCHEMA = 'https://underliner.example/schema/plan-1.json';

/** What a plan is compiled from: the result of `check`. */
export interface Compilable {
    readonly file: string;
    readonly plan: Plan;
    readonly service: Service;
    readonly findings: readonly Finding[];
    readonly texts: ReadonlyMap<string, string>;
}

/** Printed with every plan: the figures help to plan, and never decide. */
const CAUTIONS = [
    'Figures are planning estimates. A calibrated thermometer, the local food code and licensed staff decide.',
    'Allergens: ask the guest, check every label, and keep preparation apart. Traces through contact are not computed.',
    'Who may be served alcohol, and how much, is for the local law and licensed staff.',
];

/**
 * The compiled service plan as JSON values: everything the texts say and everything computed from it, in a fixed order of keys.
 * The same texts give the same values, wherever and whenever they are compiled.
 * @param despiteErrors marks the plan as made in spite of findings of error severity
 */
export function planJson(checked: Compilable, despiteErrors = false): Json {
    // Members that are absent are left out, here as in the text.
    return JSON.parse(JSON.stringify(planWithGaps(checked, despiteErrors))) as Json;
}

/** The compiled plan as text: four spaces, one final newline. */
export function planText(checked: Compilable, despiteErrors = false): string {
    return `${JSON.stringify(planWithGaps(checked, despiteErrors), undefined, 4)}\n`;
}

/** The plan with `undefined` for each member that is absent. */
function planWithGaps(checked: Compilable, despiteErrors: boolean) {
    const { plan, service, texts, findings, file } = checked;
    const telling: Telling = { plan, service, places: new Places(texts) };
    return {
        schema: PLAN_SCHEMA,
        file,
        files: plan.readings.map((reading) => reading.file),
        despiteErrors: despiteErrors || undefined,
        event: plan.event && eventJson(telling, plan.event),
        menu: menuJson(telling),
        service: serviceJson(telling),
        house: houseJson(telling, plan.house),
        room: plan.room && roomJson(telling, plan.room),
        team: plan.team && teamJson(telling, plan.team),
        tasks: tasksJson(telling),
        recipes: recipesJson(telling),
        findings: findings.map((finding) => findingJson(telling.places, finding)),
        waivers: plan.waivers.map((waiver) => waiverJson(telling.places, waiver)),
        ruleSettings: plan.house.settings.map((setting) => ({
            rule: setting.rule.name,
            is: setting.level,
            because: setting.reason?.text,
            ...at(telling.places, setting.origin),
        })),
        cautions: CAUTIONS,
    };
}

function findingJson(places: Places, finding: Finding): Json {
    return {
        rule: finding.rule,
        severity: finding.severity,
        ...at(places, finding.at),
        message: finding.message,
        hint: finding.hint,
        fixes: finding.fixes.map((fix) => ({ title: fix.title, safety: fix.safety })),
    };
}

function waiverJson(places: Places, waiver: Waiver): Json {
    return { rule: waiver.rule.name, because: waiver.reason?.text, ...at(places, waiver.origin) };
}
