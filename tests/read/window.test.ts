import { describe, expect, it } from 'vitest';
import { Window } from '../../src/read/window.js';

const bytesOf = (window: Window) => [...window.bytes.subarray(window.start, window.limit)];

describe('the window', () => {
  it('takes as many bytes as it has room for, and keeps zeros behind them', () => {
    const window = new Window(8);
    window.bytes.fill(7);
    expect(window.take(Uint8Array.of(1, 2, 3), 0)).toBe(3);
    expect([...window.bytes.subarray(0, 3 + 32)]).toEqual([1, 2, 3, ...new Array(32).fill(0)]);
    expect(window.take(Uint8Array.of(0, 0, 4, 5, 6, 7, 8, 9), 2)).toBe(5);
    expect(window.full).toBe(true);
    expect(window.take(Uint8Array.of(1), 0)).toBe(0);
  });

  it('gives up what lies before its start and counts it', () => {
    const window = new Window(8);
    window.take(Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8), 0);
    window.start = 5;
    window.makeRoom();
    expect([window.base, window.start, window.limit, window.capacity]).toEqual([5, 0, 3, 8]);
    expect(bytesOf(window)).toEqual([6, 7, 8]);
    expect([...window.bytes.subarray(3)].every((byte) => byte === 0)).toBe(true);
  });

  it('doubles where less than half of it can be given up', () => {
    const window = new Window(8);
    window.take(Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8), 0);
    window.start = 3;
    window.makeRoom();
    expect([window.base, window.start, window.limit, window.capacity]).toEqual([3, 0, 5, 16]);
    expect(bytesOf(window)).toEqual([4, 5, 6, 7, 8]);
    expect([...window.bytes.subarray(5)].every((byte) => byte === 0)).toBe(true);
  });
});
