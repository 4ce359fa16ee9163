import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/**
 * The rooms of src from the ground up. A room imports from floors below its own, never from above. Rooms on one floor
 * do not know each other, except on the floors named in `NEIGHBOURS`, where the cycle checks alone apply.
 */
const FLOORS: readonly (readonly string[])[] = [
  ['units', 'errors', 'gravity', 'source', 'track', 'vector', 'vendor', 'version'],
  ['numerics'],
  ['inputs'],
  ['warnings'],
  ['aerodynamics', 'air', 'ball', 'clubhead'],
  ['turf'],
  ['scene'],
  ['strike', 'flight'],
  ['shot'],
  ['optimum', 'sensitivity', 'dispersion', 'sweep', 'session'],
  ['index', 'models', 'reference', 'batch', 'schema', 'gpu'],
  ['node'],
];
/** Questions asked of the walk may build on each other: what a mph is worth needs the best loft, a session both. */
const NEIGHBOURS: readonly string[] = ['optimum', 'sensitivity', 'dispersion', 'sweep', 'session'];
/** Packages, and the only rooms that may import them. */
const PACKAGES: Readonly<Record<string, string>> = {
  odex: 'vendor',
  zod: 'schema',
  'pure-rand': 'numerics',
  hyparquet: 'node',
  'hyparquet-writer': 'node',
  'apache-arrow': 'node',
};

/** Kernels take their inputs as checked, so a room's own doors are the only way to them. */
const KERNELS: readonly RegExp[] = [/^strike\/kernel/, /^flight\/engine\//];
/** Rooms that run kernels over columns, where a door for every row would cost too much. */
const KERNEL_ROOMS: readonly string[] = ['sweep', 'gpu'];
/** Files that still go round a door. Only to be shortened: an entry that is no longer needed fails too. */
const ROUND_THE_DOOR: readonly string[] = [
  'batch.ts imports flight/engine/batch-wasm.generated.ts',
  'batch.ts imports flight/engine/batch.ts',
];

const root = fileURLToPath(new URL('..', import.meta.url));
const src = join(root, 'src');

interface Import {
  readonly from: string;
  readonly specifier: string;
  /** Path below src for a relative import, else undefined. */
  readonly to: string | undefined;
}

function sourcesBelow(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return (
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|js)$/.test(name) && statSync(join(folder, name)).isFile())
      .map((name) => name.split(sep).join('/'))
      // AssemblyScript, compiled on its own and reached only through the text it becomes.
      .filter((name) => !name.startsWith('wasm/'))
      .sort()
  );
}

/** Every import, export-from, type import and dynamic import of a file. */
function specifiersOf(path: string): string[] {
  return ts
    .preProcessFile(readFileSync(path, 'utf8'), true, true)
    .importedFiles.map((found) => found.fileName);
}

function resolve(from: string, specifier: string): string | undefined {
  if (!specifier.startsWith('.')) return undefined;
  const target = normalize(join(dirname(from), specifier))
    .split(sep)
    .join('/');
  const asTypeScript = target.replace(/\.js$/, '.ts');
  return existsSync(join(src, asTypeScript)) ? asTypeScript : target;
}

function roomOf(file: string): string {
  return (file.split('/')[0] ?? file).replace(/\.ts$/, '');
}

function floorOf(room: string): number {
  // src/node.ts, src/node-worker.ts and src/node/ are one room.
  return FLOORS.findIndex((rooms) => rooms.includes(room.startsWith('node') ? 'node' : room));
}

/** One cycle of the graph as a readable chain, or undefined. */
function findCycle(graph: ReadonlyMap<string, ReadonlySet<string>>): string | undefined {
  const done = new Set<string>();
  const walk = (at: string, trail: readonly string[]): string | undefined => {
    const start = trail.indexOf(at);
    if (start >= 0) return [...trail.slice(start), at].join(' -> ');
    if (done.has(at)) return undefined;
    for (const next of graph.get(at) ?? []) {
      const found = walk(next, [...trail, at]);
      if (found !== undefined) return found;
    }
    done.add(at);
    return undefined;
  };
  for (const node of graph.keys()) {
    const found = walk(node, []);
    if (found !== undefined) return found;
  }
  return undefined;
}

