import type { ShotTable } from 'fairflight/schema';
import { type Ladder, ladderOf, WORK } from '../ladder/ladder.js';
import { displays } from '../lib/display.js';
import type { TrainingLog } from '../log/log.js';
import type { Tradeoff } from '../tradeoff/tradeoff.js';
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
export function doJob(
  { number, study, width }: Job,
  words: Messages,
  memory: Memory,
  tell: (told: Told) => void,
): void {
  const display = displays[study.units];
  const progress =
    (stage: AnswerId | 'reading') =>
    (share: number): void =>
      tell({ kind: 'progress', number, stage, share: Math.min(1, share) });
  progress('reading')(0);
  const readings = study.files.map((file) =>
    memory.keep(`read ${file.name}`, [file, study.units], () => fileReading(file, display, words)),
  );
  tell({ kind: 'read', number, files: readings.map(({ view }) => view) });
  const tables = readings.map(({ table }) => table);
  const now = tables.at(-1);
  if (now === undefined) {
    tell({ kind: 'sheet', number, sheet: undefined });
    tell({ kind: 'done', number, trouble: '' });
    return;
  }
  try {
    answerAll({ study, readings, now, last: tables.length > 1 ? tables[0] : undefined });
    tell({ kind: 'done', number, trouble: '' });
  } catch (error) {
    tell({ kind: 'done', number, trouble: reasonOf(error) });
  }

  function answerAll(given: Given): void {
    const setup = setupOf(study, given.now);
    const drawing: Drawing = { words, width };
    const basis = [study.files, setup.club, setup.ladder, study.units];
    const answer = (made: Answer): void => tell({ kind: 'answer', number, answer: made });
    const attempt = (
      id: AnswerId,
      otherwise: (why: string) => string,
      make: () => readonly Answer[],
    ): void => {
      try {
        progress(id)(0);
        for (const made of make()) answer(made);
      } catch (error) {
        answer({ id, says: [otherwise(reasonOf(error))], parts: [] });
      }
    };
    const ladder = (): Ladder => memory.keep('ladder', basis, () => ladderFor(setup, progress('speeds')));
    const comparison = (): Comparison | undefined =>
      given.last && memory.keep('compare', basis, () => comparedWith(given.last as ShotTable, study, setup));
    attempt('speeds', words.answers.noLadder, () =>
      ladderAnswers(ladder(), display, setup.isDriver, drawing),
    );
    if (given.last !== undefined) {
      attempt('compare', words.answers.noLadder, () => {
        const compared = comparison();
        return compared === undefined ? [] : [compareAnswer(compared, display, drawing)];
      });
    }
    const log = (): TrainingLog | undefined =>
      memory.keep('weeks', basis, () => weeksOf(setup.shots, setup.ladder.scene, study.keepOdd));
    attempt('weeks', words.answers.noLadder, () => {
      const judged = log();
      return judged === undefined ? [] : [weeksAnswer(judged, display, drawing)];
    });
    tellSheet();
    attempt('elsewhere', words.answers.noElsewhere, () => {
      const flown = memory.keep('elsewhere', [...basis, setup.place], () =>
        elsewhereOf(given.now.shots, setup.place, study.units, study.keepOdd, progress('elsewhere')),
      );
      return [elsewhereAnswer(flown, display, drawing)];
    });
    if (!setup.isDriver) return;
    attempt('face', words.answers.noLadder, () => {
      const found = memory.keep('face', basis, () => faceOf(setup, given.now, progress('face')));
      return [faceAnswer(found, display, drawing)];
    });
    attempt('strokes', words.answers.noStrokes, () => {
      const tradeoff = memory.keep(
        'strokes',
        [...basis, study.score],
        (): Tradeoff => strokesOf(setup, study.score, progress('strokes')),
      );
      return [strokesAnswer(tradeoff, setup.shots.length, display, drawing)];
    });

    function tellSheet(): void {
      try {
        const read = given.readings.at(-1)?.view.says ?? '';
        const facts = { setup, ladder: ladder(), comparison: comparison(), log: log(), read };
        const sheet = sheetModel(facts, words);
        tell({ kind: 'sheet', number, sheet });
      } catch (error) {
        // The answer above says why; any other error is passed on.
        reasonOf(error);
        tell({ kind: 'sheet', number, sheet: undefined });
      }
    }
  }
}

interface Given {
  readonly study: Study;
  readonly readings: readonly FileReading[];
  readonly now: ShotTable;
  readonly last: ShotTable | undefined;
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
