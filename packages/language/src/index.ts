/** The language without an editor: read, check, compile, explain. Everything here runs in Node and in a browser. */

export { check, type Checked, type CheckOptions } from './check.js';
export { compile, type Compiled, type CompileOptions } from './compile.js';
export { explain, explainInMarkdown } from './explain.js';
export { filesInMemory, resolvePath, type Files, type FileText } from './plan/files.js';
export { PLAN_SCHEMA, planJson, planText } from './output/plan-json.js';
export { compare } from './output/comparison/compare.js';
export type { Change, Compared, Subject } from './output/comparison/change.js';
export { tellChanges, tellChangesInMarkdown } from './output/comparison/tell.js';
export type { Origin } from './plan/origin.js';
export type { Plan, Severity } from './plan/types.js';
export { toComputing } from './plan/quantity.js';
export { readText } from './plan/read-text.js';
export { ruleById, rules } from './rules/index.js';
export { nearest } from './rules/nearest.js';
export { GROUP_SEVERITY, type Finding, type Report, type Rule } from './rules/rule.js';
export type { Fix, Intention } from './rules/fixes.js';
export { whatIf, type Otherwise, type WhatIf } from './what-if.js';
export { batchesOf, scaleRecipe, type Batch, type BatchDish } from './service/recipes/batches.js';
export { factorForPortions, factorForStock } from './service/recipes/factor.js';
export type { ScaledIngredient } from './service/recipes/scale.js';
export type { Service } from './service/types.js';
