import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { cppPeers, MissingPeer, scipyPeers } from '../../bench/performance/programs.js';

// The benchmark runs without its C++ and SciPy peers, and says what to install for them.
afterEach(() => {
  vi.unstubAllEnvs();
});

it('names the packages for the C++ peers where there is no compiler', async () => {
  vi.stubEnv('PATH', '');
  const missing = cppPeers(1);
  await expect(missing).rejects.toBeInstanceOf(MissingPeer);
  await expect(missing).rejects.toThrow(
    /no g\+\+.*apt-get install g\+\+ .*libboost-dev.*libsundials-dev.*libgsl-dev/,
  );
});

it('names the package for the SciPy peers where Python has none', async () => {
  const directory = mkdtempSync(join(tmpdir(), 'without-scipy-'));
  try {
    writeFileSync(join(directory, 'scipy.py'), 'raise ImportError\n');
    vi.stubEnv('PYTHONPATH', directory);
    const missing = scipyPeers(1);
    await expect(missing).rejects.toBeInstanceOf(MissingPeer);
    await expect(missing).rejects.toThrow(/import scipy.*apt-get install .*python3-scipy/);
  } finally {
    rmSync(directory, { recursive: true });
  }
});
