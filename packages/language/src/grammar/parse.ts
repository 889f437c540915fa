import {
    createDefaultCoreModule,
    createDefaultSharedCoreModule,
    DefaultValueConverter,
    EmptyFileSystem,
    inject,
    type GrammarAST,
    type LangiumCoreServices,
    type LangiumSharedCoreServices,
    type Module,
    type PartialLangiumCoreServices,
    type ValueType,
} from 'langium';
import type { File } from './generated/ast.js';
import { CoverGeneratedModule, CoverGeneratedSharedModule } from './generated/module.js';
import type { MistypedWord } from './engine.js';
import { CoverLexer } from './lexer.js';
import { CoverLexerMessages, CoverParserMessages } from './messages.js';
import { createCoverParser, type CoverParseResult } from './parser.js';
import { reportOf, syntaxProblems, unclosedProblems, type SyntaxProblem } from './syntax-problems.js';
import { terminalValue } from './terminal-values.js';

/** Every terminal of the language is a text: what its characters mean is said in one place. */
class CoverValueConverter extends DefaultValueConverter {
    protected override runConverter({ name }: GrammarAST.AbstractRule, input: string): ValueType {
        return terminalValue(name, input);
    }
}

/** What this language changes in the framework's core; the language server adds its own services on top. */
export const CoverCoreModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
    parser: {
        ValueConverter: () => new CoverValueConverter(),
        Lexer: (services) => new CoverLexer(services),
        LangiumParser: (services) => createCoverParser(services),
        ParserErrorMessageProvider: () => new CoverParserMessages(),
        LexerErrorMessageProvider: () => new CoverLexerMessages(),
    },
    LanguageMetaData: () => ({
        languageId: 'cover',
        fileExtensions: ['.cover'],
        caseInsensitive: false,
        mode: 'production',
    }),
};

let services: LangiumCoreServices | undefined;

function coreServices(): LangiumCoreServices {
    if (!services) {
        const shared: LangiumSharedCoreServices = inject(
            createDefaultSharedCoreModule(EmptyFileSystem),
            CoverGeneratedSharedModule,
        );
        services = inject(createDefaultCoreModule({ shared }), CoverGeneratedModule, CoverCoreModule);
        shared.ServiceRegistry.register(services);
    }
    return services;
}

export interface Parsed {
    readonly tree: File;
    /** In source order, the first of each block only, and of each line of a guest list, in the chef's words. */
    readonly problems: readonly SyntaxProblem[];
    /** First words of blocks that were read as what they are a slip of. */
    readonly mistyped?: readonly MistypedWord[];
    /** Texts and comments that were opened and never closed; not among the problems where they are in the tree. */
    readonly unclosed?: readonly SyntaxProblem[];
}

/** Parses one file. Never throws for any text: what can't be read is a problem, and the rest is in the tree. */
export function parseText(text: string): Parsed {
    const result = coreServices().parser.LangiumParser.parse<File>(text) as CoverParseResult<File>;
    return {
        tree: result.value,
        problems: syntaxProblems(text, result),
        mistyped: result.mistyped,
        unclosed: unclosedProblems(reportOf(result)),
    };
}
