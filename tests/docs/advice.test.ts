import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { advisedPlayers, renderAdvicePage } from '../../docs/write/advice-page.js';

const all = advisedPlayers();

describe('docs/advice.md', () => {
  it('is what `npm run docs:advice` writes', () => {
    const page = readFileSync(fileURLToPath(new URL('../../docs/advice.md', import.meta.url)), 'utf8');
    expect(page).toBe(renderAdvicePage(all));
  });

  it('says why wherever the library advises something else than a fitter would, and nowhere else', () => {
    for (const { player, agrees } of all)
      expect([player.who, player.differs === undefined]).toEqual([player.who, agrees]);
  });

  it('holds slow and fast, steep and upward players, a high place, firm turf and a headwind', () => {
    const of = (read: (player: (typeof all)[number]['player']) => number): readonly number[] =>
      all.map(({ player }) => read(player));
    expect([Math.min(...of(({ speed }) => speed)), Math.max(...of(({ speed }) => speed))]).toEqual([60, 138]);
    expect([Math.min(...of(({ attack }) => attack)), Math.max(...of(({ attack }) => attack))]).toEqual([
      -5, 6,
    ]);
    expect(all.filter(({ player }) => player.scene !== undefined)).toHaveLength(3);
    expect(all).toHaveLength(12);
  });
});
