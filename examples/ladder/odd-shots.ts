import { type LocatedStrike, locateStrike, strike } from 'fairflight';
import type { MeasuredShot, OddShot } from 'fairflight/session';
import { si } from 'fairflight/units';
import type { Display } from '../lib/display.js';
import { ODD_WORDS, oddReadings } from '../lib/odd.js';
import { inWords, quantityNamed } from '../lib/shot-quantities.js';
import { capital, fixed } from '../lib/text.js';
import type { FlownShot, LadderSetup, Rung } from './rungs.js';

/** A shot that stands apart, in words. */
export interface OddNote {
  readonly shot: number;
  readonly line: number | undefined;
  readonly band: string;
  readonly verdict: OddShot['verdict'];
  /** The readings that stand apart, the oddest first. */
  readonly readings: string;
  /** What it may be: a misread, or a strike off the centre. */
  readonly hint: string | undefined;
}

/** Above this share of what a centred strike gives, a smash factor is a misread: speeds are read to about 2 %. */
const READING_ROOM = 1.03;
/** Strikes closer to the centre than this are not remarked on [m]. */
const NEAR_CENTRE = 0.012;

/** Puts one odd shot into words. */
export function oddNote(odd: OddShot, rung: Rung, setup: LadderSetup, display: Display): OddNote {
  const flown = rung.shots.find(({ index }) => index === odd.shot);
  return {
    shot: odd.shot + 1,
    line: odd.line,
    band: rung.name,
    verdict: odd.verdict,
    readings: oddReadings(odd, display),
    hint: flown === undefined ? undefined : hintFor(flown, rung, setup, display),
  };
}

function hintFor(shot: FlownShot, rung: Rung, setup: LadderSetup, display: Display): string | undefined {
  return misreadHint(shot, rung, setup, display) ?? strikeHint(shot.measured, setup);
}

function misreadHint(
  shot: FlownShot,
  rung: Rung,
  { clubhead }: LadderSetup,
  display: Display,
): string | undefined {
  const { clubSpeed, ballSpeed, attackAngle, carry } = shot.measured;
  const delivered = rung.loft?.delivered;
  if (clubSpeed === undefined || ballSpeed === undefined || delivered === undefined) return undefined;
  const attack = attackAngle ?? rung.attackAngle ?? si(0);
  const most = strike({ clubSpeed, attackAngle: attack, dynamicLoft: delivered }, { clubhead }).smashFactor;
  const smash = ballSpeed / clubSpeed;
  if (smash <= READING_ROOM * most) return undefined;
  const said = `smash factor ${fixed(smash, 2)} is more than a centred strike gives (${fixed(most, 2)}): a misread`;
  if (carry === undefined) return said;
  const distance = quantityNamed('carry');
  const expected = shot.model.carry - (rung.disagreement.carry?.mean ?? 0);
  const fits = Math.abs(expected - carry) < 0.04 * carry;
  const flight = `a ball that fast would carry ${inWords(distance, expected, display)}, it carried ${inWords(distance, carry, display)}`;
  return fits
    ? `${said}; ${flight}, so the club speed is the doubtful reading`
    : `${said}; ${flight}, so the ball speed is the doubtful reading`;
}

/** Where on the face it may have been struck, when the readings can tell. */
function strikeHint(measured: MeasuredShot, { clubhead, hand }: LadderSetup): string | undefined {
  const { ballSpeed, clubSpeed } = measured;
  if (ballSpeed === undefined || clubSpeed === undefined) return undefined;
  const found = locateStrike(measured, { clubhead, hand });
  if (found.outcome === 'inconsistent') return found.message;
  const { toe, high } = found.strikeOffset;
  if (Math.hypot(toe, high) < NEAR_CENTRE || found.identifiability.toe.weak) return undefined;
  return `by the strike model it was struck ${placeWords(found)}`;
}

function placeWords({ strikeOffset: { toe, high }, regions }: LocatedStrike): string {
  const millimetre = (value: number): string => `${fixed(Math.abs(value) * 1000)} mm`;
  const across = `${millimetre(toe)} toward the ${toe > 0 ? 'toe' : 'heel'}`;
  const up = Math.abs(high) < 0.004 ? 'at mid height' : `${millimetre(high)} ${high > 0 ? 'high' : 'low'}`;
  return `${across}, ${up} (±${millimetre(regions.p95.semiMajor)}, 95 %)`;
}

/** One odd shot as a line of text. */
export function oddLine({ verdict, line, shot, band, readings, hint }: OddNote): string {
  const where = line === undefined ? `shot ${shot}` : `line ${line}`;
  return `${ODD_WORDS[verdict]}, ${where} (${band}): ${readings}${hint === undefined ? '' : `. ${capital(hint)}`}.`;
}
