import { flyOrThrow, type Shown } from './flown.js';

/** Shots of an invented player, flown by another ball model than the reader's own, in a light wind. */
export const DRIVES: readonly Shown[] = [
  flyOrThrow({ club: 94.1, smash: 1.47, launch: 12.6, spin: 2710, attack: 1.2, direction: -1.4, tilt: -4 }),
  flyOrThrow({ club: 95.3, smash: 1.45, launch: 11.2, spin: 2480, attack: 0.4, direction: 0.8, tilt: 6 }),
  flyOrThrow({ club: 93.2, smash: 1.48, launch: 13.9, spin: 2890, attack: 2.1, direction: 2.2, tilt: 11 }),
  flyOrThrow({ club: 96.4, smash: 1.42, launch: 10.4, spin: 3150, attack: -0.8, direction: -3.1, tilt: -12 }),
  flyOrThrow({ club: 94.8, smash: 1.46, launch: 12.1, spin: 2600, attack: 1.5, direction: 0.3, tilt: 2 }),
  flyOrThrow({ club: 95.9, smash: 1.44, launch: 14.7, spin: 2350, attack: 2.6, direction: 1.9, tilt: -7 }),
];

/** The same with a shorter club. */
export const IRONS: readonly Shown[] = [
  flyOrThrow({ club: 80.3, smash: 1.34, launch: 18.2, spin: 6350, attack: -3.9, direction: -1.1, tilt: -2 }),
  flyOrThrow({ club: 81.4, smash: 1.32, launch: 17.4, spin: 6620, attack: -4.4, direction: 0.9, tilt: 3 }),
  flyOrThrow({ club: 79.7, smash: 1.36, launch: 19.1, spin: 6090, attack: -3.2, direction: 1.6, tilt: 5 }),
  flyOrThrow({ club: 82.2, smash: 1.3, launch: 16.8, spin: 6880, attack: -4.9, direction: -2.2, tilt: -6 }),
];
