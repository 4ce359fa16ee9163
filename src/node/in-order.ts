/**
 * Runs tasks with a bounded number of them under way, and yields their results in the order of the tasks. A task
 * starts only when fewer than `ahead` results are under way or waiting to be taken, so memory does not grow with the
 * number of tasks.
 * @internal
 */
export async function* inOrder<Task, Result>(
  tasks: Iterable<Task>,
  run: (task: Task) => Promise<Result>,
  ahead: number,
): AsyncGenerator<Result, void, undefined> {
  const waiting: Promise<Result>[] = [];
  const rest = tasks[Symbol.iterator]();
  let exhausted = false;
  const refill = (): void => {
    while (!exhausted && waiting.length < ahead) {
      const next = rest.next();
      if (next.done === true) {
        exhausted = true;
        return;
      }
      const result = run(next.value);
      // A failure is reported when its turn comes; until then it must not count as unhandled.
      result.catch(() => undefined);
      waiting.push(result);
    }
  };
  for (refill(); waiting.length > 0; refill()) yield await (waiting.shift() as Promise<Result>);
}
