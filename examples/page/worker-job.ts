import type { ShotTable } from 'fairflight/schema';
import { type Ladder, ladderOf, WORK } from '../ladder/ladder.js';
import { displays } from '../lib/display.js';
import type { TrainingLog } from '../log/log.js';
import { type Comparison, compareAnswer, comparisonOf } from './answers/compare.js';
import { elsewhereAnswer, elsewhereOf } from './answers/elsewhere.js';
import { faceAnswer, faceOf } from './answers/face.js';
import type { Drawing } from './answers/parts.js';
import { ladderAnswers } from './answers/speeds.js';
import { strokesAnswer, strokesOf } from './answers/strokes.js';
import { weeksAnswer, weeksOf } from './answers/weeks.js';
import type { Messages } from './catalogue/messages.js';
import type { Memory } from './memory.js';
import type { Answer, AnswerId, Job, Told } from './protocol.js';
import { type FileReading, fileReading } from './read-file.js';
import { clubIn, reasonOf, type Setup, setupOf } from './setup.js';
import { sheetModel } from './sheet-model.js';
import type { Study } from './study.js';

/** Does one job from reading to the sheet, and tells of each part as soon as it is ready. */
export function doJob(job: Job, words: Messages, memory: Memory, tell: (told: Told) => void): void {
  const { number, study } = job;
  const display = displays[study.units];
  tell({ kind: 'progress', number, stage: 'reading', share: 0 });
  const readings = study.files.map((file) =>
    memory.keep(`read ${file.name}`, [file, study.units], () => fileReading(file, display, words)),
  );
  tell({ kind: 'read', number, files: readings.map(({ view }) => view) });
  const [now, last] = readings.map(({ table }) => table).reverse();
  if (now === undefined) {
    tell({ kind: 'sheet', number, sheet: undefined });
    tell({ kind: 'done', number, trouble: '' });
    return;
  }
  try {
    answerAll({ job, words, memory, tell, setup: setupOf(study, now), readings, now, last });
    tell({ kind: 'done', number, trouble: '' });
  } catch (error) {
    tell({ kind: 'done', number, trouble: reasonOf(error) });
  }
}

/** What all answers are made of. */
interface Given {
  readonly job: Job;
  readonly words: Messages;
  readonly memory: Memory;
  readonly tell: (told: Told) => void;
  readonly setup: Setup;
  readonly readings: readonly FileReading[];
  readonly now: ShotTable;
  readonly last: ShotTable | undefined;
}

/** Answers that rest on one another; each is worked out once, when it is first asked for. */
interface Records {
  readonly ladder: () => Ladder;
  readonly comparison: () => Comparison | undefined;
  readonly log: () => TrainingLog | undefined;
}

function answerAll(given: Given): void {
  const { job, words, setup, last } = given;
  const { display } = setup;
  const drawing: Drawing = { words, width: job.width };
  const records = recordsOf(given);
  attempt(given, 'speeds', words.answers.noLadder, () =>
    ladderAnswers(records.ladder(), display, setup.isDriver, drawing),
  );
  if (last !== undefined) {
    attempt(given, 'compare', words.answers.noLadder, () => {
      const compared = records.comparison();
      return compared === undefined ? [] : [compareAnswer(compared, display, drawing)];
    });
  }
  attempt(given, 'weeks', words.answers.noLadder, () => {
    const log = records.log();
    return log === undefined ? [] : [weeksAnswer(log, display, drawing)];
  });
  tellSheet(given, records);
  answerElsewhere(given, drawing);
  if (setup.isDriver) answerDriver(given, drawing);
}

function answerElsewhere(given: Given, drawing: Drawing): void {
  const { job, words, memory, setup, now } = given;
  const { study } = job;
  attempt(given, 'elsewhere', words.answers.noElsewhere, () => {
    const flown = memory.keep('elsewhere', [...basisOf(given), setup.place], () =>
      elsewhereOf(now.shots, setup.place, study.units, study.keepOdd, progress(given, 'elsewhere')),
    );
    return [elsewhereAnswer(flown, now.shots.length, setup.display, drawing)];
  });
}

/** Where on the face, and what speed and scatter are worth: about drivers alone. */
function answerDriver(given: Given, drawing: Drawing): void {
  const { job, words, memory, setup, now } = given;
  const { score } = job.study;
  attempt(given, 'face', words.answers.noLadder, () => {
    const found = memory.keep('face', basisOf(given), () => faceOf(setup, now, progress(given, 'face')));
    return [faceAnswer(found, setup.display, drawing)];
  });
  attempt(given, 'strokes', words.answers.noStrokes, () => {
    const tradeoff = memory.keep('strokes', [...basisOf(given), score], () =>
      strokesOf(setup, score, progress(given, 'strokes')),
    );
    return [strokesAnswer(tradeoff, setup.shots.length, setup.display, drawing)];
  });
}

/** Tells the answers to a question or, where it has none, why. */
function attempt(
  given: Given,
  id: AnswerId,
  otherwise: (why: string) => string,
  make: () => readonly Answer[],
): void {
  const { tell, job } = given;
  const say = (answer: Answer): void => tell({ kind: 'answer', number: job.number, answer });
  try {
    progress(given, id)(0);
    for (const answer of make()) say(answer);
  } catch (error) {
    say({ id, says: [otherwise(reasonOf(error))], parts: [] });
  }
}

function progress({ tell, job }: Given, stage: AnswerId): (share: number) => void {
  return (share) => tell({ kind: 'progress', number: job.number, stage, share: Math.min(1, share) });
}

function tellSheet({ words, tell, job, setup, readings }: Given, records: Records): void {
  const { number } = job;
  try {
    const read = readings.at(-1)?.view.says ?? '';
    const facts = {
      setup,
      ladder: records.ladder(),
      comparison: records.comparison(),
      log: records.log(),
      read,
    };
    tell({ kind: 'sheet', number, sheet: sheetModel(facts, words) });
  } catch (error) {
    // The answer above says why; any other error is passed on.
    reasonOf(error);
    tell({ kind: 'sheet', number, sheet: undefined });
  }
}

/** What every record of these shots is made from. */
function basisOf({ job: { study }, setup }: Given): readonly unknown[] {
  return [study.files, setup.club, setup.ladder, study.units];
}

function recordsOf(given: Given): Records {
  const { job, memory, setup, last } = given;
  const { study } = job;
  const basis = basisOf(given);
  return {
    ladder: () => memory.keep('ladder', basis, () => ladderFor(setup, progress(given, 'speeds'))),
    comparison: () => last && memory.keep('compare', basis, () => comparedWith(last, study, setup)),
    log: () => memory.keep('weeks', basis, () => weeksOf(setup.shots, setup.ladder.scene, study.keepOdd)),
  };
}

function ladderFor({ shots, ladder, display }: Setup, tick: (share: number) => void): Ladder {
  return ladderOf(
    { shots, setup: ladder, calibration: undefined, bands: undefined, mapBand: undefined, display },
    { tick: (done) => tick(done / WORK), stop: () => undefined },
  );
}

function comparedWith(last: ShotTable, study: Study, setup: Setup): Comparison {
  const club = last.shots.some((shot) => shot.club === setup.club) ? setup.club : clubIn(study, last.shots);
  const before = club === '' ? last.shots : last.shots.filter((shot) => shot.club === club);
  return comparisonOf(before, setup.shots, setup.ladder.scene);
}
