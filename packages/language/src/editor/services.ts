import { EmptyFileSystem, inject } from 'langium';
import {
    createDefaultModule,
    createDefaultSharedModule,
    type DefaultSharedModuleContext,
    type LangiumServices,
    type LangiumSharedServices,
} from 'langium/lsp';
import { CoverGeneratedModule, CoverGeneratedSharedModule } from '../grammar/generated/module.js';
import { CoverCoreModule } from '../grammar/parse.js';

export interface CoverServices {
    readonly shared: LangiumSharedServices;
    readonly cover: LangiumServices;
    /** Reads a text up to the first word that does not fit; the text read last is not read again. */
    readonly follow: (text: string) => Followed;
}

/** How far a text can be read, and where in the grammar that is. */
export type Followed = ReturnType<LangiumServices['parser']['CompletionParser']['parse']>;

/**
 * The framework's services for a connection: its open documents, and the grammar with the lexer and the parser that
 * completion asks. Files are not read through it: `workspace.ts` does, from what the server is given.
 * @param connection absent in tests of single services
 */
export function createCoverServices(connection?: DefaultSharedModuleContext['connection']): CoverServices {
    const shared = inject(createDefaultSharedModule({ connection, ...EmptyFileSystem }), CoverGeneratedSharedModule);
    const cover = inject(createDefaultModule({ shared }), CoverGeneratedModule, CoverCoreModule, {
        parser: { ParserConfig: () => ({ recoveryEnabled: false }) },
    });
    shared.ServiceRegistry.register(cover);
    let last: { readonly text: string; readonly followed: Followed } | undefined;
    const follow = (text: string): Followed => {
        if (last?.text !== text) {
            last = { text, followed: cover.parser.CompletionParser.parse(text) };
        }
        return last.followed;
    };
    return { shared, cover, follow };
}
