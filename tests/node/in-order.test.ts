import { describe, expect, it } from 'vitest';
import { inOrder } from '../../src/node/in-order.js';

/** Finishes tasks in an order of its own: the later one of each pair first. */
function scrambled(delay: (task: number) => number) {
  const seen = { underWay: 0, most: 0, retained: 0, mostRetained: 0, started: 0 };
  const run = async (task: number): Promise<number> => {
    seen.started++;
    seen.most = Math.max(seen.most, ++seen.underWay);
    seen.mostRetained = Math.max(seen.mostRetained, ++seen.retained);
    await new Promise((resume) => setTimeout(resume, delay(task)));
    seen.underWay--;
    return task;
  };
  return { seen, run };
}

const count = (n: number) => Array.from({ length: n }, (_, i) => i);

describe('tasks run ahead of their turn', () => {
  it('come back in order, whatever order they end in', async () => {
    const { run } = scrambled((task) => (task % 2 === 0 ? 6 : 0));
    const results: number[] = [];
    for await (const result of inOrder(count(40), run, 4)) results.push(result);
    expect(results).toEqual(count(40));
  });

  it.each([20, 200])('of %i: never exist in greater number than allowed', async (tasks) => {
    const { run, seen } = scrambled(() => 0);
    for await (const _ of inOrder(count(tasks), run, 4)) seen.retained--;
    expect(seen).toMatchObject({ most: 4, mostRetained: 4, started: tasks });
  });

  it('do not start while nobody takes their results', async () => {
    const { run, seen } = scrambled(() => 0);
    const results = inOrder(count(100), run, 3);
    await results.next();
    await new Promise((resume) => setTimeout(resume, 10));
    expect(seen.started).toBe(3);
    await results.return();
  });

  it('hand on a failure in its turn, and start no more', async () => {
    let started = 0;
    const run = async (task: number): Promise<number> => {
      started++;
      if (task === 2) throw new Error('two');
      return task;
    };
    const results: number[] = [];
    const all = async (): Promise<void> => {
      for await (const result of inOrder(count(50), run, 5)) results.push(result);
    };
    await expect(all()).rejects.toThrow('two');
    expect(results).toEqual([0, 1]);
    expect(started).toBe(7);
  });
});
