/** What has been published about training for club speed, as far as it could be read. */
export interface Published {
  readonly finding: string;
  readonly source: string;
}

/** Effects and correlations; only abstracts could be read, which is said. */
export const PUBLISHED: readonly Published[] = [
  {
    finding:
      'Resistance training, review of 20 studies: general and golf-specific work together gave 4.1 % more club speed and 5.2 % more distance; general work alone 1.6 % and 4.8 %. Most effective were eight-week programmes with fast golf-specific movements.',
    source:
      'Uthoff et al. 2021, Journal of Strength and Conditioning Research 35(9), 2651 (abstract read only)',
  },
  {
    finding: 'Eight weeks of strength training, 12 golfers: most outcomes improved, peak club speed did not.',
    source:
      'Oranchuk et al. 2020, Journal of Strength and Conditioning Research 34, 2205 (abstract read only)',
  },
  {
    finding:
      'What goes with club speed, meta-analysis of 20 studies (Fisher-transformed correlation): jump impulse 0.82, jump height 0.53, upper-body strength 0.48, lower-body strength 0.47. A correlation does not say what training brings.',
    source: 'Brennan et al. 2024, Sports Medicine (abstract read only)',
  },
  {
    finding:
      'The lower back is the commonest site of injury in all groups of golfers (58 studies, 10 437 golfers).',
    source:
      'Garrett et al. 2024, Journal of Strength and Conditioning Research 38, 1157 (abstract read only)',
  },
];

/** What could not be found. */
export const NO_OVERSPEED_EFFECT =
  'Overspeed training with light clubs: no peer-reviewed effect size was found, so none is given here and no gain is promised.';

/** Club speed gained by combined training in the review above, as a share. */
export const COMBINED_TRAINING = 0.041;
