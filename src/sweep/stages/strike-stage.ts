import type { Ball } from '../../ball/index.js';
import type { Clubhead } from '../../inputs/clubhead.js';
import { refusal } from '../../inputs/refuse.js';
import { type StrikeResult, squareStrike } from '../../strike/impact.js';
import { createStriker, type Striker } from '../../strike/striker.js';
import { strikeWarnings } from '../../strike/warnings.js';
import { bitsOf } from '../../warnings/bits.js';
import { type FactorName, isWithin } from '../factors.js';
import { anyVaries, type Input, type Inputs, valueAt, withInputs } from '../inputs.js';
import { STATUS_CODE } from '../status.js';
import type { SceneRows } from './scene-rows.js';
import type { Work } from './work.js';

/** A stage of the walk over the first `count` rows of the scratch. @internal */
export type Stage = (columns: readonly Float64Array[], work: Work, count: number) => void;

const DELIVERY = [
  'delivery.clubSpeed',
  'delivery.attackAngle',
  'delivery.clubPath',
  'delivery.faceAngle',
  'delivery.dynamicLoft',
  'delivery.strikeOffset.toe',
  'delivery.strikeOffset.high',
  'delivery.closureRate',
] as const satisfies readonly FactorName[];

/**
 * The strike of each row.
 * @throws `FairflightError` for a factor of the grip law that the clubhead has not
 * @internal
 */
export function strikeStage(inputs: Inputs, clubhead: Clubhead, scenes: SceneRows): Stage {
  const delivery: readonly Input[] = DELIVERY.map(
    (name) => inputs.find(name) ?? { name, column: -1, constant: 0, path: '' },
  );
  // The ends of a range are checked at the door; what lies behind a reading may be anything.
  const misread = delivery.filter(({ error }) => error !== undefined);
  const head = inputs.group('clubhead');
  requireLaw(head, clubhead);
  const strikerAt = (columns: readonly Float64Array[], i: number, ball: Ball): KnownStriker => {
    const rowHead = withInputs(clubhead, head, columns, i);
    return { ball, head: rowHead, striker: createStriker({ clubhead: rowHead, ball }) };
  };
  const fixedHead = !anyVaries(head);
  let known: KnownStriker | undefined;
  const input = { ...squareStrike(0, 0, 0), mirror: inputs.mirror };

  return (columns, work, count) => {
    const write = writerTo(work);
    const [speed, attack, path, face, loft, toe, high, closure] = delivery as readonly [
      Input,
      Input,
      Input,
      Input,
      Input,
      Input,
      Input,
      Input,
    ];
    for (let i = 0; i < count; i++) {
      if (work.status[i] !== STATUS_CODE.landed) continue;
      const ball = scenes.at(columns, i)?.ball;
      if (ball === undefined) {
        work.status[i] = STATUS_CODE.outsideRange;
        continue;
      }
      if (misread.some((reading) => !isWithin(reading.name, valueAt(reading, columns, i)))) {
        work.status[i] = STATUS_CODE.outsideRange;
        continue;
      }
      if (!fixedHead || known?.ball !== ball) known = strikerAt(columns, i, ball);
      input.clubSpeed = valueAt(speed, columns, i);
      input.attackAngle = valueAt(attack, columns, i);
      input.clubPath = valueAt(path, columns, i);
      input.faceAngle = valueAt(face, columns, i);
      input.dynamicLoft = valueAt(loft, columns, i);
      input.toe = valueAt(toe, columns, i);
      input.high = valueAt(high, columns, i);
      input.closureRate = valueAt(closure, columns, i);
      const struck = known.striker.strike(input);
      if (typeof struck === 'string') {
        work.status[i] =
          struck === 'impossible-restitution' ? STATUS_CODE.outsideRange : STATUS_CODE.noStrike;
        continue;
      }
      write(struck, input.clubSpeed, i);
      work.warnings[i] = bitsOf(strikeWarnings(input, known.head, ball, struck.spinLoft));
    }
  };
}

/** The striker last made, and for what. */
interface KnownStriker {
  readonly ball: Ball;
  readonly head: Clubhead;
  readonly striker: Striker;
}

/** Writes strikes into the rows of the output columns. */
function writerTo(work: Work): (struck: StrikeResult, clubSpeed: number, i: number) => void {
  const ballSpeed = work.column('launch.ballSpeed');
  const launchAngle = work.column('launch.launchAngle');
  const launchDirection = work.column('launch.launchDirection');
  const spinRate = work.column('launch.spinRate');
  const spinAxisTilt = work.column('launch.spinAxisTilt');
  const rifleSpin = work.column('launch.rifleSpin');
  const smashFactor = work.column('strike.smashFactor');
  const spinLoft = work.column('strike.spinLoft');
  const faceToPath = work.column('strike.faceToPath');
  const backspin = work.column('strike.backspin');
  const sidespin = work.column('strike.sidespin');
  const restitution = work.column('strike.restitution');
  const clubSpeedAfter = work.column('strike.clubSpeedAfter');
  return (struck, clubSpeed, i) => {
    const { launch } = struck;
    ballSpeed[i] = launch.ballSpeed;
    launchAngle[i] = launch.launchAngle;
    launchDirection[i] = launch.launchDirection;
    spinRate[i] = launch.spinRate;
    spinAxisTilt[i] = launch.spinAxisTilt;
    rifleSpin[i] = launch.rifleSpin;
    smashFactor[i] = launch.ballSpeed / clubSpeed;
    spinLoft[i] = struck.spinLoft;
    faceToPath[i] = struck.faceToPath;
    backspin[i] = struck.backspin;
    sidespin[i] = struck.sidespin;
    restitution[i] = struck.restitution;
    clubSpeedAfter[i] = struck.clubSpeedAfter;
  };
}

/** A factor of one law of tangential restitution makes no sense on a head with another. */
function requireLaw(head: readonly Input[], clubhead: Clubhead): void {
  const law = clubhead.tangentialRestitution;
  for (const { name, path } of head) {
    const part = /tangentialRestitution\.(\w+)$/.exec(name)?.[1];
    if (part === undefined || Object.hasOwn(law, part)) continue;
    throw refusal(path, `${name} does not belong to a head whose tangential restitution is ${law.kind}`, {
      hint: 'give options.clubhead with that kind of law',
    });
  }
}
