import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { lane, paced } from './lane.js';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('of the questions that come while one is being answered only the newest is asked', async () => {
  const asked: number[] = [];
  const done: (() => void)[] = [];
  const ask = lane((n: number) => {
    asked.push(n);
    return new Promise<void>((resolve) => void done.push(resolve));
  });
  for (const n of [1, 2, 3, 4]) ask(n);
  expect(asked).toEqual([1]);
  done[0]!();
  await vi.advanceTimersByTimeAsync(0);
  expect(asked).toEqual([1, 4]);
  done[1]!();
  await vi.advanceTimersByTimeAsync(0);
  ask(5);
  expect(asked).toEqual([1, 4, 5]);
});

test('questions that can wait are passed on when it is quiet, the newest only', () => {
  const passed: number[] = [];
  const pass = paced((n: number) => void passed.push(n), { quiet: 100, longest: 500 });
  pass(1);
  vi.advanceTimersByTime(60);
  pass(2);
  vi.advanceTimersByTime(99);
  expect(passed).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(passed).toEqual([2]);
});

test('while questions keep coming, one is passed on at least so often', () => {
  const passed: number[] = [];
  const pass = paced((n: number) => void passed.push(n), { quiet: 100, longest: 500 });
  for (let i = 0; i <= 100; i++) {
    pass(i);
    vi.advanceTimersByTime(16);
  }
  expect(passed.length).toBe(3);
  expect(passed[0]! * 16).toBeLessThanOrEqual(500);
});
