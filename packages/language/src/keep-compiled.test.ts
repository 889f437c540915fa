import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { keepCompiled } from './keep-compiled.js';

setFlagsFromString('--expose-gc');
const tidyUp = runInNewContext('gc') as () => void;

test('the last object of a class stays, and no more than that', async () => {
    class Reader {
        readonly text = 'x'.repeat(100);
    }
    const made = [1, 2, 3].map(() => new WeakRef(keepCompiled(new Reader())));
    // A weak reference holds until the turn that made it is over.
    await new Promise((resolve) => setTimeout(resolve));
    tidyUp();
    expect(made.map((each) => each.deref() !== undefined)).toEqual([false, false, true]);
});
