import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { inflateSync } from 'node:zlib';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../', import.meta.url));

function draw(...options: string[]): { status: number | null; bytes: Buffer; talk: string } {
    const args = [
        'packages/cli/bin/underliner.cjs',
        'draw',
        'examples/saltmarsh-hall/lantern-supper.cover',
        ...options,
    ];
    const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: root, maxBuffer: 1e8 });
    return { status, bytes: stdout, talk: stderr.toString() };
}

/** Width and height as the PNG's header states them, and its dots, unpacked. */
function read(png: Buffer): { width: number; height: number; dots: Buffer } {
    expect(png.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
    const data: Buffer[] = [];
    for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
        if (png.toString('latin1', at + 4, at + 8) === 'IDAT') {
            data.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
        }
    }
    return { width: png.readUInt32BE(16), height: png.readUInt32BE(20), dots: inflateSync(Buffer.concat(data)) };
}

it('draws a PNG of the width asked for, of the picture’s shape, not blank, the same every time', () => {
    const { status, bytes } = draw('--png', '--width', '400');
    expect(status).toBe(0);
    const svg = draw().bytes.toString();
    const [, across, down] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!;
    const { width, height, dots } = read(bytes);
    expect(width).toBe(400);
    expect(Math.abs(height - (400 * Number(down)) / Number(across))).toBeLessThanOrEqual(1);
    expect(new Set(dots).size).toBeGreaterThan(50);
    expect(draw('--png', '--width', '400').bytes.equals(bytes)).toBe(true);
});

it('says what is wrong with a width', () => {
    const wrong = draw('--width', '400');
    expect(wrong.status).toBe(2);
    expect(wrong.talk).toContain('Add `--png` to `--width`');
    expect(draw('--png', '--width', '0').talk).toContain('1 to 10000 pixels wide; 0 is not.');
});
