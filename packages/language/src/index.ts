/**
 * The language without an editor: parse, check, compile, draw, and what stands around them. Everything here is pure: it runs in
 * Node and in a browser, keeps no state, and gives the same values for the same texts. Nothing throws for what a text says.
 */

// ---------------------------------------------------------------- parse, check, compile, draw
export { parse } from './parse.js';
export { check, type Checked, type CheckOptions } from './check.js';
export { compile, type Compiled, type CompileOptions } from './compile.js';
export { draw, drawEvening, type Picture } from './draw.js';
export type { DrawnEvening } from './output/drawing/draw-evening.js';

// ---------------------------------------------------------------- files
export { filesInMemory, resolvePath, type Files, type FileText } from './plan/files.js';

// ---------------------------------------------------------------- findings and rules
export { GROUP_SEVERITY, type Finding, type Related, type Rule, type RuleGroup } from './rules/rule.js';
export { surestFix, type Fix, type Intention, type Safety } from './rules/fixes.js';
export { ruleById, rules } from './rules/index.js';
export { explain, explainInMarkdown } from './explain.js';
export { nearest } from './rules/nearest.js';

// ---------------------------------------------------------------- the plan and what is derived from it
export type { Reading, Plan, Severity } from './plan/types.js';
export type { Service } from './service/types.js';
export type { Origin } from './plan/origin.js';
export { Places } from './output/places.js';
export type { UnitName } from './plan/quantity.js';
export { readCelsius, readMinutes } from './plan/read-written.js';
/** Every type of the resolved plan: `PlanTypes.Course`. */
export type * as PlanTypes from './plan/types.js';
/** Every type of the cupboard: `CupboardTypes.Piece`. */
export type * as CupboardTypes from './plan/cupboard.js';
/** Every type of what is derived: `ServiceTypes.Cover`. */
export type * as ServiceTypes from './service/types.js';

// ---------------------------------------------------------------- the compiled plan
export { PLAN_SCHEMA, planJson, planText, type Compilable } from './output/plan-json.js';

// ---------------------------------------------------------------- sheets
export { sheets, type SheetFile, type SheetOptions } from './sheets.js';
export { SHEET_NAMES, type SheetName } from './output/sheets/sheet-names.js';
export { PAPERS, type Paper } from './output/sheets/paper.js';
export { footText, SHORT_TABLE } from './output/sheets/sheet.js';
/** Every type of what stands on a sheet: `SheetTypes.Table`. */
export type * as SheetTypes from './output/sheets/sheet.js';

// ---------------------------------------------------------------- lists
export { listOf, listText, type ListOptions } from './list.js';
export type { List, ListCell, ListColumn } from './output/lists/list.js';
export { LIST_FORMATS, LIST_NAMES, type ListFormat, type ListName } from './output/lists/list-names.js';
export { LIST_SCHEMA } from './output/lists/json.js';

// ---------------------------------------------------------------- calendar
export { calendar, type Calendar, type CalendarOptions } from './calendar.js';

// ---------------------------------------------------------------- otherwise
export { whatIf, type Otherwise, type WhatIf } from './what-if.js';
export { compare } from './output/comparison/compare.js';
export type { Change, Compared, Subject } from './output/comparison/change.js';
export { restOfEvening, tellCalls, tellCallsInMarkdown, type Call } from './output/comparison/rest-of-evening.js';
export { tellChanges, tellChangesInMarkdown } from './output/comparison/tell.js';

// ---------------------------------------------------------------- recipes
export { batchesOf, scaleRecipe, type Batch, type BatchDish } from './service/recipes/batches.js';
export { factorForPortions, factorForStock } from './service/recipes/factor.js';
export type { ScaledIngredient } from './service/recipes/scale.js';
export type { Ingredient, RecipeFacts } from './plan/recipe.js';
export type { Amount } from './plan/kitchen-measures.js';
