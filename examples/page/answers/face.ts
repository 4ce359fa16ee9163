import type { ShotTable } from 'fairflight/schema';
import { faceChart } from '../../face/chart.js';
import { strikesIn } from '../../face/strikes.js';
import { type FaceStudy, placed, studyOf } from '../../face/study.js';
import { CAUTIONS, LIMITS, placeWords, answers as sentences, sideWords } from '../../face/words.js';
import type { Display } from '../../lib/display.js';
import type { Sheet } from '../../lib/sheet.js';
import { fixed, grouped, signed } from '../../lib/text.js';
import type { Answer, Part } from '../protocol.js';
import { MOST_PLACED, spreadOver } from '../sample.js';
import type { Setup } from '../setup.js';
import { chart, type Drawing, notes, table } from './parts.js';

/** Where shots met the face, and how many shots that was asked of. */
export interface FaceAnswer {
  readonly study: FaceStudy;
  readonly asked: number;
  readonly all: number;
}

/** Places the strikes; undefined where none can be placed. `tick` is told the share done. */
export function faceOf(setup: Setup, file: ShotTable, tick: (share: number) => void): FaceAnswer | undefined {
  const { shots, ladder } = setup;
  const { clubhead, scene, hand } = ladder;
  const chosen = spreadOver(shots, MOST_PLACED);
  const rows = chosen.map((shot) => file.aside[file.shots.indexOf(shot)] ?? {});
  const headers = file.columns.map(({ header }) => header);
  const measured = strikesIn(rows, headers, (row) => chosen[row]?.line ?? row + 1);
  const progress = {
    tick: (done: number): void => tick((0.7 * done) / chosen.length),
    stop: (): void => undefined,
  };
  const found = placed(chosen, measured?.strikes ?? [], clubhead, scene, hand, progress);
  if (found.strikes.length === 0) return undefined;
  return { study: studyOf(found, {}, clubhead, scene, hand), asked: chosen.length, all: shots.length };
}

/** Where on the face, and what that costs. */
export function faceAnswer(found: FaceAnswer | undefined, display: Display, drawing: Drawing): Answer {
  const { words, width } = drawing;
  if (found === undefined) return { id: 'face', says: [words.answers.noFace], parts: [] };
  const { study, asked, all } = found;
  const parts: Part[] = [
    chart('face', faceChart(study, display, width), strikeFigures(study, display, drawing), drawing),
    table('offCentre', offCentreSheet(study, display, drawing), drawing),
    ...notes(
      words.answers.method,
      study.unplaced.slice(0, 20).map(({ shot, why }) => `${words.answers.heads.shot} ${shot}: ${why}`),
    ),
    ...notes(words.answers.limits, LIMITS),
    ...notes(words.answers.cautions, CAUTIONS),
  ];
  const sampled = asked < all ? [words.answers.sampled(grouped(asked), grouped(all))] : [];
  return { id: 'face', says: [...sentences(study, display), ...sampled], parts };
}

function strikeFigures({ strikes, report }: FaceStudy, display: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  return {
    columns: [
      { head: heads.shot, text: true },
      { head: heads.toe, unit: 'mm' },
      { head: heads.high, unit: 'mm' },
      { head: heads.carry, unit: display.distance.unit },
    ],
    rows: [
      ...(report === undefined
        ? []
        : [
            [
              { value: placeWords(report.pattern.centre) },
              { value: signed(1000 * report.pattern.centre.toe) },
              { value: signed(1000 * report.pattern.centre.high) },
              { value: '–' },
            ],
          ]),
      ...spreadOver(strikes, 60).map(({ shot, offset, carryLost }) => [
        { value: String(shot) },
        { value: signed(1000 * offset.toe) },
        { value: signed(1000 * offset.high) },
        { value: fixed(-display.distance.of(carryLost), 1) },
      ]),
    ],
  };
}

function offCentreSheet({ offCentre, map }: FaceStudy, display: Display, { words }: Drawing): Sheet {
  const { speed, distance, angle, spin } = display;
  const { quantities } = words.page;
  return {
    columns: [
      { head: words.answers.heads.place, text: true },
      { head: quantities.ballSpeed, unit: speed.unit },
      { head: quantities.launchAngle, unit: angle.unit },
      { head: quantities.backspin, unit: spin.unit },
      { head: quantities.carry, unit: distance.unit },
      { head: words.answers.heads.change, unit: distance.unit },
      { head: quantities.side, unit: distance.unit },
    ],
    rows: offCentre.map(({ name, shot }) => [
      { value: name },
      { value: fixed(speed.of(shot.launch.ballSpeed), 1) },
      { value: fixed(angle.of(shot.launch.launchAngle), 1) },
      { value: grouped(spin.of(shot.strike?.backspin ?? 0)) },
      { value: fixed(distance.of(shot.carry)) },
      { value: fixed(distance.of(shot.carry - map.longest.carry), 1) },
      { value: sideWords(shot.side, display) },
    ]),
  };
}
