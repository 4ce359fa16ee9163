import { requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { ClubClass, Clubhead } from './clubhead.js';

const CLASSES: readonly ClubClass[] = [
  'driver',
  'fairway-wood',
  'hybrid',
  'long-iron',
  'mid-iron',
  'short-iron',
  'wedge',
];
const INERTIA = 'use gramSquareCentimetres(4800)';
const LENGTH = 'use millimetres(40)';

/**
 * Refuses a clubhead that no strike can be computed for.
 * @throws {@link FairflightError} naming the field.
 * @internal
 */
export function checkClubhead(head: Clubhead, field = 'clubhead'): void {
  requireRecord(field, head, [
    'name',
    'clubClass',
    'staticLoft',
    'mass',
    'shaftMass',
    'inertia',
    'centreOfGravity',
    'bulge',
    'roll',
    'restitution',
    'tangentialRestitution',
    'friction',
    'source',
  ]);
  requireOneOf(`${field}.clubClass`, head.clubClass, CLASSES);
  requireWithin(`${field}.staticLoft`, head.staticLoft, -0.2, 1.4, 'rad', 'use degrees(10.5)');
  requireWithin(`${field}.mass`, head.mass, 0.1, 0.6, 'kg', 'use grams(200)');
  requireWithin(`${field}.shaftMass`, head.shaftMass, 0, 0.1, 'kg', 'use grams(3)');
  const inertia = requireRecord(`${field}.inertia`, head.inertia, ['faceNormal', 'vertical', 'heelToe']);
  requireWithin(`${field}.inertia.faceNormal`, inertia.faceNormal, 1e-5, 5e-3, 'kg m²', INERTIA);
  requireWithin(`${field}.inertia.vertical`, inertia.vertical, 1e-5, 5e-3, 'kg m²', INERTIA);
  requireWithin(`${field}.inertia.heelToe`, inertia.heelToe, 1e-5, 5e-3, 'kg m²', INERTIA);
  const centre = requireRecord(`${field}.centreOfGravity`, head.centreOfGravity, ['depth', 'high', 'toe']);
  requireWithin(`${field}.centreOfGravity.depth`, centre.depth, -0.02, 0.08, 'm', LENGTH);
  requireWithin(`${field}.centreOfGravity.high`, centre.high, -0.03, 0.03, 'm', LENGTH);
  requireWithin(`${field}.centreOfGravity.toe`, centre.toe, -0.03, 0.03, 'm', LENGTH);
  const curvature = 'leave it out for a flat face';
  if (head.bulge !== undefined) requireWithin(`${field}.bulge`, head.bulge, 0.1, 1e6, 'm', curvature);
  if (head.roll !== undefined) requireWithin(`${field}.roll`, head.roll, 0.1, 1e6, 'm', curvature);
  const law = requireRecord(`${field}.restitution`, head.restitution, [
    'atReference',
    'referenceSpeed',
    'slope',
    'atEdge',
    'edgeDistance',
  ]);
  requireWithin(`${field}.restitution.atReference`, law.atReference, 0, 1, '');
  requireWithin(`${field}.restitution.referenceSpeed`, law.referenceSpeed, 0, 100, 'm/s');
  requireWithin(`${field}.restitution.slope`, law.slope, -0.02, 0.02, 's/m');
  requireWithin(`${field}.restitution.atEdge`, law.atEdge, 0, 1, '');
  requireWithin(`${field}.restitution.edgeDistance`, law.edgeDistance, 0.001, 1, 'm', LENGTH);
  const grip = head.tangentialRestitution;
  const path = `${field}.tangentialRestitution`;
  requireRecord(path, grip, ['kind', 'value', 'limit', 'onset', 'scale']);
  if (requireOneOf(`${path}.kind`, grip.kind, ['constant', 'oblique']) === 'constant') {
    requireWithin(`${path}.value`, (grip as { value?: unknown }).value, -1, 1, '');
  } else {
    const oblique = grip as { limit?: unknown; onset?: unknown; scale?: unknown };
    requireWithin(`${path}.limit`, oblique.limit, -1, 1, '');
    requireWithin(`${path}.onset`, oblique.onset, 0, 1.5, 'rad', 'use degrees(12)');
    requireWithin(`${path}.scale`, oblique.scale, 1e-3, 3, 'rad', 'use degrees(6)');
  }
  requireWithin(`${field}.friction`, head.friction, 0, 2, '');
}
