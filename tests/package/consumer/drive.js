// One drive through the public face, the same in every setting the package is tested in.
export function drive(fairflight) {
  const { degrees, fly, mph, playShot, rpm, toYards } = fairflight;
  const launch = { ballSpeed: mph(167), launchAngle: degrees(10.9), spinRate: rpm(2686) };
  return { carry: toYards(fly(launch).carry), total: toYards(playShot(launch).total) };
}
