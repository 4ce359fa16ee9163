/**
 * Name of a column in a file: the name in snake case, then the unit, so that it needs no quotes in SQL, R or Python:
 * `launch.ballSpeed` in m/s becomes `launch_ball_speed_m_per_s`.
 * @internal
 */
export function columnName(name: string, unit: string): string {
  const words = name.replace(/\./g, '_').replace(/[A-Z]/g, (letter) => `_${letter}`);
  const suffix = unit.replace('/', '_per_').replace(' ', '_');
  return (suffix === '' ? words : `${words}_${suffix}`).toLowerCase();
}
