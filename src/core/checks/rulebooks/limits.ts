import type { Quantity } from '../check.ts';

/** A limit as the rule books can set it. */
interface LimitTerm {
  /** What it bounds, in words. */
  readonly title: string;
  readonly quantity: Quantity;
  /** Most books leave it unset, and that is no gap in them: advice inside a limit, or relief for one level. */
  readonly optional?: true;
}

/**
 * Every limit that a rule book can name. `….recommended` beside a limit is what the book would rather see inside what it
 * allows. A check whose limit is new adds its line here.
 */
export const LIMITS: Readonly<Record<string, LimitTerm>> = {
  'gap.walk': { title: 'Gap between poles at the walk', quantity: 'length' },
  'gap.walk.recommended': { title: 'Recommended gap between poles at the walk', quantity: 'length', optional: true },
  'gap.jog': { title: 'Gap between poles at the jog', quantity: 'length' },
  'gap.lope': { title: 'Gap between poles at the lope', quantity: 'length' },
  'raised.walk.several': { title: 'Height of raised walk-overs', quantity: 'length' },
  'raised.walk.single': { title: 'Height of a single raised walk-over', quantity: 'length' },
  'raised.jog': { title: 'Height of raised jog-overs', quantity: 'length' },
  'raised.lope': { title: 'Height of raised lope-overs', quantity: 'length' },
  'jump.height': { title: 'Height of anything that is ridden over', quantity: 'length' },
  'poles.count': { title: 'Poles in the pole obstacle', quantity: 'count' },
  'back.width': { title: 'Width of a back-through on the ground', quantity: 'length' },
  'back.barrels.width': { title: 'Width of a back-through between barrels', quantity: 'length' },
  'back.raised.width': { title: 'Width of a raised back-through', quantity: 'length' },
  'back.raised.height': { title: 'Height of a raised back-through', quantity: 'length' },
  'side-pass.parallel': { title: 'Room between the poles of a side pass', quantity: 'length' },
  'side-pass.height': { title: 'Height of a side-pass pole', quantity: 'length' },
  'serpentine.walk': { title: 'Room between the markers of a serpentine at the walk', quantity: 'length' },
  'serpentine.jog': { title: 'Room between the markers of a serpentine at the jog', quantity: 'length' },
  'serpentine.markers': { title: 'Markers of a serpentine', quantity: 'count' },
  'box.side': { title: 'Inside of a box', quantity: 'length' },
  'square.pole': { title: 'Length of the poles of a square round a marker', quantity: 'length' },
  'gate.opening': { title: 'Opening of a gate', quantity: 'length' },
  'gate.height': { title: 'Height of a gate', quantity: 'length' },
  'bridge.width': { title: 'Width of a bridge', quantity: 'length' },
  'bridge.length': { title: 'Length of a bridge', quantity: 'length' },
  'water-box.width': { title: 'Width of a water box', quantity: 'length' },
  'water-box.length': { title: 'Length of a water box', quantity: 'length' },
  'pole.length': { title: 'Length of a pole', quantity: 'length' },
  'gap.uneven': { title: 'How much a gap differs between the two ends of its poles', quantity: 'length' },
  'fan.inner-gap': { title: 'Gap between the inner ends of a fan', quantity: 'length' },
  'marker.clear': { title: 'From the end of a spoke to the marker', quantity: 'length' },
  'align.wall': { title: 'How far off the walls an obstacle has to lie to look meant', quantity: 'angle' },
  'wall.clear': { title: 'From a piece to the wall', quantity: 'length' },
  'obstacle.room': { title: 'Line between two obstacles', quantity: 'length' },
  'entrance.clear': { title: 'Free ground before the entrance', quantity: 'length' },
  'sweep.clear': { title: 'Room beside the hooves in a lane or turn', quantity: 'length' },
  'combination.room': {
    title: 'Line between two obstacles below which they are a combination',
    quantity: 'length',
    optional: true,
  },
  'combination.as-one': { title: 'A combination counts as one obstacle', quantity: 'count', optional: true },
  'mandatory.gate': { title: 'A gate', quantity: 'count' },
  'mandatory.poles': { title: 'Poles to ride over', quantity: 'count' },
  'mandatory.bridge': { title: 'A bridge', quantity: 'count' },
  'mandatory.backing': { title: 'A backing obstacle', quantity: 'count' },
  'mandatory.walk': { title: 'A walk', quantity: 'count', optional: true },
  'forbidden.rolling': { title: 'Poles that roll', quantity: 'count', optional: true },
  'forbidden.tyres': { title: 'Tyres', quantity: 'count', optional: true },
  'forbidden.animals': { title: 'Live animals', quantity: 'count', optional: true },
  'forbidden.hides': { title: 'Hides', quantity: 'count', optional: true },
  'forbidden.plastic': { title: 'Plastic pipes and poles', quantity: 'count', optional: true },
  'forbidden.see-saw': { title: 'See-saws and moving bridges', quantity: 'count', optional: true },
  'forbidden.moving-water': { title: 'Water with moving parts', quantity: 'count', optional: true },
  'forbidden.fire': { title: 'Fire and smoke', quantity: 'count', optional: true },
  'shown.jog': { title: 'Distance over which the jog is shown', quantity: 'length' },
  'shown.lope': { title: 'Distance over which the lope is shown', quantity: 'length' },
  'lead.stated': { title: 'Leads stated for the lope', quantity: 'count' },
  'level.lope': { title: 'Parts of the course at the lope', quantity: 'count', optional: true },
  'level.raised': { title: 'Raised poles for this level', quantity: 'count', optional: true },
  'level.back-bends': { title: 'Bends while backing for this level', quantity: 'count', optional: true },
  'obstacles.count': { title: 'Obstacles in the course', quantity: 'count' },
  'obstacle.seconds': { title: 'Time on one obstacle', quantity: 'time' },
  'class.seconds': { title: 'Time that the class takes', quantity: 'time' },
  'class.entries': { title: 'Entries in one class', quantity: 'count' },
  'class.slow-entries': { title: 'Entries with one slow obstacle in the course', quantity: 'count' },
  'class.slow-entries.many': {
    title: 'Entries above which a slow obstacle is better left out',
    quantity: 'count',
    optional: true,
  },
  'class.slow-entries.too-many': {
    title: 'Entries above which a slow obstacle has to be left out',
    quantity: 'count',
    optional: true,
  },
  'cramped.seconds': { title: 'Time that a go loses to tight turns and changes without room', quantity: 'time' },
  'crossing.end': { title: 'From the end of a pole to where it is crossed', quantity: 'length' },
  lean: { title: 'How far a horse leans in a turn', quantity: 'angle' },
  'crossing.skew': { title: 'How far off square a pole is crossed', quantity: 'angle' },
};
