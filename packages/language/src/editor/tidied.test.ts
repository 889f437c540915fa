import { constants } from 'node:perf_hooks';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, expect, test, vi } from 'vitest';
import { whenTidied } from './tidied.js';

setFlagsFromString('--expose-gc');
const tidyUp = runInNewContext('gc') as () => void;

afterEach(() => vi.unstubAllGlobals());

test('tells when the engine has gone through all its memory', async () => {
    const told = vi.fn();
    whenTidied(told);
    await new Promise((resolve) => setTimeout(resolve, 20));
    const before = told.mock.calls.length;
    tidyUp();
    await expect.poll(() => told.mock.calls.length).toBeGreaterThan(before);
});

test('says nothing of what is gone through at every turn', () => {
    const told = vi.fn();
    const { NODE_PERFORMANCE_GC_MINOR: minor, NODE_PERFORMANCE_GC_MAJOR: major } = constants;
    vi.stubGlobal(
        'PerformanceObserver',
        class {
            static readonly supportedEntryTypes = ['gc'];
            readonly observe: () => void;
            constructor(tell: (list: { getEntries(): unknown }) => void) {
                this.observe = () =>
                    [minor, major, minor].forEach((kind) => tell({ getEntries: () => [{ detail: { kind } }] }));
            }
        },
    );
    whenTidied(told);
    expect(told).toHaveBeenCalledTimes(1);
});

test('says nothing where the engine does not say', () => {
    const observe = vi.fn();
    vi.stubGlobal(
        'PerformanceObserver',
        class {
            static readonly supportedEntryTypes = ['mark'];
            readonly observe = observe;
        },
    );
    whenTidied(() => undefined);
    vi.stubGlobal('PerformanceObserver', undefined);
    whenTidied(() => undefined);
    expect(observe).not.toHaveBeenCalled();
});
