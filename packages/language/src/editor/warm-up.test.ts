import { afterEach, expect, test, vi } from 'vitest';
import { check } from '../check.js';
import { rules } from '../rules/index.js';
import { createCoverServices } from './services.js';
import { WarmUp } from './warm-up.js';

afterEach(() => vi.useRealTimers());

const text = `event "Supper" {
    date 2026-10-17
    guests 12
}
menu {
    course soup "Leek" {
        served in soup-bowl at 66 °C
        contains milk
    }
}
`;
const plan = () => check('supper.cover', { read: () => ({ state: 'read', text }) });

test('the warm-up waits while somebody waits for findings, goes on when told, and comes to the plan in sight', async () => {
    let isBusy = true;
    const inSight = vi.fn(plan);
    const warmUp = new WarmUp(createCoverServices(), () => isBusy, inSight);
    warmUp.goOn();
    await new Promise((resolve) => setTimeout(resolve, 20));
    isBusy = false;
    expect(inSight).not.toHaveBeenCalled();
    warmUp.goOn();
    await expect.poll(() => inSight.mock.calls.length, { timeout: 60_000 }).toBe(1);
});

test('what breaks in it reaches nobody, and nor does what breaks when the engine has tidied up', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
    const inSight = vi.fn(() => {
        throw new Error('broken');
    });
    const warmUp = new WarmUp(createCoverServices(), () => false, inSight);
    warmUp.goOn();
    await vi.runAllTimersAsync();
    expect(inSight).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(10_000);
    warmUp.tidied();
    await vi.runAllTimersAsync();
    expect(inSight).toHaveBeenCalledTimes(2);
});

/** Warms up, and counts how often the plan is looked at anew: by a rule that reads every name, so that any key concerns it. */
function warmingUp(): { readonly looks: () => number; readonly end: () => void } {
    const asked = vi.spyOn(
        rules.find(({ id }) => id === 'unknown-name')!,
        'check',
    );
    let before = Infinity;
    const inSight = (): ReturnType<typeof plan> => {
        const checked = plan();
        before = asked.mock.calls.length;
        return checked;
    };
    new WarmUp(createCoverServices(), () => false, inSight).goOn();
    return { looks: () => asked.mock.calls.length - before, end: () => asked.mockRestore() };
}

test('it types in the plan in sight, and asks the rules after every key', async () => {
    const { looks, end } = warmingUp();
    // Letters and digits, put in and taken out.
    await expect.poll(looks, { timeout: 60_000 }).toBeGreaterThanOrEqual(4);
    end();
});

test('it types for so long at most', async () => {
    // Each key takes six seconds of this clock.
    let now = 0;
    const clock = vi.spyOn(performance, 'now').mockImplementation(() => (now += 6000));
    const { looks, end } = warmingUp();
    await expect.poll(looks, { timeout: 60_000 }).toBe(2);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(looks()).toBe(2);
    end();
    clock.mockRestore();
});

test('once the engine has tidied up at rest it types again, and then not until somebody has typed', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
    const inSight = vi.fn(plan);
    const warmUp = new WarmUp(createCoverServices(), () => false, inSight);
    warmUp.goOn();
    await vi.runAllTimersAsync();
    const typedIn = (): number => inSight.mock.calls.length;
    expect(typedIn()).toBe(1);
    const tidiedAfter = async (seconds: number): Promise<void> => {
        await vi.advanceTimersByTimeAsync(seconds * 1000);
        warmUp.tidied();
        await vi.runAllTimersAsync();
    };
    await tidiedAfter(1);
    expect(typedIn()).toBe(1);
    await tidiedAfter(10);
    expect(typedIn()).toBe(2);
    await tidiedAfter(10);
    expect(typedIn()).toBe(2);
    warmUp.goOn();
    await tidiedAfter(10);
    expect(typedIn()).toBe(3);
});
