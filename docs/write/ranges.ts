/** How comments and pages write a range: `−π/2 to π/2`, `0 to 2,100`, `1 to 2³⁰`. One style, held to by a test. */
export function saidRange({ min, max }: { readonly min: number; readonly max: number }): string {
  return `${saidNumber(min)} to ${saidNumber(max)}`;
}

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Powers of two from here on are written as such. */
const LARGE = 2 ** 20;

/** A number as people write it. */
export function saidNumber(value: number): string {
  if (value < 0) return `−${saidNumber(-value)}`;
  for (const [times, text] of [
    [0.5, 'π/2'],
    [1, 'π'],
    [2, '2π'],
  ] as const) {
    if (value === times * Math.PI) return text;
  }
  if (value === Number.MAX_SAFE_INTEGER) return '2⁵³ − 1';
  const power = Math.log2(value);
  if (value >= LARGE && Number.isInteger(power)) {
    return `2${String(power).replace(/\d/g, (digit) => SUPERSCRIPTS[Number(digit)] ?? '')}`;
  }
  // Rounding, as in (1.4 + 0.4) / 2, is nobody's range.
  const rounded = Number(value.toPrecision(12));
  if (rounded !== value) return saidNumber(rounded);
  if (value !== 0 && (value < 1e-3 || value >= 1e7)) return value.toExponential().replace('e+', 'e');
  const [whole = '', part] = String(value).split('.');
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  return part === undefined ? grouped : `${grouped}.${part}`;
}
