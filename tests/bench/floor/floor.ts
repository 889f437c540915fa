import { readFileSync } from 'node:fs';
import {
    createDefaultCoreModule,
    createDefaultSharedCoreModule,
    EmptyFileSystem,
    inject,
    URI,
    type LangiumCoreServices,
    type LangiumSharedCoreServices,
} from 'langium';
import { FloorGeneratedModule, FloorGeneratedSharedModule } from './generated/module.js';

// Parses, links and validates one file with the framework as it comes, and says how many things are wrong.

async function check(path: string): Promise<void> {
    const shared: LangiumSharedCoreServices = inject(
        createDefaultSharedCoreModule(EmptyFileSystem),
        FloorGeneratedSharedModule,
    );
    const services: LangiumCoreServices = inject(createDefaultCoreModule({ shared }), FloorGeneratedModule);
    shared.ServiceRegistry.register(services);
    const { LangiumDocumentFactory, DocumentBuilder } = shared.workspace;
    const document = LangiumDocumentFactory.fromString(readFileSync(path, 'utf8'), URI.parse('memory:/store.floor'));
    await DocumentBuilder.build([document], { validation: true });
    console.log(`${document.diagnostics?.length ?? 0} found.`);
}

void check(process.argv[2]!);
