import { inject } from 'langium';
import { createDefaultModule, createDefaultSharedModule, startLanguageServer } from 'langium/lsp';
import { NodeFileSystem } from 'langium/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';
import { BareGeneratedModule, BareGeneratedSharedModule } from './generated/module.js';

// The framework's language server as it comes.

const connection = createConnection(ProposedFeatures.all);
const shared = inject(createDefaultSharedModule({ connection, ...NodeFileSystem }), BareGeneratedSharedModule);
const services = inject(createDefaultModule({ shared }), BareGeneratedModule);
shared.ServiceRegistry.register(services);
startLanguageServer(shared);
