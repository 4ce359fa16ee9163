/** Keeps what was worked out until what it was made from changes. */
export interface Memory {
  readonly keep: <T>(name: string, madeFrom: readonly unknown[], make: () => T) => T;
}

/** A memory that holds the last result of each name. */
export function freshMemory(): Memory {
  const kept = new Map<string, { readonly key: string; readonly value: unknown }>();
  return {
    keep: <T>(name: string, madeFrom: readonly unknown[], make: () => T): T => {
      const key = JSON.stringify(madeFrom);
      const known = kept.get(name);
      if (known?.key === key) return known.value as T;
      const value = make();
      kept.set(name, { key, value });
      return value;
    },
  };
}
