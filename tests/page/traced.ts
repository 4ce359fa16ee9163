import type { Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the thread [µs]. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Tasks of a page's main thread while something is done, and the processor time of the longest [ms]. */
export async function traced(
  page: Page,
  doing: () => Promise<void>,
): Promise<{ readonly count: number; readonly longest: number }> {
  const browser = page.context().browser();
  if (browser === null) throw new Error('no browser');
  await browser.startTracing(page, { categories: ['toplevel'] });
  await doing();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  const thread = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const main = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(thread),
  );
  const tasks = traceEvents.flatMap((event) =>
    main.has(thread(event)) && event.name.endsWith('RunTask') && event.tdur !== undefined ? [event.tdur] : [],
  );
  return { count: tasks.length, longest: tasks.reduce((most, each) => Math.max(most, each), 0) / 1000 };
}
