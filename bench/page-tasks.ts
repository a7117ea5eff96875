import type { Page } from 'playwright-core';

/** The longest task of a page's main thread: on the clock, and the part it was really at work. */
export interface Tasks {
  readonly wallMs: number;
  /** On a machine that others use, this says more: waiting for a processor is not in it. */
  readonly workMs: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string; readonly data?: { readonly frame?: string } };
}

/** Does some work and gives the longest tasks meanwhile, of every page that is open. */
export async function longestTasks(page: Page, work: () => Promise<void>): Promise<Tasks> {
  const browser = page.context().browser();
  if (browser === null) throw new Error('the page has a browser of its own');
  await browser.startTracing(page, {
    categories: ['toplevel', 'disabled-by-default-devtools.timeline'],
  });
  await work();
  const bytes = await browser.stopTracing();
  const { traceEvents } = JSON.parse(bytes.toString()) as { traceEvents: TraceEvent[] };
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  const tasks = traceEvents.filter(
    ({ name, ph, pid, tid }) =>
      name.endsWith('RunTask') && ph === 'X' && mains.has(`${pid} ${tid}`),
  );
  const longest = (of: (event: TraceEvent) => number | undefined) =>
    Math.max(0, ...tasks.map((event) => (of(event) ?? 0) / 1000));
  return { wallMs: longest(({ dur }) => dur), workMs: longest(({ tdur }) => tdur) };
}
