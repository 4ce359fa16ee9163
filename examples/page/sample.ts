/** Shots spread evenly over a file, at most so many. */
export function spreadOver<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  return Array.from({ length: most }, (_, i) => items[Math.floor((i * items.length) / most)] as T);
}

/** Shots that a picture can show and a search can place in good time. */
export const MOST_DRAWN = 250;
export const MOST_PLACED = 200;
