/** A few numbers that answer one question, by name. */
export type Numbers = Readonly<Record<string, number>>;

/** Questions put to one room of the library. Their answers are recorded as `room/question/number`. */
export interface Room {
  /** First part of every id. */
  readonly room: string;
  /** Significant digits that must stay: 12 for closed formulae, 10 for integrated paths, 8 for searches and statistics. */
  readonly digits: 8 | 10 | 12;
  /** The questions by the second part of their ids. */
  readonly questions: Readonly<Record<string, () => Numbers>>;
}

/** A number and the significant digits of it that must stay. */
export interface Answer {
  readonly value: number;
  readonly digits: number;
}

/** Asks every question. @throws when two answers have one id or an answer is no finite number */
export function answersOf(rooms: readonly Room[]): ReadonlyMap<string, Answer> {
  const answers = new Map<string, Answer>();
  for (const { room, digits, questions } of rooms) {
    for (const [question, ask] of Object.entries(questions)) {
      for (const [name, value] of Object.entries(asked(`${room}/${question}`, ask))) {
        const id = `${room}/${question}/${name}`;
        if (answers.has(id)) throw new Error(`${id} is asked twice`);
        if (!Number.isFinite(value)) throw new Error(`${id} is no finite number: ${value}`);
        answers.set(id, { value, digits });
      }
    }
  }
  return answers;
}

function asked(name: string, ask: () => Numbers): Numbers {
  try {
    return ask();
  } catch (cause) {
    throw new Error(`${name} has no answer`, { cause });
  }
}

/** Numbers of a result at dotted paths, such as `launch.ballSpeed` or `bounces.0.hopHeight`, named by their paths. */
export function pick(result: unknown, ...paths: readonly string[]): Numbers {
  return Object.fromEntries(
    paths.map((path) => {
      const found = path
        .split('.')
        .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], result);
      return [path, found as number];
    }),
  );
}

/** One question for each row of a table. */
export function each<Row>(
  rows: Readonly<Record<string, Row>>,
  ask: (row: Row) => Numbers,
): Room['questions'] {
  return Object.fromEntries(Object.entries(rows).map(([name, row]) => [name, () => ask(row)]));
}
