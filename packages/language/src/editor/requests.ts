import type { WorkspaceEdit } from 'vscode-languageserver';
import type { FileText } from '../plan/files.js';
import type { Severity } from '../plan/types.js';

// What is said between this server and a client that knows it, beyond the editor's protocol. A client needs none of it:
// with the protocol alone it has findings, fixes and everything else of the language.
//
// Where an answer can take a while, the request takes the protocol's `workDoneToken`, progress is told by it, and a request that
// is stopped is given up between two steps and answered with `null`.

// ---------------------------------------------------------------- asked by the server of a client without a disk
/** `ListFiles` → every `.cover` file below the folder, as paths inside it with forward slashes. */
export const LIST_FILES_REQUEST = 'underliner/listFiles';
/** The folder to look in. */
export interface ListFiles {
    /** The folder's address. */
    readonly folder: string;
}

/** `ReadFile` → `FileText`; nothing outside the folder is to be read. */
export const READ_FILE_REQUEST = 'underliner/readFile';
/** The file to read, in its folder. */
export interface ReadFile extends ListFiles {
    readonly path: string;
}
export type { FileText };

// ---------------------------------------------------------------- asked by a client
/** `OfFile` → `CompileAnswer`; `null` for what is no plan. Evenings that the plan asks to be run again can take a while. */
export const COMPILE_REQUEST = 'underliner/compile';
/** A file by its address. */
export interface OfFile {
    readonly uri: string;
}
/** The JSON service plan and where it belongs, or why there is none. */
export type CompileAnswer =
    { readonly text: string; readonly uri: string } | { readonly refused: string; readonly errors: number };

/** `QuestionsOf` → every `Question` to put to the chef, in this order; none where the plan gives nothing to ask of. */
export const QUESTIONS_REQUEST = 'underliner/questions';
/** What is asked about: a new event, why a rule is silenced, or what comes out otherwise in a plan. */
export type QuestionsOf = { readonly about: 'newEvent' | 'reason' } | (OfFile & { readonly about: 'whatIf' });
/** One question. */
export interface Question {
    readonly key: string;
    /** In few words: `Guests expected`. */
    readonly label: string;
    /** The question itself. */
    readonly prompt: string;
    /** An answer as one may write it. */
    readonly example: string;
    /** What the plan says; empty where it says nothing. */
    readonly now: string;
}

/** `CheckAnswer` → `AnswerProblem`, or `null`: asked while an answer is typed. */
export const CHECK_ANSWER_REQUEST = 'underliner/checkAnswer';
/** One answer to one question. */
export type CheckAnswer = QuestionsOf & { readonly key: string; readonly answer: string };
/** The words to show beside the question. */
export interface AnswerProblem {
    readonly problem: string;
}

/** `NewEvent` → `NewEventAnswer`: the text of a new plan, which checks clean in its folder. */
export const NEW_EVENT_REQUEST = 'underliner/newEvent';
/** What is asked of who begins an event. */
export interface NewEvent {
    /** The folder that the file is to stand in; absent where no folder is open. */
    readonly folder?: string;
    /** The answers as they were typed, with which nothing is wrong. */
    readonly title: string;
    readonly date: string;
    readonly guests: string;
    /** Of the time zone database, such as `America/Halifax`; the events of the folder know better. */
    readonly zone?: string;
}
/** `name` is a file name that no plan of the folder has. */
export type NewEventAnswer = { readonly name: string; readonly text: string } | { readonly refused: string };

/** `OfFile` → `Summary`, or `null` for what is no plan. */
export const SUMMARY_REQUEST = 'underliner/summary';
/** What a plan says in a line. */
export interface Summary {
    readonly event?: string;
    readonly guests?: number;
    readonly courses?: number;
    /** Guests and courses: `84 guests, 5 courses`. */
    readonly line: string;
    /** What is found: `1 error, 2 warnings. …` with the gravest, or `Nothing found.` */
    readonly found: string;
    /** Event and findings as Markdown. */
    readonly page: string;
    readonly findings: Readonly<Record<Severity, number>>;
    /** The gravest finding of the file, the first of several. */
    readonly worst?: { readonly severity: Severity; readonly message: string; readonly rule: string };
}

/** `Because` → `WorkspaceEdit`, or `null` where there is no place for it any more: what silences a finding, with the reason. */
export const BECAUSE_REQUEST = 'underliner/because';
/** A finding to silence, and why. */
export interface Because {
    /** What the command of the code action was given. */
    readonly silencing: unknown;
    readonly reason: string;
}

/** `WhatIfRequest` → `WhatIfAnswer`: the evening computed with other figures, which can take a while. Nothing is written. */
export const WHAT_IF_REQUEST = 'underliner/whatIf';
/** Answers as they were typed, by the key of their question. */
export type OtherwiseAnswers = Readonly<Record<string, string>>;
/** A plan, and what is otherwise. */
export interface WhatIfRequest extends OfFile {
    readonly answers: OtherwiseAnswers;
}
/** What is different, as a page; or why it can't be told. */
export type WhatIfAnswer = { readonly markdown: string } | { readonly refused: string };

/** `CompareRequest` → `CompareAnswer`: what changed for people since the texts given, which can take a while. */
export const COMPARE_REQUEST = 'underliner/compare';
/** A plan, and the texts as they were. */
export interface CompareRequest extends OfFile {
    /** By address; `null` for a file that was not there. */
    readonly before: Readonly<Record<string, string | null>>;
    /** What the earlier texts are, in words: `the last commit`. */
    readonly since: string;
}
/** The page; or the addresses of texts still wanted to answer; or why there is no answer. */
export type CompareAnswer =
    { readonly markdown: string } | { readonly wanted: readonly string[] } | { readonly refused: string };

/** `OfFolder` → `FolderLaidOut`: what laying out every plan of a folder would change, opened or not; it can take a while. */
export const LAY_OUT_FOLDER_REQUEST = 'underliner/layOutFolder';
/** A folder by its address. */
export interface OfFolder {
    readonly uri: string;
}
/** The edits of all plans, what to say of them, and whether every plan could be read; or why there are none. */
export type FolderLaidOut =
    { readonly edit: WorkspaceEdit; readonly told: string; readonly isWhole: boolean } | { readonly refused: string };
