/** Names of the kernel's parameters, in the order of the parameter array; a batch shares those from `across` to `form`. */
export const KERNEL_PARAMETERS = [
  'a0',
  'b0',
  'c0',
  'w0', // initial air velocity on the kernel's axes [m/s] and r ω [cells of S times m/s]
  'gravity2',
  'gravity3', // gravity along the second and third axis [m/s²]
  'drag',
  'lift', // ρ A / 2m for drag and for lift (0 for a ball without spin) [1/m]
  'decay', // minus the spin decay per metre [1/m]
  'cellsPerSpeed', // cells of Re per m/s of air speed
  'normal1',
  'normal2',
  'normal3',
  'normalWind', // climb from the ground = normal · (a, b, c) + normalWind
  'up2',
  'up3', // upward components of the second and third axis
  'height0', // height above the ground at the start [m]
  'firstStep', // [s]
  'across', // 1 when only the spin across the air enters S, else 0
  'sLow',
  'sHigh', // first and last usable cell of S
  'rLow',
  'rHigh', // first and last usable cell of Re
  'perTolerance', // 1 / velocity tolerance [s/m]
  'timeLimit', // [s]
  'restepApex', // 1 to end a step at the apex
  'form', // how Re enters the law
  'wind1',
  'wind2',
  'wind3', // wind at the reference height against the axes, which move with one that is the same everywhere [m/s]
] as const;

/** Names of the kernel's results, in the order of the output array. */
export const KERNEL_RESULTS = [
  'a',
  'b',
  'c',
  'w',
  'A',
  'B',
  'C',
  't', // state at the end: air velocity, r ω, displacement against the air, time
  'apex',
  'apexA',
  'apexB',
  'apexC',
  'apexT', // height of the apex, displacement and time there
  'slowest',
  'fastest',
  'leastSpin',
  'mostSpin', // range of air speed and of S over the nodes
  'nodes', // how many there were
] as const;

/** What the kernel keeps of each node when given room for a track. */
export const TRACK_FIELDS = ['t', 'a', 'b', 'c', 'w', 'A', 'B', 'C', 'da', 'db', 'dc'] as const;
