import { type Clubhead, type ClubheadName, clubheads } from '../clubhead/index.js';
import { clubheadField } from '../clubhead/presets.js';
import { type FlightSettings, settingsOf } from '../flight/fly.js';
import { type Declared, optional } from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';

/** With what a shot is played, and how exactly it is computed. */
export interface ShotOptions extends FlightOptions {
  /** Clubhead, or the name of a preset; default the generic driver. Used when the shot starts from a delivery. */
  readonly clubhead?: Clubhead | ClubheadName;
}

/** Declaration of {@link ShotOptions}. @internal */
export const shotOptionFields: Declared<ShotOptions> = /* @__PURE__ */ frozen(() => ({
  ...flightOptionFields,
  clubhead: optional(clubheadField),
}));

/** {@link ShotOptions} with their defaults filled in. @internal */
export interface ShotSettings extends FlightSettings {
  readonly clubhead: Clubhead;
}

/** Fills in the defaults of options already read. @internal */
export function shotSettings({ clubhead, ...flight }: ShotOptions): ShotSettings {
  // Reading has put the record in the place of a preset's name.
  return { ...settingsOf(flight), clubhead: (clubhead as Clubhead | undefined) ?? clubheads.driver };
}