function graphOf(edges: readonly (readonly [string, string])[]): Map<string, Set<string>> {
  const graph = new Map<string, Set<string>>();
  for (const [from, to] of edges) {
    const targets = graph.get(from) ?? new Set<string>();
    targets.add(to);
    graph.set(from, targets);
  }
  return graph;
}

/** What writes sources of the product runs before there is one: it may import what it likes, and nobody imports it. */
const isBuildTime = (file: string): boolean => file.split('/').includes('build-time');

const files = sourcesBelow(src).filter((file) => !isBuildTime(file));
const imports: Import[] = files.flatMap((from) =>
  specifiersOf(join(src, from)).map((specifier) => ({ from, specifier, to: resolve(from, specifier) })),
);
const inside = imports.flatMap(({ from, to }) => (to === undefined ? [] : [{ from, to }]));

describe('the rooms of src', () => {
  it('are all on a floor', () => {
    expect(files.length).toBeGreaterThan(30);
    expect([...new Set(files.map(roomOf))].filter((room) => floorOf(room) < 0)).toEqual([]);
  });

  it('import only files that exist', () => {
    expect(inside.filter(({ to }) => !existsSync(join(src, to)))).toEqual([]);
  });

  it('import nothing that runs at build time', () => {
    expect(sourcesBelow(src).filter(isBuildTime).length).toBeGreaterThan(0);
    expect(inside.filter(({ to }) => isBuildTime(to))).toEqual([]);
  });

  it('import from the floors below only', () => {
    const wrong = inside.filter(({ from, to }) => {
      const [room, target] = [roomOf(from), roomOf(to)];
      if (room === target) return false;
      if (NEIGHBOURS.includes(room) && NEIGHBOURS.includes(target)) return false;
      return floorOf(target) >= floorOf(room);
    });
    // The root entry and the other entries may not import each other either: schema is imported by none.
    expect(wrong.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
  });

  it('keep their kernels to themselves', () => {
    const round = inside.filter(
      ({ from, to }) =>
        KERNELS.some((kernel) => kernel.test(to)) &&
        roomOf(from) !== roomOf(to) &&
        !KERNEL_ROOMS.includes(roomOf(from)),
    );
    const found = round.map(({ from, to }) => `${from} imports ${to}`);
    expect([...new Set(found)].sort()).toEqual(ROUND_THE_DOOR);
  });

  it('have no cycle among files, type imports included', () => {
    expect(findCycle(graphOf(inside.map(({ from, to }) => [from, to] as const)))).toBeUndefined();
  });

  it('have no cycle among rooms', () => {
    const between = inside.map(({ from, to }) => [roomOf(from), roomOf(to)] as const);
    expect(findCycle(graphOf(between.filter(([from, to]) => from !== to)))).toBeUndefined();
  });

  it('keep Node out of everything but src/node*', () => {
    const wrong = imports.filter(
      ({ from, specifier }) => specifier.startsWith('node:') && !/^node/.test(from),
    );
    expect(wrong).toEqual([]);
  });

  it('take packages only where they belong', () => {
    const wrong = imports.filter(({ from, specifier, to }) => {
      if (to !== undefined || specifier.startsWith('node:')) return false;
      const name = specifier.split('/')[0] ?? specifier;
      return PACKAGES[name] !== roomOf(from);
    });
    expect(wrong.map(({ from, specifier }) => `${from} imports ${specifier}`)).toEqual([]);
  });

  it('write relative imports with their ending', () => {
    expect(inside.filter(({ to }) => !/\.ts$|^vendor\//.test(to))).toEqual([]);
  });
});

describe('examples', () => {
  it('import the package by its name, never its sources', () => {
    const folder = join(root, 'examples');
    const wrong = sourcesBelow(folder).flatMap((file) =>
      specifiersOf(join(folder, file))
        .filter((specifier) => specifier.startsWith('.'))
        .filter((specifier) => relative(folder, join(folder, dirname(file), specifier)).startsWith('..'))
        .map((specifier) => `${file} imports ${specifier}`),
    );
    expect(wrong).toEqual([]);
  });
});
