/** What a caller without types may pass for anything, with its name. */
export const strange: readonly (readonly [string, unknown])[] = [
  ['null', null],
  ['a number', 4],
  ['NaN', Number.NaN],
  ['a bigint', 4n],
  ['a symbol', Symbol('sand')],
  ['a text', 'driver\0'],
  ['a huge text', 'x'.repeat(1e6)],
  ['a function', () => 4],
  ['a promise', Promise.resolve({})],
  ['a list', [1]],
  ['a cyclic record', cyclic()],
  ['a record without a prototype', Object.create(null)],
  ['a record with an inherited field', Object.create({ clubSpeed: 45 })],
  ['a record with a field __proto__', JSON.parse('{"__proto__": {"kind": "list"}}')],
  ['a revoked proxy', revoked()],
  ['columns', new Float64Array(3)],
];

function cyclic(): object {
  const record: Record<string, unknown> = {};
  record['self'] = record;
  return record;
}

function revoked(): object {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy;
}
