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
    /** The same language, whose parser stops at the first word that does not fit. */
    readonly strict: LangiumServices;
}

/**
 * The framework's services for a connection: its open documents, and the grammar with the lexer and the parser that
 * completion asks. Files are not read through it: `workspace.ts` does, from what the server is given.
 * @param connection absent in tests of single services
 */
export function createCoverServices(connection?: DefaultSharedModuleContext['connection']): CoverServices {
    const shared = inject(createDefaultSharedModule({ connection, ...EmptyFileSystem }), CoverGeneratedSharedModule);
    const cover = inject(createDefaultModule({ shared }), CoverGeneratedModule, CoverCoreModule);
    const strict = inject(createDefaultModule({ shared }), CoverGeneratedModule, CoverCoreModule, {
        parser: { ParserConfig: () => ({ recoveryEnabled: false }) },
    });
    shared.ServiceRegistry.register(cover);
    return { shared, cover, strict };
}
