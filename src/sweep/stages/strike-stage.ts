import type { Ball } from '../../ball/index.js';
import { type Clubhead, clubheadFields } from '../../inputs/clubhead.js';
import { readRecord } from '../../inputs/read.js';
import { refusal } from '../../inputs/refuse.js';
import { impactConstants, OUT, OUT_LENGTH, STATUS, strikeKernel } from '../../strike/kernel.js';
import type { FactorName } from '../factors.js';
import { anyVaries, type Input, type Inputs, valueAt, withInputs } from '../inputs.js';
import type { OutputName } from '../outputs.js';
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

const KEPT: readonly (readonly [OutputName, number])[] = [
  ['launch.ballSpeed', OUT.ballSpeed],
  ['launch.launchAngle', OUT.launchAngle],
  ['launch.launchDirection', OUT.launchDirection],
  ['launch.spinRate', OUT.spinRate],
  ['launch.spinAxisTilt', OUT.spinAxisTilt],
  ['launch.rifleSpin', OUT.rifleSpin],
  ['strike.spinLoft', OUT.spinLoft],
  ['strike.faceToPath', OUT.faceToPath],
  ['strike.backspin', OUT.backspin],
  ['strike.sidespin', OUT.sidespin],
  ['strike.restitution', OUT.restitution],
  ['strike.clubSpeedAfter', OUT.clubSpeedAfter],
];

/**
 * The strike of each row.
 * @throws `FairflightError` for a clubhead that no strike can be computed for
 * @internal
 */
export function strikeStage(inputs: Inputs, clubhead: Clubhead, scenes: SceneRows): Stage {
  const delivery: readonly Input[] = DELIVERY.map(
    (name) => inputs.find(name) ?? { name, column: -1, constant: 0 },
  );
  const head = inputs.group('clubhead');
  requireLaw(head, clubhead);
  const constantsAt = (columns: readonly Float64Array[], i: number, ball: Ball): Constants =>
    impactConstants(withInputs(clubhead, head, columns, i), ball);
  const fixedHead = !anyVaries(head);
  if (fixedHead) readRecord(clubheadFields, withInputs(clubhead, head, [], 0), 'options.clubhead');
  let known: { readonly ball: Ball; readonly constants: Constants } | undefined;
  const out = new Float64Array(OUT_LENGTH);

  return (columns, work, count) => {
    const kept = KEPT.map(([name, at]) => [work.column(name), at] as const);
    const smash = work.column('strike.smashFactor');
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
      let constants = known?.constants;
      if (!fixedHead || known?.ball !== ball || constants === undefined) {
        constants = constantsAt(columns, i, ball);
        known = { ball, constants };
      }
      const clubSpeed = valueAt(speed, columns, i);
      const result = strikeKernel(
        constants,
        clubSpeed,
        valueAt(attack, columns, i),
        valueAt(path, columns, i),
        valueAt(face, columns, i),
        valueAt(loft, columns, i),
        valueAt(toe, columns, i),
        valueAt(high, columns, i),
        valueAt(closure, columns, i),
        inputs.mirror,
        out,
      );
      if (result !== STATUS.ok) {
        work.status[i] = result === STATUS.restitution ? STATUS_CODE.outsideRange : STATUS_CODE.noStrike;
        continue;
      }
      for (const [column, at] of kept) column[i] = out[at] as number;
      smash[i] = (out[OUT.ballSpeed] as number) / clubSpeed;
    }
  };
}

type Constants = ReturnType<typeof impactConstants>;

/** A factor of one law of tangential restitution makes no sense on a head with the other. */
function requireLaw(head: readonly Input[], clubhead: Clubhead): void {
  const { kind } = clubhead.tangentialRestitution;
  for (const { name } of head) {
    const law = /tangentialRestitution\.(\w+)$/.exec(name)?.[1];
    if (law === undefined || (law === 'value') === (kind === 'constant')) continue;
    throw refusal(name, `${name} does not belong to a head whose tangential restitution is ${kind}`, {
      hint: 'give options.clubhead with the other kind of law',
    });
  }
}
