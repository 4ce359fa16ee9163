/**
 * Freezes a value to the bottom and returns it. Takes a function, so that a bundler may drop what nobody uses: mark the
 * call as pure.
 * @internal
 */
export function frozen<T>(make: () => T): T {
  return freeze(make());
}

function freeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const part of Object.values(value)) freeze(part);
  return value;
}
