import { describe, expect, it } from 'vitest';
import { check } from '../../packages/language/src/check.js';
import { filesInMemory } from '../../packages/language/src/plan/files.js';

// The rules about temperature against the published figures. Each case names its row in the project's temperature facts
// (T) and, through it, the source; a limit is met by the printed figure itself and broken by the next whole degree.

function findings(course: string, code = 'us-model'): readonly { readonly rule: string; readonly severity: string }[] {
    const text = `event "Lantern supper" { date 2026-10-17  zone America/Halifax  seated 19:00  guests 40  local code ${code} }
menu { ${course} }`;
    return check('supper.cover', filesInMemory({ 'supper.cover': text })).findings;
}

function found(rule: string, course: string, code?: string): boolean {
    return findings(course, code).some((finding) => finding.rule === rule);
}

const soup = (clauses: string): string => `course soup "Broth" {
    served in soup-bowl warmed on underliner at 64 °C  lasts 15 min  contains nothing
    ${clauses}
}`;
const curd = (clauses: string): string =>
    `course appetizer "Curd" { served on salad-plate at 5 °C  lasts 15 min  contains milk  ${clauses} }`;

describe('hot food is held by the code in force', () => {
    it.each([
        ['us-model', '57 °C', '56 °C', 'T S2: 135 °F, printed as 57 °C'],
        ['us-model', '135 °F', '134 °F', 'T S2: 135 °F'],
        ['new-york-city', '140 °F', '139 °F', 'T 2.3, New York City Health Code 81.10'],
        ['uk', '63 °C', '62 °C', 'T 2.3, Food Hygiene Regulations, schedule 4'],
        ['uk', '146 °F', '145 °F', 'T 2.3: 63 °C, and 145 °F is 62.8 °C (T 9)'],
        ['scotland', '63 °C', '62 °C', 'T 2.3'],
        ['canada', '60 °C', '59 °C', 'T 2.3, Chatham-Kent Public Health'],
        ['au-nz', '60 °C', '59 °C', 'T 2.3, Standard 3.2.2'],
    ])('%s: %s holds, %s does not (%s)', (code, kept, broken) => {
        expect(found('hot-below-holding', soup(`held at ${kept}`), code)).toBe(false);
        expect(found('hot-below-holding', soup(`held at ${broken}`), code)).toBe(true);
    });

    it('or by time alone, within what the code allows and never without a word (T S6, 4 h)', () => {
        const within = findings(soup('held at 40 °C for 4 h')).find(({ rule }) => rule === 'hot-below-holding');
        const beyond = findings(soup('held at 40 °C for 5 h')).find(({ rule }) => rule === 'hot-below-holding');
        expect([within?.severity, beyond?.severity]).toEqual(['warning', 'error']);
    });
});

describe('cold food is held by the code in force', () => {
    it.each([
        ['us-model', '5 °C', '6 °C', 'T S1: 41 °F, 5 °C'],
        ['us-model', '41 °F', '42 °F', 'T S1: 41 °F'],
        ['uk', '8 °C', '9 °C', 'T 2.3, Food Safety (Temperature Control) Regulations'],
        ['canada', '4 °C', '5 °C', 'T 2.3, Chatham-Kent Public Health'],
        ['au-nz', '5 °C', '6 °C', 'T 2.3, Standard 3.2.2'],
    ])('%s: %s holds, %s does not (%s)', (code, kept, broken) => {
        expect(found('cold-above-holding', curd(`held at ${kept}`), code)).toBe(false);
        expect(found('cold-above-holding', curd(`held at ${broken}`), code)).toBe(true);
    });

    it('and by time alone no warmer than 21 °C (T S7, 6 h)', () => {
        const judged = (held: string) =>
            findings(curd(`held at ${held}`)).find(({ rule }) => rule === 'cold-above-holding');
        expect(judged('21 °C for 6 h')?.severity).toBe('warning');
        expect(judged('22 °C for 6 h')?.severity).toBe('error');
        expect(judged('21 °C for 7 h')?.severity).toBe('error');
    });
});

describe('a warmed metal piece is judged by the touch limits (T 4.2, from B1 to B4 and the contact temperatures)', () => {
    const spoon = (words: string) =>
        findings(soup(`eaten with soup-spoon warmed to ${words}`)).find(({ rule }) => rule === 'spoon-too-hot')
            ?.severity;
    it.each([
        ['43 °C', undefined],
        ['44 °C', 'warning'],
        ['48 °C', 'warning'],
        ['55 °C', 'warning'],
        ['56 °C', 'error'],
        ['48 °C laid', 'warning'],
        ['49 °C laid', 'error'],
        ['109 °F', undefined],
        ['132 °F', 'error'],
    ])('%s: %s', (words, severity) => {
        expect(spoon(words)).toBe(severity);
    });

    it('and porcelain never stands before a guest above 65 °C', () => {
        const plate = (to: string) =>
            found('vessel-too-warm', `course main "Lamb" { served on dinner-plate warmed to ${to} at 60 °C }`);
        expect([plate('65 °C'), plate('66 °C')]).toEqual([false, true]);
    });
});

describe('a wine is judged by the consensus range of its class (T 7.1)', () => {
    it.each([
        ['sparkling-wine', 6, 10],
        ['light-white-wine', 7, 10],
        ['full-white-wine', 10, 13],
        ['rose-wine', 8, 12],
        ['sweet-wine', 6, 10],
        ['light-red-wine', 12, 14],
        ['medium-red-wine', 14, 16],
        ['full-red-wine', 16, 18],
        ['port', 16, 18],
    ])('%s: %i to %i °C', (kind, low, high) => {
        const isFound = (degrees: number) =>
            found('wine-temperature', curd(`pour "Harvest" 60 ml at ${degrees} °C is ${kind}`));
        expect([low - 1, low, high, high + 1].map(isFound)).toEqual([true, false, false, true]);
    });
});

describe('soup is judged by the range that is hot and does not scald (T 4.3, from D2, D4 and D11)', () => {
    it.each([
        ['60 °C', false],
        ['72 °C', false],
        ['73 °C', true],
        ['56 °C', true],
        ['212 °F', true],
    ])('at %s: %s', (at, isFound) => {
        const served = `course soup "Broth" { served in soup-bowl warmed on underliner at ${at} }`;
        expect(found('serving-temperature', served)).toBe(isFound);
    });
});
