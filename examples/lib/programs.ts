/** The programs by the one name that each has everywhere: command, script, file and what it writes. */
export const PROGRAMS = {
  ladder: 'one driver at several club speeds: what speed brings, and whether the loft fits',
  tradeoff: 'faster or straighter: what more club speed is worth in strokes as shots scatter wider with it',
  log: 'practice sessions over weeks: is the gain in speed real, and what is it worth?',
  face: 'where on the face it was struck, what that costs, and the one move that would gain most',
  places: 'a player’s distances in winter, in summer, at altitude and in wind, as a card to print',
  worth: 'what one more mph, degree, 100 rpm, 5 mm, 10 °C, 1000 ft or 5 m/s of wind does to a shot',
  doubt: 'how much of an uncertain distance hangs on the ball model, the readings, the air and the turf',
  sweep: 'a million drives in a Parquet file, and what their carry depends on',
  shots:
    'the shots of a file with carry, apex, descent, total and strike by the model, for a spreadsheet, R or Python',
} as const;

/** Name of a program. */
export type ProgramName = keyof typeof PROGRAMS;
