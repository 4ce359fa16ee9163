import { cpus, loadavg, release, totalmem, type } from 'node:os';

/** What the numbers were measured on, line by line. */
export function describeMachine(peers: readonly string[]): string[] {
  const all = cpus();
  const busy = loadavg()[0] as number;
  return [
    `Processor: ${all[0]?.model ?? 'unknown'}, ${all.length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GiB of memory`,
    `System: ${type()} ${release()}, Node.js ${process.versions.node}`,
    ...peers.map((line) => `Peers: ${line}`),
    `Date: ${new Date().toISOString().slice(0, 10)}; load of the machine at the start: ${busy.toFixed(2)} (0 is an idle machine)`,
  ];
}
