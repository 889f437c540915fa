import { DidChangeConfigurationNotification, type Connection } from 'vscode-languageserver';
import type { Client } from './client.js';
import { DEFAULT_SETTINGS, SETTINGS_SECTION, settingsOf, type Settings } from './settings.js';

/** Keeps the client's settings, and tells it to ask anew for what they change. */
export class ClientSettings {
    private known: Settings = DEFAULT_SETTINGS;

    constructor(
        private readonly connection: Connection,
        private readonly client: () => Client,
    ) {}

    get settings(): Settings {
        return this.known;
    }

    /** Once the client is ready to be asked. */
    async listen(): Promise<void> {
        const { hasSettings } = this.client();
        this.connection.onDidChangeConfiguration(({ settings }) => {
            // A client that can't be asked sends them along.
            const sent = (settings as Record<string, unknown> | null | undefined)?.[SETTINGS_SECTION];
            void (hasSettings ? this.ask() : this.take(sent));
        });
        if (hasSettings) {
            void this.connection.client.register(DidChangeConfigurationNotification.type, {
                section: SETTINGS_SECTION,
            });
            await this.ask();
        }
    }

    private async ask(): Promise<void> {
        try {
            this.take(await this.connection.workspace.getConfiguration(SETTINGS_SECTION));
        } catch {
            // The client has left.
        }
    }

    private take(given: unknown): void {
        this.known = settingsOf(given);
        this.refresh();
    }

    /** What is shown between and above the lines may be other now. */
    refresh(): void {
        if (this.client().refreshes) {
            void this.connection.languages.inlayHint.refresh().catch(() => undefined);
            void this.connection.sendRequest('workspace/codeLens/refresh').catch(() => undefined);
        }
    }
}
