import type { Quantity } from './check.ts';

/**
 * Every limit that a rule book can name: what it bounds, in words, and what kind of quantity that is.
 * `….recommended` beside a limit is what the book would rather see inside what it allows.
 */
export const LIMITS: Readonly<Record<string, { readonly title: string; readonly quantity: Quantity }>> = {
  'gap.walk': { title: 'Gap between poles at the walk', quantity: 'length' },
  'gap.walk.recommended': { title: 'Recommended gap between poles at the walk', quantity: 'length' },
  'gap.jog': { title: 'Gap between poles at the jog', quantity: 'length' },
  'gap.lope': { title: 'Gap between poles at the lope', quantity: 'length' },
  'raised.walk.several': { title: 'Height of raised walk-overs', quantity: 'length' },
  'raised.walk.single': { title: 'Height of a single raised walk-over', quantity: 'length' },
  'raised.lope': { title: 'Height of raised lope-overs', quantity: 'length' },
  'poles.count': { title: 'Poles in the pole obstacle', quantity: 'count' },
  'back.width': { title: 'Width of a back-through on the ground', quantity: 'length' },
  'back.raised.width': { title: 'Width of a raised back-through', quantity: 'length' },
  'back.raised.height': { title: 'Height of a raised back-through', quantity: 'length' },
  'side-pass.parallel': { title: 'Room between the poles of a side pass', quantity: 'length' },
  'side-pass.height': { title: 'Height of a side-pass pole', quantity: 'length' },
  'serpentine.jog': { title: 'Room between the markers of a serpentine at the jog', quantity: 'length' },
  'box.side': { title: 'Inside of a box', quantity: 'length' },
  'gate.opening': { title: 'Opening of a gate', quantity: 'length' },
  'bridge.width': { title: 'Width of a bridge', quantity: 'length' },
  'bridge.length': { title: 'Length of a bridge', quantity: 'length' },
  'water-box.width': { title: 'Width of a water box', quantity: 'length' },
  'water-box.length': { title: 'Length of a water box', quantity: 'length' },
  'fan.inner-gap': { title: 'Gap between the inner ends of a fan', quantity: 'length' },
  'marker.clear': { title: 'From the end of a spoke to the marker', quantity: 'length' },
  'wall.clear': { title: 'From a piece to the wall', quantity: 'length' },
  'obstacle.room': { title: 'Line between two obstacles', quantity: 'length' },
  'obstacles.count': { title: 'Obstacles in the course', quantity: 'count' },
  'obstacle.seconds': { title: 'Time on one obstacle', quantity: 'time' },
  'class.entries': { title: 'Entries in one class', quantity: 'count' },
  'class.slow-entries': { title: 'Entries with a slow obstacle in the course', quantity: 'count' },
  'crossing.skew': { title: 'How far off square a pole is crossed', quantity: 'angle' },
};
