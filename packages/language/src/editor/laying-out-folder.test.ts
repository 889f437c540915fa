import { describe, expect, it } from 'vitest';
import { anAsker } from '../../../../tests/support/asker.js';
import { CLIENT, openPlan } from '../../../../tests/support/open-plan.js';
import { layOutPlans } from './laying-out-folder.js';

const open = () => {
    const plan = openPlan(`//- a.cover
house "Hall" {}
//- b.cover
menu {   }
//- c.cover
menu { course soup { served inn } }
//- d.cover
room   "Long gallery" { }
`);
    const places = ['a.cover', 'b.cover', 'c.cover', 'd.cover'].map((path) => ({ folder: plan.folder, path }));
    return { plan, places };
};

describe('a folder that is laid out', () => {
    it('has every plan changed that needs it, and is told which could not be read', async () => {
        const { plan, places } = open();
        const answer = await layOutPlans(places, CLIENT, anAsker());
        expect(answer).toMatchObject({
            isWhole: false,
            told: expect.stringMatching(/^\d of 4 plans laid out anew\. `c\.cover` was left as it is: /) as string,
        });
        const { edit } = answer as { edit: { documentChanges: { textDocument: { uri: string; version: number } }[] } };
        const changed = edit.documentChanges.map(({ textDocument }) => textDocument);
        expect(changed).toContainEqual({ uri: plan.folder.uriOf('b.cover'), version: null });
        // The open one with its version.
        expect(changed).toContainEqual({ uri: plan.folder.uriOf('d.cover'), version: 7 });
        const plainly = await layOutPlans(places, { ...CLIENT, takesVersionedEdits: false }, anAsker());
        const { changes } = (plainly as { edit: { changes: object } }).edit;
        expect(Object.keys(changes)).toEqual(changed.map(({ uri }) => uri));
    });

    it('is left alone where nobody waits for it any more, and where it was changed meanwhile', async () => {
        const { plan, places } = open();
        expect(await layOutPlans(places, CLIENT, anAsker(25))).toBeNull();
        const answer = layOutPlans(places, CLIENT, anAsker());
        plan.folder.hold('a.cover', { state: 'read', text: 'house "Hall" { }\n' });
        expect(await answer).toMatchObject({ refused: expect.stringMatching(/changed while/) as string });
    });
});
