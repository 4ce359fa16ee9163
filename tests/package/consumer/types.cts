import fairflight = require('fairflight');
import units = require('fairflight/units');

const launch: fairflight.Launch = {
  ballSpeed: fairflight.mph(167),
  launchAngle: units.degrees(10.9),
  spinRate: units.rpm(2686),
};
const flight: fairflight.Flight = fairflight.fly(launch);
export const carry: number = units.toYards(flight.carry);
// @ts-expect-error a bare number is no speed
export const bare: fairflight.Launch = { ...launch, ballSpeed: 150 };
